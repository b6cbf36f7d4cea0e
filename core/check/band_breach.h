// When an oven is outside a band of temperatures while something is in it.
#pragma once

#include <cstdint>
#include <optional>

#include "core/problem/oven_curve.h"

namespace suppertide {

struct BandBreach
{
    Interval when;                // from the first to the last minute with a moment outside
    std::int64_t worstMilliC = 0; // the temperature furthest outside, thousandths of a °C
};

/// Where in `held`, ends included, the oven is below `lowC`; absent if nowhere.
[[nodiscard]] std::optional<BandBreach> breachBelow(const OvenCurve& curve, const Interval& held,
                                                    int lowC);
/// The same for above `highC`.
[[nodiscard]] std::optional<BandBreach> breachAbove(const OvenCurve& curve, const Interval& held,
                                                    int highC);

} // namespace suppertide
