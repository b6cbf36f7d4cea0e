#include "core/night/progress.h"

#include <algorithm>
#include <utility>

#include "core/plan/seen_step.h"

namespace suppertide {

namespace {

const std::string& idOf(const Plan& plan, TaskIndex task)
{
    return plan.formulation->problem.tasks[task].id;
}

bool begins(const TaskPoint& from, TaskIndex task)
{
    return from.task == task;
}

/// Who does it and with what, as the plan has it now.
void noteMeans(StepReport& report, const Plan& plan, TaskIndex task)
{
    const Problem& problem = plan.formulation->problem;
    report.cooks.clear();
    for (const CookIndex cook : plan.schedule.cooks[task]) {
        report.cooks.push_back(problem.cooks[cook].id);
    }
    for (const DemandIndex index : problem.demands.indices()) {
        const Demand& demand = problem.demands[index];
        if (begins(demand.from, task) && demand.pool && plan.schedule.units[index]) {
            report.units[demand.id] =
                problem.pools[*demand.pool].units[*plan.schedule.units[index]].id;
        }
    }
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        const OvenDemand& demand = problem.ovenDemands[index];
        if (begins(demand.from, task) && plan.schedule.ovens[index]) {
            report.ovens[demand.id] = problem.ovens[*plan.schedule.ovens[index]].id;
        }
    }
}

} // namespace

bool isReportable(const TaskSource& task)
{
    return isDeed(task.role);
}

Progress withStarted(Progress progress, const Plan& plan, TaskIndex task, Instant at)
{
    StepReport& report = progress.steps[idOf(plan, task)];
    report.started = at;
    report.done.reset();
    report.notBefore.reset();
    report.isLeftOut = false;
    noteMeans(report, plan, task);
    return progress;
}

Progress withDone(Progress progress, const Plan& plan, TaskIndex task, Instant at)
{
    StepReport& report = progress.steps[idOf(plan, task)];
    if (!report.started) {
        // Nobody said when it began: as planned, if that can be, else as long before as it takes.
        const auto when = plan.interval(task);
        const Minutes takes = plan.formulation->problem.tasks[task].duration;
        const Instant begun = at - takes;
        const Instant planned = when ? plan.formulation->calendar.instant(when->start) : begun;
        report.started = planned < at ? std::max(planned, begun) : begun;
        noteMeans(report, plan, task);
    }
    report.done = std::max(at, *report.started);
    report.isLeftOut = false;
    return progress;
}

Progress withLate(Progress progress, const Plan& plan, TaskIndex task, Minutes by, Instant now)
{
    StepReport& report = progress.steps[idOf(plan, task)];
    const PlanCalendar& calendar = plan.formulation->calendar;
    const auto when = plan.interval(task);
    const bool isUnderWay =
        report.started || (when && calendar.instant(when->start) <= now &&
                           !plan.formulation->problem.tasks[task].needsCooks() &&
                           plan.formulation->problem.tasks[task].duration > Minutes{0});
    if (isUnderWay) {
        report.longer += by;
        return progress;
    }
    const Instant planned = when ? calendar.instant(when->start) : now;
    report.notBefore = std::max({planned, now, report.notBefore.value_or(now)}) + by;
    return progress;
}

Progress withLeftOut(Progress progress, const Plan& plan, TaskIndex task)
{
    StepReport& report = progress.steps[idOf(plan, task)];
    report = StepReport{};
    report.isLeftOut = true;
    return progress;
}

Progress withOvenAt(Progress progress, const std::string& oven, Instant at, int celsius)
{
    progress.ovens.push_back({oven, at, celsius});
    return progress;
}

Progress withCooks(Progress progress, const Plan& plan)
{
    const Problem& problem = plan.formulation->problem;
    for (const TaskIndex task : problem.tasks.indices()) {
        if (!isReportable(plan.formulation->tasks[task]) || plan.schedule.cooks[task].empty()) {
            continue;
        }
        std::vector<std::string>& names = progress.cooks[idOf(plan, task)];
        names.clear();
        for (const CookIndex cook : plan.schedule.cooks[task]) {
            names.push_back(problem.cooks[cook].id);
        }
    }
    return progress;
}

Progress asPlannedUntil(Progress progress, const Plan& plan, Instant now)
{
    const PlanCalendar& calendar = plan.formulation->calendar;
    for (const TaskIndex task : plan.formulation->problem.tasks.indices()) {
        const auto when = plan.interval(task);
        const auto said = progress.steps.find(idOf(plan, task));
        const bool isSaid = said != progress.steps.end() &&
                            (said->second.started || said->second.done || said->second.isLeftOut);
        if (!when || isSaid || !isReportable(plan.formulation->tasks[task])) {
            continue;
        }
        const Instant start = calendar.instant(when->start);
        const Instant end = calendar.instant(when->end);
        if (end <= now) {
            progress =
                withDone(withStarted(std::move(progress), plan, task, start), plan, task, end);
        } else if (start < now) {
            progress = withStarted(std::move(progress), plan, task, start);
        }
    }
    return progress;
}

} // namespace suppertide
