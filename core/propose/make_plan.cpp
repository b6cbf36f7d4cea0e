#include "core/propose/make_plan.h"

#include <utility>

#include "core/base/log.h"
#include "core/check/check.h"

namespace suppertide {

namespace {

/// A schedule of the planner as a plan; null if the checker finds that it does not hold, which
/// would be a defect of the planner and is never shown.
PlanPtr checkedPlan(const FormulationPtr& formulation, const PlanRequest& request,
                    const Schedule& schedule)
{
    const std::vector<Broken> broken = check(formulation->problem, schedule);
    if (!broken.empty()) {
        log::error("core.propose", "a planned schedule breaks {} and {} more",
                   broken.front().name(), broken.size() - 1);
        return nullptr;
    }
    return judgePlan(formulation, request.input, schedule, request.revision);
}

bool isSolved(const Schedule& schedule)
{
    return schedule.status == ScheduleStatus::Optimal ||
           schedule.status == ScheduleStatus::Feasible;
}

ProgressSink forwarding(const FormulationPtr& formulation, const PlanRequest& request,
                        const PlanProgressSink& progress)
{
    if (!progress) {
        return {};
    }
    return [formulation, &request, &progress](const PlannerProgress& step) {
        PlanProgress told;
        if (step.better) {
            told.better = checkedPlan(formulation, request, *step.better);
        }
        told.bound = step.bound;
        told.steps = step.stepsTaken;
        progress(told);
    };
}

} // namespace

Result<PlanOutcome> makePlan(const PlanRequest& request, const std::stop_token& stop,
                             const PlanProgressSink& progress)
{
    auto formulation = formulate(request.input);
    if (!formulation) {
        return formulation.error();
    }
    const PlannerOutcome outcome = solve((*formulation)->problem, request.limits, stop,
                                         forwarding(*formulation, request, progress));
    PlanPtr plan =
        isSolved(outcome.schedule) ? checkedPlan(*formulation, request, outcome.schedule) : nullptr;
    // Out of time with a plan is a plan; stopped by the user is told apart.
    if (stop.stop_requested()) {
        return PlanOutcome{Stopped{std::move(plan)}};
    }
    if (plan) {
        return PlanOutcome{PlanFound{std::move(plan), outcome.schedule.bound}};
    }
    return PlanOutcome{NoPlan{*formulation, outcome.unplaced, outcome.schedule.conflict,
                              outcome.schedule.status == ScheduleStatus::Infeasible}};
}

} // namespace suppertide
