// Oven track: one oven's temperature and what stands in it, as the strips on paper show them. No
// Qt.
#pragma once

#include <optional>
#include <vector>

#include "core/problem/oven_curve.h"
#include "core/sheet/per_hour_plan.h"

namespace suppertide::ui {

/// Something in an oven; what is in it at the same time stands in other rows.
struct OvenBar
{
    Interval when;
    std::optional<DishId> dish;
    std::size_t row = 0;

    [[nodiscard]] PlanTime middle() const { return when.start + when.length() / 2; }
};

struct OvenTrack
{
    OvenIndex oven;
    OvenCurve curve;
    std::vector<OvenBar> bars; // by start
};

using OvenTracks = std::vector<OvenTrack>;

/// The ovens that a plan uses, in the problem's order.
[[nodiscard]] std::vector<OvenIndex> ovensUsed(const PerHourPlan& plan);

/// One track for each of these ovens.
[[nodiscard]] OvenTracks ovenTracksOf(const PerHourPlan& plan, const std::vector<OvenIndex>& ovens);

/// Where the curve may bend within an interval: its ends, turns of the knob, and when a setting is
/// reached. Rising.
[[nodiscard]] std::vector<PlanTime> bendsOf(const OvenTrack& track, const Oven& oven,
                                            const Interval& during);

} // namespace suppertide::ui
