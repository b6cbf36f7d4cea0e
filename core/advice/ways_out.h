// Ways out: changes of an evening after which it can be cooked. Each has been planned in full and
// judged like any plan before it is told of. For a clash of a plan as it is laid out, or for a
// dinner that cannot be cooked at all; then only what bears on the proven conflict is tried.
#pragma once

#include <functional>
#include <stop_token>
#include <string>
#include <vector>

#include "core/advice/evening_change.h"
#include "core/plan/plan.h"
#include "core/planner/planner.h"

namespace suppertide {

struct AdviceRequest
{
    PlanInput input;
    PlanPtr laidOut;              // as it stands, of `input`; null: nothing is laid out
    std::optional<Clash> clash;   // of `laidOut`; absent: whatever is wrong with it
    PlannerLimits first{};        // to see whether there is a plan, for each change
    PlannerLimits better{};       // then to make it good
    std::size_t most = 5;         // ways out to find
    std::size_t mostTrials = 120; // changes to try
};

/// A step that the way out moves.
struct MovedStep
{
    TaskIndex task; // of the way out's plan
    Instant from;
    Instant to;

    friend bool operator==(const MovedStep&, const MovedStep&) = default;
};

struct WayOut
{
    std::vector<EveningChange> changes; // one, or two where none alone helps
    PlanInput before;
    PlanInput after; // with the plan as its layout
    PlanPtr plan;    // of `after`
    PlanPtr laidOut; // of `before`, as in the request
    std::optional<Clash> clash;
    std::vector<MovedStep> moved; // furthest first; empty if nothing was laid out
    std::int64_t points = 0;      // the changes' own and what the plan costs more
};

struct Advice
{
    FormulationPtr formulation;        // of the evening as it is
    std::vector<std::string> conflict; // proven: without a change there is no plan; empty: not so
    std::vector<WayOut> ways;          // cheapest first
    std::size_t tried = 0;
};

struct AdviceProgress
{
    const WayOut* found = nullptr;                      // set when one more was found
    const std::vector<std::string>* conflict = nullptr; // set once it is proven
    std::size_t tried = 0;
    std::size_t toTry = 0;
};

using AdviceSink = std::function<void(const AdviceProgress&)>;

/// Failure only for faulty input. Stopped early, it returns what was found so far. Same request,
/// same ways, as long as the limits are in steps.
[[nodiscard]] Result<Advice> findWaysOut(const AdviceRequest& request,
                                         const std::stop_token& stop = {},
                                         const AdviceSink& sink = {});

} // namespace suppertide
