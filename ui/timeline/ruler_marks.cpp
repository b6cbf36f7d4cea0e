#include "ui/timeline/ruler_marks.h"

namespace suppertide::ui {

namespace {

Minutes tickStep(ZoomStop stop)
{
    switch (stop) {
    case ZoomStop::Day:
        return Minutes{60};
    case ZoomStop::Hours:
        return Minutes{15};
    case ZoomStop::QuarterHours:
        return Minutes{5};
    }
    return Minutes{60};
}

PlanTime roundedUp(const PlanCalendar& calendar, PlanTime time, Minutes step)
{
    const std::int64_t width = step.count();
    const std::int64_t instant = calendar.instant(time).time_since_epoch().count();
    const std::int64_t rest = ((instant % width) + width) % width;
    return rest == 0 ? time : time + Minutes{width - rest};
}

MarkRank rankOf(const ClockTime& clock)
{
    if (clock.minute == 0) {
        return MarkRank::Hour;
    }
    return clock.minute == 30 ? MarkRank::Half : MarkRank::Finer;
}

/// 3 h apart in the day view, so that 0, 3, 6 … stand out whatever the first hour is.
bool isDayTick(const ClockTime& clock)
{
    return clock.minute == 0 && clock.hour % 3 == 0;
}

} // namespace

std::vector<RulerMark> rulerMarks(const PlanCalendar& calendar, const TimeAxis& axis,
                                  const Interval& visible, double numeralWidth)
{
    std::vector<RulerMark> marks;
    const ZoomStop stop = stopOf(axis.pixelsPerHour());
    // Zones that are not whole hours from UTC all lie on quarter hours.
    const Minutes step = stop == ZoomStop::Day ? Minutes{15} : tickStep(stop);
    for (const TimeAxis::Piece& piece : axis.pieces()) {
        const Interval part = piece.when.common(visible);
        if (piece.isFolded || part.empty()) {
            continue;
        }
        for (PlanTime t = roundedUp(calendar, part.start, step); t <= part.end; t += step) {
            const ClockTime clock = calendar.civil(t).clock;
            if (stop == ZoomStop::Day && !isDayTick(clock)) {
                continue;
            }
            // A numeral stands right of its tick and must not run into the fold.
            const double x = axis.xOf(t);
            const bool isHour = clock.minute == 0;
            marks.push_back(
                {t, x, rankOf(clock), clock.hour, isHour && x + numeralWidth <= piece.x1});
        }
    }
    return marks;
}

} // namespace suppertide::ui
