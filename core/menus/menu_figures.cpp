#include "core/menus/menu_figures.h"

#include <algorithm>

#include "core/plan/seen_step.h"
#include "core/problem/timetable.h"

namespace suppertide::menus {

namespace {

constexpr std::int64_t percent = 100;

/// Midnight before the first serving.
PlanTime dayOfServing(const Formulation& formulation, const Timetable& times)
{
    std::optional<PlanTime> first;
    for (const auto& [course, event] : formulation.servings) {
        if (const auto when = times.time({event, Edge::Start})) {
            first = std::min(first.value_or(*when), *when);
        }
    }
    if (!first) {
        return formulation.problem.horizon;
    }
    const CivilTime serving = formulation.calendar.civil(*first);
    return formulation.calendar.planTime(CivilTime{serving.date, {0, 0}});
}

} // namespace

std::vector<LeftUsed> leftUsedBy(const Plan& plan)
{
    std::vector<LeftUsed> result;
    for (const TaskIndex task : plan.formulation->tasks.indices()) {
        const TaskSource& source = plan.formulation->tasks[task];
        const LeftUsed used{source.text, source.dishName};
        if (source.role == TaskRole::TakeFrom && plan.interval(task) &&
            std::ranges::find(result, used) == result.end()) {
            result.push_back(used);
        }
    }
    return result;
}

EveningFigures eveningOf(const Plan& plan, const Kitchen& kitchen)
{
    const Formulation& formulation = *plan.formulation;
    const Problem& problem = formulation.problem;
    const Timetable times(problem, plan.schedule);
    const PlanTime day = dayOfServing(formulation, times);
    EveningFigures figures;
    figures.handsOn = plan.figures.handsOnTotal;
    figures.lastHour = plan.figures.handsOnLastHour;
    figures.ovenChanges = plan.figures.ovenChanges;
    figures.ovenOn = plan.figures.ovenOn;
    figures.energy = energyOf(plan, kitchen);
    figures.cost = plan.figures.cost.total();
    std::int64_t percentMinutes = 0;
    for (const TaskIndex index : problem.tasks.indices()) {
        const auto when = times.interval(index);
        if (!when || !isWork(formulation.tasks[index].role)) {
            continue;
        }
        const bool isStep = formulation.tasks[index].role == TaskRole::Step;
        figures.steps += isStep ? 1 : 0;
        figures.stepsAhead += isStep && when->end <= day ? 1 : 0;
        const Task& task = problem.tasks[index];
        if (task.needsCooks() && when->start < day) {
            percentMinutes += (std::min(when->end, day) - when->start).count() *
                              task.hands->attention.percent() * task.hands->cooks;
        }
    }
    figures.ahead = Minutes{(percentMinutes + percent / 2) / percent};
    figures.unsafe =
        static_cast<int>(std::ranges::count(plan.clashes, Severity::Unsafe, &Clash::severity));
    return figures;
}

} // namespace suppertide::menus
