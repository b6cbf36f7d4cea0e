// Heat path: an oven's temperature curve over the axis, as points between which it runs straight
// also where hours are folded. Pure.
#pragma once

#include <span>
#include <vector>

#include "ui/timeline/scene_lane.h"
#include "ui/timeline/time_axis.h"

namespace suppertide::ui {

struct HeatPoint
{
    double x = 0;      // on the axis
    double tenths = 0; // of a degree Celsius
    bool isOn = true;  // from here to the next point

    friend bool operator==(const HeatPoint&, const HeatPoint&) = default;
};

/// The curve's points, with one more wherever a fold begins or ends or the oven is switched.
[[nodiscard]] std::vector<HeatPoint> heatPath(std::span<const HeatKnot> knots,
                                              std::span<const OvenSetting> settings,
                                              const TimeAxis& axis);

/// Where a setting's hold begins: the first minute at which the curve is within half a degree of
/// it; none if it never is.
struct Hold
{
    std::size_t setting = 0;
    PlanTime from;
    Celsius temperature;
    bool isFromRise = false; // reached from below

    friend bool operator==(const Hold&, const Hold&) = default;
};

[[nodiscard]] std::vector<Hold> holdsOf(const OvenLane& oven);

} // namespace suppertide::ui
