// Laying out by hand: the user moves when; the rest is derived at once. Starts come from the
// layout, what is new is laid out backwards from its serving line, burners, cooks, units and oven
// programs are assigned; then the plan is judged like any other.
#pragma once

#include "core/assign/assign.h"
#include "core/plan/plan.h"

namespace suppertide {

/// A schedule from the layout. Tasks that the layout does not know start as late as their ties
/// allow (longest path back from the serving event), regardless of resources: the clashes show.
/// Washing up starts as soon as it may.
[[nodiscard]] Schedule layOut(const Formulation& formulation, const Layout& layout);

/// How far a task may be dragged: with all that is tied to it moving along or stretching its waits
/// within least and most. Both intervals hold the earliest and the latest start; a task that cannot
/// move has both the same. What is tied to it without play (in, out, turn) counts as one with it.
struct DragRange
{
    Interval starts;      // with only lags and windows holding
    Interval startsAlone; // with all other tasks fixed

    friend bool operator==(const DragRange&, const DragRange&) = default;
};
[[nodiscard]] DragRange dragRange(const Formulation& formulation, const Schedule& schedule,
                                  TaskIndex task);

/// The slack: the earliest and latest start to which the task can be moved, all others fixed, with
/// no clash that is not there now anywhere on the way. Tries it minute by minute, so it takes far
/// longer than the others: some milliseconds an hour.
[[nodiscard]] Interval slackOf(const Formulation& formulation, const Layout& layout,
                               const Schedule& schedule, TaskIndex task);

/// The schedule with `task` at `start`: tied tasks that would break a lag move along just so far as
/// needed (pinned ones stay); then everything else is assigned anew. `start` outside the drag range
/// is carried out all the same, and the clashes show.
[[nodiscard]] Schedule moveTask(const Formulation& formulation, const Layout& layout,
                                const Schedule& schedule, TaskIndex task, PlanTime start);

/// Only the starts of moveTask; the rest of `schedule` as it was.
[[nodiscard]] Schedule movedStarts(const Formulation& formulation, const Layout& layout,
                                   Schedule schedule, TaskIndex task, PlanTime start);

/// Cooks, units and ovens about which the layout cares.
[[nodiscard]] AssignmentPins assignmentPins(const Formulation& formulation, const Layout& layout);

} // namespace suppertide
