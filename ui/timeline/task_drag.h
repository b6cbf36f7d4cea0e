// TaskDrag: moving one step (or a course's flag) along the time axis, as a value: picked up at a
// pointer's time, moved, dropped. It knows no pixels and no window; what moves along with it and
// what then clashes is worked out by whoever owns the plan.
#pragma once

#include <optional>
#include <string>

#include "core/base/civil_time.h"
#include "core/base/interval.h"

namespace suppertide::ui {

/// What a drag snaps to: whole steps of the clock on the wall.
struct SnapGrid
{
    PlanCalendar calendar;
    Minutes step{5};

    /// The nearest point of the grid; a half goes to the later one.
    [[nodiscard]] PlanTime nearest(PlanTime time) const;
};

/// What is picked up.
struct DragPick
{
    std::string id;                // of the task
    PlanTime start;                // where it stands now
    Minutes length{0};             // how long it takes
    PlanTime grabbedAt;            // the pointer's time
    Interval bounds;               // the step stays within these (the horizon)
    std::optional<Interval> range; // earliest to latest start with everything else still holding
};

/// What a drop asks for.
struct MoveTask
{
    std::string id;
    PlanTime start;

    friend bool operator==(const MoveTask&, const MoveTask&) = default;
};

enum class Fineness
{
    Coarse, // 5 min
    Fine    // 1 min (Alt)
};

class TaskDrag
{
public:
    TaskDrag(DragPick pick, const PlanCalendar& calendar);

    /// The pointer is now at `pointer`. The new start snaps to the grid, or to an end of the
    /// range if that is nearer than half a step.
    void moveTo(PlanTime pointer, Fineness fineness = Fineness::Coarse);

    [[nodiscard]] const DragPick& pick() const { return pick_; }
    [[nodiscard]] PlanTime start() const { return start_; }
    [[nodiscard]] bool hasMoved() const { return start_ != pick_.start; }
    /// True as well if no range is known.
    [[nodiscard]] bool isWithinRange() const;
    /// None if it is where it was.
    [[nodiscard]] std::optional<MoveTask> drop() const;

private:
    DragPick pick_;
    PlanCalendar calendar_;
    PlanTime start_;
};

/// The start after an arrow key: one step earlier or later on the grid, kept within the bounds.
[[nodiscard]] PlanTime nudged(const DragPick& pick, const PlanCalendar& calendar, int steps);

} // namespace suppertide::ui
