#include "ui/timeline/task_drag.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <utility>

#include "core/base/contracts.h"

namespace suppertide::ui {

namespace {

constexpr Minutes coarseStep{5};
constexpr Minutes fineStep{1};

PlanTime within(const DragPick& pick, PlanTime start)
{
    const PlanTime latest = std::max(pick.bounds.start, pick.bounds.end - pick.length);
    return std::clamp(start, pick.bounds.start, latest);
}

Minutes distance(PlanTime a, PlanTime b)
{
    return a < b ? b - a : a - b;
}

} // namespace

PlanTime SnapGrid::nearest(PlanTime time) const
{
    expects(step > Minutes{0}, "a step above 0");
    const std::int64_t width = step.count();
    const std::int64_t instant = calendar.instant(time).time_since_epoch().count() + width / 2;
    const std::int64_t rest = ((instant % width) + width) % width;
    return calendar.planTime(Instant{Minutes{instant - rest}});
}

TaskDrag::TaskDrag(DragPick pick, const PlanCalendar& calendar)
    : pick_(std::move(pick)), calendar_(calendar), start_(pick_.start)
{}

void TaskDrag::moveTo(PlanTime pointer, Fineness fineness)
{
    const Minutes step = fineness == Fineness::Fine ? fineStep : coarseStep;
    const PlanTime wanted = pick_.start + (pointer - pick_.grabbedAt);
    PlanTime best = SnapGrid{calendar_, step}.nearest(wanted);
    // Where it stood, and both ends of the range, may lie off the grid and are worth reaching.
    std::array<std::optional<PlanTime>, 3> magnets{pick_.start, std::nullopt, std::nullopt};
    if (pick_.range) {
        magnets[1] = pick_.range->start;
        magnets[2] = pick_.range->end;
    }
    for (const std::optional<PlanTime>& magnet : magnets) {
        if (magnet && distance(*magnet, wanted) < distance(best, wanted)) {
            best = *magnet;
        }
    }
    start_ = within(pick_, best);
}

bool TaskDrag::isWithinRange() const
{
    return !pick_.range || (pick_.range->start <= start_ && start_ <= pick_.range->end);
}

std::optional<MoveTask> TaskDrag::drop() const
{
    if (!hasMoved()) {
        return std::nullopt;
    }
    return MoveTask{pick_.id, start_};
}

PlanTime nudged(const DragPick& pick, const PlanCalendar& calendar, int steps)
{
    const SnapGrid grid{calendar, coarseStep};
    const PlanTime moved = pick.start + coarseStep * steps;
    const PlanTime snapped = grid.nearest(moved);
    // From off the grid the first press only reaches the next point of the grid.
    const bool wentTooFar = steps > 0 ? snapped > moved : snapped < moved;
    return within(pick, wentTooFar ? snapped - coarseStep * (steps > 0 ? 1 : -1) : snapped);
}

} // namespace suppertide::ui
