#include <algorithm>
#include <utility>

#include "core/plan/clash_finder.h"
#include "core/plan/food_safety.h"
#include "core/plan/plan.h"
#include "core/plan/seen_step.h"
#include "core/plan/tool_order.h"
#include "core/problem/timetable.h"

namespace suppertide {

std::optional<Interval> Plan::interval(TaskIndex task) const
{
    const auto& start = schedule.starts[task];
    if (!start) {
        return std::nullopt;
    }
    return Interval{*start, *start + formulation->problem.tasks[task].duration};
}

PlanPtr judgePlan(FormulationPtr formulation, const PlanInput& input, Schedule schedule,
                  std::uint64_t revision)
{
    expects(formulation != nullptr, "a formulation");
    auto plan = std::make_shared<Plan>();
    plan->clashes =
        ClashFinder(*formulation).clashes(schedule, check(formulation->problem, schedule));
    for (Clash& clash : foodClashes(*formulation, input)) {
        plan->clashes.push_back(std::move(clash));
    }
    for (Clash& clash : FoodSafety(*formulation, input).update(schedule)) {
        plan->clashes.push_back(std::move(clash));
    }
    for (Clash& clash : ToolOrder(*formulation, input).clashes(schedule)) {
        plan->clashes.push_back(std::move(clash));
    }
    FoodSafety::mergeWaits(*formulation, plan->clashes);
    sortClashes(plan->clashes);
    plan->figures = figuresOf(*formulation, schedule);
    plan->formulation = std::move(formulation);
    plan->schedule = std::move(schedule);
    plan->revision = revision;
    return plan;
}

Layout layoutOf(const Formulation& formulation, const Schedule& schedule, const Layout& pins)
{
    Layout layout = pins;
    layout.starts.clear();
    for (const TaskIndex task : formulation.problem.tasks.indices()) {
        const auto& start = schedule.starts[task];
        if (start && isDeed(formulation.tasks[task].role)) {
            layout.starts.emplace(formulation.problem.tasks[task].id,
                                  formulation.calendar.instant(*start));
        }
    }
    for (const DemandIndex index : formulation.problem.demands.indices()) {
        if (formulation.demands[index].washedFor) {
            layout.washed.insert(formulation.problem.demands[index].id);
        }
    }
    for (const ChoiceIndex index : formulation.problem.choices.indices()) {
        const Choice& choice = formulation.problem.choices[index];
        if (const auto& option = schedule.options[index]) {
            layout.options[choice.id] = choice.options[*option].id;
        }
    }
    return layout;
}

} // namespace suppertide
