// makePlan: occasion in, best plan out: formulate, solve, check, interpret. Runs on a worker
// thread; the request is an immutable snapshot. What it calls found has been checked by core/check.
#pragma once

#include <functional>
#include <stop_token>
#include <variant>

#include "core/plan/plan.h"
#include "core/planner/planner.h"

namespace suppertide {

struct PlanRequest
{
    PlanInput input;
    PlannerLimits limits;
    std::uint64_t revision = 0;
    bool mayWash =
        true; // a tool, where it would go unwashed to what must be clean of what was in it
};

struct PlanFound
{
    PlanPtr plan;
    std::optional<std::int64_t> bound; // proven; the plan is best if it equals the cost
};

/// Why a task could not be placed: sentences for it are made by core/wording.
struct NoPlan
{
    FormulationPtr formulation;
    std::vector<Unplaced> unplaced;
    std::vector<std::string> conflict; // requirements that cannot hold together, if proven
    bool isProven = false;
};

struct Stopped
{
    PlanPtr best; // null if nothing was found
};

using PlanOutcome = std::variant<PlanFound, NoPlan, Stopped>;

struct PlanProgress
{
    PlanPtr better; // set when a better plan was found
    std::optional<std::int64_t> bound;
    std::int64_t steps = 0;
};

using PlanProgressSink = std::function<void(const PlanProgress&)>;

/// Failure only for faulty input (see formulate). What is found wrong with its food only when it is
/// judged, tools that were not washed, is planned again with the washing, three times at most; the
/// plan's formulation then has more tasks than the input's.
[[nodiscard]] Result<PlanOutcome> makePlan(const PlanRequest& request,
                                           const std::stop_token& stop = {},
                                           const PlanProgressSink& progress = {});

} // namespace suppertide
