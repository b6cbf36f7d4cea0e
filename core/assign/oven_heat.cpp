#include "core/assign/oven_heat.h"

#include <algorithm>

#include "core/assign/oven_segments.h"

namespace suppertide {

namespace {

/// Far outside any temperature, yet safe to add ramps to.
constexpr std::int64_t unbounded = std::int64_t{1} << 50;

std::int64_t milli(int degrees)
{
    return std::int64_t{degrees} * 1000;
}

} // namespace

OvenHeat::OvenHeat(const Oven& oven, const std::vector<OvenStay>& stays,
                   const OvenProgramStyle& style, std::int64_t below)
    : oven_(oven), style_(style), below_(below)
{
    for (const OvenStay& stay : stays) {
        last_ = std::max(last_, static_cast<int>(minuteOf(stay.during.end)));
    }
    readStays(stays);
    lookBack();
    rowOf_.assign(index(last_) + 1, 0);
    const Levels enough{0, {least_.back()}};
    rows_.push_back({enough, enough, enough, enough});
    for (int minute = last_; minute-- > 0;) {
        const FourLevels& after = rows_[rowOf_[index(minute + 1)]];
        FourLevels here;
        for (std::size_t i = 0; i < here.size(); ++i) {
            here[i] = before(minute, after, i % 2 == 1, i >= 2);
        }
        if (!(here == after)) {
            rows_.push_back(std::move(here));
        }
        rowOf_[index(minute)] = rows_.size() - 1;
    }
}

void OvenHeat::readStays(const std::vector<OvenStay>& stays)
{
    const std::size_t moments = index(last_) + 1;
    taken_.assign(moments, false);
    off_.assign(moments, false);
    least_.assign(moments, -unbounded);
    most_.assign(moments, unbounded);
    for (const OvenStay& stay : stays) {
        const auto begin = index(static_cast<int>(minuteOf(stay.during.start)));
        const auto end = index(static_cast<int>(minuteOf(stay.during.end)));
        for (std::size_t at = begin; at <= end; ++at) {
            least_[at] = std::max(least_[at], milli(stay.acceptLow));
            most_[at] = std::min(most_[at], milli(stay.acceptHigh));
            if (at < end) {
                taken_[at] = true;
                off_[at] = off_[at] || stay.off;
            }
        }
    }
}

/// What each moment must allow for the sake of those after it: a minute warms by no more than the
/// heating rate and cools by no more than the cooling rate.
void OvenHeat::lookBack()
{
    for (std::size_t at = index(last_); at-- > 0;) {
        const std::int64_t rises = off_[at] ? 0 : oven_.heatMilliCPerMin;
        std::int64_t needed = least_[at + 1] - rises;
        if (off_[at] && least_[at + 1] > milli(oven_.ambientC)) {
            needed = least_[at + 1] + oven_.coolMilliCPerMin;
        } else if (off_[at]) {
            // Surroundings that are warmer than the oven warm it.
            needed = least_[at + 1] - oven_.heatMilliCPerMin;
        }
        least_[at] = std::max(least_[at], needed);
        most_[at] = std::min(most_[at], most_[at + 1] + oven_.coolMilliCPerMin);
    }
}

std::int64_t OvenHeat::at(const Levels& levels, std::int64_t cost)
{
    if (cost < levels.first) {
        return unbounded;
    }
    const auto place = static_cast<std::size_t>(cost - levels.first);
    return levels.milliC[std::min(place, levels.milliC.size() - 1)];
}

/// The least temperature from which a minute off leads to the one needed.
std::int64_t OvenHeat::ifOff(int minute, std::int64_t needed, bool heated) const
{
    if (needed > most_[index(minute + 1)]) {
        return unbounded;
    }
    const bool cools = needed > milli(oven_.ambientC) || (heated && staysEmpty(minute));
    return cools && needed > -unbounded ? needed + oven_.coolMilliCPerMin : -unbounded;
}

std::int64_t OvenHeat::ifOn(int minute, std::int64_t needed) const
{
    if (needed > most_[index(minute + 1)] || off_[index(minute)]) {
        return unbounded;
    }
    // Hotter than any setting it only cools.
    return needed > milli(oven_.maxC) ? needed + oven_.coolMilliCPerMin
                                      : std::max(-unbounded, needed - oven_.heatMilliCPerMin);
}

OvenHeat::Levels OvenHeat::before(int minute, const FourLevels& after, bool on, bool heated) const
{
    // What begins anew with the next stay is no longer heated.
    const std::size_t same = heated && staysEmpty(minute) ? 2 : 0;
    const std::size_t hot = staysEmpty(minute) ? 2 : 0;
    const Levels& off = after[same];
    const Levels& stillOn = after[hot + 1];
    const std::int64_t price = style_.onMinute + (on ? 0 : style_.switchOn);
    const std::int64_t floor = least_[index(minute)];
    const std::int64_t hottest = std::max(milli(oven_.maxC), milli(oven_.startC));
    Levels result;
    std::int64_t cost = std::min(off.first, stillOn.first + price);
    const auto end = static_cast<std::int64_t>(std::max(off.milliC.size(), stillOn.milliC.size())) +
                     std::max(off.first, stillOn.first + price);
    result.first = below_;
    for (; cost < std::min(below_, end); ++cost) {
        const std::int64_t level =
            std::max(floor, std::min(ifOff(minute, at(off, cost), heated),
                                     ifOn(minute, at(stillOn, cost - price))));
        if (level > std::min(most_[index(minute)], hottest)) {
            continue;
        }
        if (result.milliC.empty()) {
            result.first = cost;
        }
        result.milliC.push_back(level);
        if (level == floor) {
            break;
        }
    }
    if (result.milliC.empty()) {
        result.milliC.push_back(unbounded);
    }
    return result;
}

std::int64_t OvenHeat::least(int minute, std::int64_t milliC, bool on, bool heated) const
{
    const std::size_t which = (heated ? 2U : 0U) + (on ? 1U : 0U);
    const Levels& levels = rows_[rowOf_[index(minute)]][which];
    const auto place = std::partition_point(levels.milliC.begin(), levels.milliC.end(),
                                            [&](std::int64_t level) { return level > milliC; });
    return place == levels.milliC.end() ? below_ : levels.first + (place - levels.milliC.begin());
}

} // namespace suppertide
