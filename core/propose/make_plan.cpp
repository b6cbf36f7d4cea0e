#include "core/propose/make_plan.h"

#include <set>
#include <utility>

#include "core/base/log.h"
#include "core/check/check.h"

namespace suppertide {

namespace {

/// What is to be washed is found after planning, and it is planned again.
constexpr int mostRounds = 3;

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

/// Of the tools that go unwashed to what must be clean of what was in them: the uses before which
/// to wash.
std::set<std::string> toWash(const Plan& plan)
{
    std::set<std::string> demands;
    for (const Clash& clash : plan.clashes) {
        if (clash.kind == ClashKind::UnwashedTool && clash.demand) {
            demands.insert(plan.formulation->problem.demands[*clash.demand].id);
        }
    }
    return demands;
}

Result<PlanOutcome> planOnce(const PlanRequest& request, const std::stop_token& stop,
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

} // namespace

Result<PlanOutcome> makePlan(const PlanRequest& request, const std::stop_token& stop,
                             const PlanProgressSink& progress)
{
    auto outcome = planOnce(request, stop, progress);
    PlanRequest again = request;
    for (int round = 0; outcome && request.mayWash && round < mostRounds && !stop.stop_requested();
         ++round) {
        const auto* found = std::get_if<PlanFound>(&*outcome);
        const std::set<std::string> uses =
            found == nullptr ? std::set<std::string>{} : toWash(*found->plan);
        if (uses.empty()) {
            break;
        }
        auto layout = std::make_shared<Layout>(*again.input.layout);
        layout->washed.insert(uses.begin(), uses.end());
        again.input.layout = std::move(layout);
        again.limits.wallClock /= 2; // so that all of it takes no more than twice as long
        auto washed = planOnce(again, stop, {});
        const auto* better = washed ? std::get_if<PlanFound>(&*washed) : nullptr;
        if (better == nullptr || toWash(*better->plan).size() >= uses.size()) {
            break; // there is no time to wash: the clash is shown
        }
        outcome = std::move(washed);
    }
    return outcome;
}

} // namespace suppertide
