// The planner's face: a problem in, schedules out as they get better. Which engine stands behind it
// is nobody else's business. It knows nothing about food, prints nothing, and touches no clock but
// its own limit.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "core/problem/problem.h"
#include "core/problem/schedule.h"

namespace suppertide {

struct PlannerLimits
{
    std::chrono::milliseconds wallClock{5000};
    /// Counted units of work: same problem, seed and budget give the same schedule, byte for byte,
    /// as long as the wall clock does not end the run first.
    std::int64_t steps = std::numeric_limits<std::int64_t>::max();
    std::uint64_t seed = 1;
    /// With more than one, which of several cheapest schedules is found hangs on which is faster;
    /// the status does not, if there is time enough.
    int threads = 1;
};

/// A task that a run could not place, and the requirement that stood in the way, as an id of the
/// problem: "lag:l1", "count:fridge", "pool:hob", "hands:t3", "oven:e2", "window:t3".
struct Unplaced
{
    TaskIndex task;
    std::vector<std::string> because;

    friend bool operator==(const Unplaced&, const Unplaced&) = default;
};

struct PlannerProgress
{
    std::optional<Schedule> better; // set when a better schedule was found
    std::optional<std::int64_t> bound;
    std::int64_t stepsTaken = 0;
};

/// Called from the planner's own thread, at most about ten times a second besides for better
/// schedules.
using ProgressSink = std::function<void(const PlannerProgress&)>;

struct PlannerOutcome
{
    /// The best schedule found; status Unknown if none was. Optimal and Infeasible only if proven.
    Schedule schedule;
    std::vector<Unplaced> unplaced; // if none was found: what was in the way of the best attempt
    bool stopped = false;           // by the stop token or a limit
    std::int64_t stepsTaken = 0;
};

/// Plans. A schedule that comes back with status Feasible or Optimal breaks no requirement.
[[nodiscard]] PlannerOutcome solve(const Problem& problem, const PlannerLimits& limits,
                                   std::stop_token stop = {}, const ProgressSink& progress = {});

} // namespace suppertide
