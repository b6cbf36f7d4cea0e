// Laying out by hand: the user moves when; the rest is derived at once. Starts come from the
// layout, what is new is laid out backwards from its serving line, burners, cooks, units and oven
// programs are assigned; then the plan is judged like any other.
#pragma once

#include "core/plan/plan.h"

namespace suppertide {

/// A schedule from the layout. Tasks that the layout does not know start as late as their ties
/// allow (longest path back from the serving event), regardless of resources: the clashes show.
[[nodiscard]] Schedule layOut(const Formulation& formulation, const Layout& layout);

/// How far a task may be dragged: with all that is tied to it moving along or stretching its waits
/// within least and most.
struct DragRange
{
    Interval starts;      // earliest and latest start; with only lags and windows holding
    Interval startsAlone; // with all other tasks fixed: the slack

    friend bool operator==(const DragRange&, const DragRange&) = default;
};
[[nodiscard]] DragRange dragRange(const Formulation& formulation, const Schedule& schedule,
                                  TaskIndex task);

/// The schedule with `task` at `start`: tied tasks that would break a lag move along just so far as
/// needed (pinned ones stay); then everything else is assigned anew. `start` outside the drag range
/// is carried out all the same, and the clashes show.
[[nodiscard]] Schedule moveTask(const Formulation& formulation, const Layout& layout,
                                const Schedule& schedule, TaskIndex task, PlanTime start);

} // namespace suppertide
