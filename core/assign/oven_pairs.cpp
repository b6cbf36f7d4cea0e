#include "core/assign/oven_pairs.h"

#include <algorithm>

namespace suppertide {

namespace {

std::int64_t milli(int degrees)
{
    return std::int64_t{degrees} * 1000;
}

/// The hottest that the oven may be at `at`, a minute of the stay; with the oven off it has cooled
/// since the stay began.
std::int64_t upperLevel(const Oven& oven, const OvenStay& stay, PlanTime at)
{
    if (!stay.off) {
        return milli(stay.acceptHigh);
    }
    const std::int64_t cooled =
        milli(stay.acceptHigh) - oven.coolMilliCPerMin * (at - stay.during.start).count();
    return std::max(std::min(milli(oven.ambientC), milli(stay.acceptHigh)), cooled);
}

/// The coolest that it may be at `at`; with the oven off it must still be warm enough at the end.
std::int64_t lowerLevel(const Oven& oven, const OvenStay& stay, PlanTime at)
{
    if (!stay.off || stay.acceptLow <= oven.ambientC) {
        return milli(stay.acceptLow);
    }
    return milli(stay.acceptLow) + oven.coolMilliCPerMin * (stay.during.end - at).count();
}

Minutes rampMinutes(std::int64_t difference, std::int64_t ratePerMinute)
{
    return Minutes{difference <= 0 ? 0 : (difference + ratePerMinute - 1) / ratePerMinute};
}

std::optional<OvenPairClash> clashWhileShared(const Oven& oven, const OvenStay& one,
                                              const OvenStay& other)
{
    const Interval shared = one.during.common(other.during);
    const auto apart = [&](const OvenStay& hot, const OvenStay& cold, PlanTime at) {
        return lowerLevel(oven, hot, at) - upperLevel(oven, cold, at);
    };
    const std::int64_t oneHotter =
        std::max(apart(one, other, shared.start), apart(one, other, shared.end));
    const std::int64_t otherHotter =
        std::max(apart(other, one, shared.start), apart(other, one, shared.end));
    if (oneHotter <= 0 && otherHotter <= 0) {
        return std::nullopt;
    }
    const bool laterIsHotter = (one.during.start > other.during.start) == (oneHotter > 0);
    const Minutes ramp = rampMinutes(std::max(oneHotter, otherHotter),
                                     laterIsHotter ? oven.heatMilliCPerMin : oven.coolMilliCPerMin);
    return OvenPairClash{OvenPairFault::BandsApart, ramp, Minutes{0}, shared};
}

} // namespace

OvenStay ovenStay(const OvenDemand& demand, const Interval& during)
{
    return {during, demand.acceptLow, demand.acceptHigh, demand.prefer, demand.mode == modeOff};
}

std::optional<OvenPairClash> ovenPairClash(const Oven& oven, const OvenStay& one,
                                           const OvenStay& other)
{
    const bool oneFirst = one.during.start <= other.during.start;
    const OvenStay& first = oneFirst ? one : other;
    const OvenStay& later = oneFirst ? other : one;
    if (later.during.start <= first.during.end) {
        return clashWhileShared(oven, first, later);
    }
    const Interval between{first.during.end, later.during.start};
    const Minutes gap = between.length();
    const Minutes up =
        rampMinutes(lowerLevel(oven, later, between.end) - upperLevel(oven, first, between.start),
                    oven.heatMilliCPerMin);
    if (up > gap) {
        return OvenPairClash{OvenPairFault::TooSlowUp, up, gap, between};
    }
    const Minutes down =
        rampMinutes(lowerLevel(oven, first, between.start) - upperLevel(oven, later, between.end),
                    oven.coolMilliCPerMin);
    if (down > gap) {
        return OvenPairClash{OvenPairFault::TooSlowDown, down, gap, between};
    }
    return std::nullopt;
}

std::optional<OvenPairClash> ovenStartClash(const Oven& oven, const OvenStay& stay)
{
    OvenStay start;
    start.during = {planTime(-1), planTime(0)};
    start.acceptLow = oven.startC;
    start.acceptHigh = oven.startC;
    return ovenPairClash(oven, start, stay);
}

bool ovenSuits(const Oven& oven, const OvenStay& stay)
{
    if (stay.acceptLow > stay.acceptHigh ||
        lowerLevel(oven, stay, stay.during.start) > milli(stay.acceptHigh)) {
        return false;
    }
    const int hottest = std::max({oven.maxC, oven.startC, oven.ambientC});
    const int coolest = std::min({oven.minC, oven.startC, oven.ambientC});
    return stay.acceptLow <= hottest && stay.acceptHigh >= coolest;
}

} // namespace suppertide
