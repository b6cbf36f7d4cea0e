// Ruler marks: the ticks and hour numerals of the time axis, by the clock on the wall. Pure.
#pragma once

#include <vector>

#include "core/base/civil_time.h"
#include "ui/timeline/time_axis.h"
#include "ui/timeline/zoom.h"

namespace suppertide::ui {

enum class MarkRank
{
    Hour,
    Half,
    Finer
};

struct RulerMark
{
    PlanTime time;
    double x = 0; // on the axis
    MarkRank rank = MarkRank::Hour;
    int hour = 0;            // of the clock
    bool hasNumeral = false; // hours that have room for their number

    friend bool operator==(const RulerMark&, const RulerMark&) = default;
};

/// Marks within `visible`, rising: every 3 h, 15 min or 5 min, by the zoom. None inside a fold.
/// `numeralWidth` is the room that one numeral needs.
[[nodiscard]] std::vector<RulerMark> rulerMarks(const PlanCalendar& calendar, const TimeAxis& axis,
                                                const Interval& visible, double numeralWidth);

} // namespace suppertide::ui
