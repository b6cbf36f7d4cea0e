#include "core/check/evidence.h"

#include <algorithm>

namespace suppertide {

Evidence::Evidence(const Problem& problem, const Schedule& schedule)
    : problem_(&problem), schedule_(&schedule), ties_(problem), times_(problem, schedule)
{
    expects(schedule.options.size() == problem.choices.size() &&
                schedule.starts.size() == problem.tasks.size() &&
                schedule.cooks.size() == problem.tasks.size() &&
                schedule.units.size() == problem.demands.size() &&
                schedule.ovens.size() == problem.ovenDemands.size() &&
                schedule.programs.size() == problem.ovens.size(),
            "a schedule with lists as long as the problem's");
    for (const OvenIndex oven : problem.ovens.indices()) {
        curves_.push_back(OvenCurve(problem.ovens[oven], schedule.programs[oven]));
    }
    for (const Cook& cook : problem.cooks) {
        atTable_.push_back(times_.atTable(cook));
    }
}

std::vector<TaskIndex> Evidence::inOrderOfStart(std::vector<TaskIndex> tasks) const
{
    std::ranges::sort(tasks);
    tasks.erase(std::unique(tasks.begin(), tasks.end()), tasks.end());
    std::ranges::stable_sort(tasks, [this](TaskIndex a, TaskIndex b) {
        const auto startA = times_.time({a, Edge::Start});
        const auto startB = times_.time({b, Edge::Start});
        return startA && (!startB || *startA < *startB);
    });
    return tasks;
}

void Evidence::refreshPresence()
{
    times_ = Timetable(*problem_, *schedule_);
}

void Evidence::refreshTable(CookIndex cook)
{
    atTable_[cook] = times_.atTable(problem_->cooks[cook]);
}

void Evidence::refreshCurve(OvenIndex oven)
{
    curves_[oven] = OvenCurve(problem_->ovens[oven], schedule_->programs[oven]);
}

} // namespace suppertide
