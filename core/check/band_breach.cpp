#include "core/check/band_breach.h"

#include <algorithm>
#include <vector>

namespace suppertide {

namespace {

/// The first minute of (good, bad] that is outside: between the two the temperature only rises or
/// only falls, so it leaves the band once. `good` may be after `bad`; then it is the last one.
template <typename IsOutside>
PlanTime crossing(PlanTime good, PlanTime bad, IsOutside isOutside)
{
    while (std::chrono::abs(bad - good) > Minutes{1}) {
        const PlanTime middle = good + (bad - good) / 2;
        (isOutside(middle) ? bad : good) = middle;
    }
    return bad;
}

/// `beyond(t)`: by how many thousandths of a °C the oven is outside at t; not above 0: inside.
template <typename Beyond>
std::optional<BandBreach> breach(const OvenCurve& curve, const Interval& held, Beyond beyond)
{
    const auto isOutside = [&](PlanTime at) { return beyond(at) > 0; };
    const std::vector<PlanTime> turns = curve.turningMinutes(held);
    const auto firstTurn = std::ranges::find_if(turns, isOutside);
    if (firstTurn == turns.end()) {
        return std::nullopt;
    }
    const auto afterLast = std::find_if(turns.rbegin(), turns.rend(), isOutside).base();
    // The temperature is continuous: if a minute is the first outside, it was left shortly before.
    BandBreach result{held, 0};
    if (firstTurn != turns.begin()) {
        result.when.start = crossing(*(firstTurn - 1), *firstTurn, isOutside) - Minutes{1};
    }
    if (afterLast != turns.end()) {
        result.when.end = crossing(*afterLast, *(afterLast - 1), isOutside) + Minutes{1};
    }
    const PlanTime worst = *std::ranges::max_element(turns, {}, beyond);
    result.worstMilliC = curve.milliC(worst);
    return result;
}

} // namespace

std::optional<BandBreach> breachBelow(const OvenCurve& curve, const Interval& held, int lowC)
{
    const std::int64_t low = std::int64_t{lowC} * 1000;
    return breach(curve, held, [&](PlanTime at) { return low - curve.milliC(at); });
}

std::optional<BandBreach> breachAbove(const OvenCurve& curve, const Interval& held, int highC)
{
    const std::int64_t high = std::int64_t{highC} * 1000;
    return breach(curve, held, [&](PlanTime at) { return curve.milliC(at) - high; });
}

} // namespace suppertide
