// Oven strips: each oven's temperature over time beside the rows: a grey level with its line, what
// stands in the oven as bars, a black tag at every turn of the knob. Time is linear within a
// stretch and has another scale in the next, since rows grow with what is in them.
#pragma once

#include <vector>

#include "core/problem/oven_curve.h"
#include "ui/print/sheet_block.h"

namespace suppertide::ui {

/// The ovens that a plan uses, in the problem's order.
[[nodiscard]] std::vector<OvenIndex> ovensUsed(const PerHourPlan& plan);

/// Something in an oven, in a column of its own.
struct OvenBar
{
    Interval when;
    std::optional<DishId> dish;
    std::size_t row = 0;
};

struct OvenTrack
{
    OvenIndex oven;
    OvenCurve curve;
    std::vector<OvenBar> bars; // by start
};

using OvenStrips = std::vector<OvenTrack>; // parallel to SheetGeometry::strips

[[nodiscard]] OvenStrips ovenStripsOf(const PerHourPlan& plan, const std::vector<OvenIndex>& ovens);

/// The least height in which the stretch's knob tags do not stand on each other.
[[nodiscard]] double leastStripHeight(const Sheet& sheet, const Stretch& stretch);

/// The strips of a stretch that is drawn from `top` to `bottom`.
[[nodiscard]] PaperMarks stripMarks(const Sheet& sheet, const OvenStrips& strips,
                                    const Stretch& stretch, double top, double bottom);

} // namespace suppertide::ui
