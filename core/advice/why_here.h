// Why here: for one step of a plan, what keeps it from being earlier and what from being later, and
// how far it could go each way, with everything else in its place and with what is tied to it
// moving along. Exact: each minute is judged by core/check, cooks, units and ovens derived anew.
#pragma once

#include <optional>
#include <stop_token>
#include <vector>

#include "core/plan/plan.h"

namespace suppertide {

/// What holds a step one way.
struct Hold
{
    Minutes free{0};               // so far it can go with all else where it is
    std::vector<Clash> clashes;    // that come about one minute further
    PlanPtr beyond;                // the plan one minute further, in which they are
    Minutes along{0};              // so far it can go if what is tied to it moves along
    std::optional<PlanFigures> at; // of the plan with the step as far as it is free to go
};

struct WhyHere
{
    TaskIndex task;
    std::vector<TaskIndex> group; // that moves as one with it (into the oven, out of it)
    PlanTime start;               // of the task itself
    Interval now;                 // of the group
    bool isPinned = false;
    PlanFigures figures; // of the plan as it is, ovens derived as for each place further on
    Hold earlier;
    Hold later;
};

/// How far moving along is looked into.
inline constexpr Minutes furthestAlong{6 * 60};

/// Requires a present task with a start. Takes up to some milliseconds an hour of slack; stopped
/// early, the figures say no more than what had been found.
[[nodiscard]] WhyHere whyHere(const PlanPtr& plan, const PlanInput& input, TaskIndex task,
                              const std::stop_token& stop = {});

} // namespace suppertide
