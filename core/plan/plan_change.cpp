#include "core/plan/plan_change.h"

#include <algorithm>
#include <set>

#include "core/plan/seen_step.h"

namespace suppertide {

namespace {

std::optional<Instant> startIn(const Plan& plan, const std::string& task)
{
    const auto known = plan.formulation->taskById.find(task);
    if (known == plan.formulation->taskById.end()) {
        return std::nullopt;
    }
    const auto& start = plan.schedule.starts[known->second];
    return start ? std::optional(plan.formulation->calendar.instant(*start)) : std::nullopt;
}

void addCourses(const Plan& before, const Plan& after, PlanChange& change)
{
    for (const auto& [course, event] : after.formulation->servings) {
        const std::string& id = after.formulation->problem.tasks[event].id;
        const auto was = startIn(before, id);
        const auto is = startIn(after, id);
        change.coursesMoved += was && is && *was != *is ? 1 : 0;
    }
}

} // namespace

Minutes PlanChange::most() const
{
    Minutes most{0};
    for (const StepMove& move : moved) {
        most = std::max(most, std::chrono::abs(move.by));
    }
    return most;
}

PlanChange changeBetween(const Plan& before, const Plan& after)
{
    PlanChange change;
    std::set<SeenStep> seen;
    const Formulation& formulation = *after.formulation;
    for (const TaskIndex task : formulation.problem.tasks.indices()) {
        const auto step = seenStepOf(formulation.tasks[task]);
        const auto is = startIn(after, formulation.problem.tasks[task].id);
        if (!step || !is || !seen.insert(*step).second) {
            continue;
        }
        const auto was = startIn(before, formulation.problem.tasks[task].id);
        if (!was) {
            ++change.otherWay;
        } else if (*was != *is) {
            change.moved.push_back({task, std::chrono::duration_cast<Minutes>(*is - *was)});
        }
    }
    addCourses(before, after, change);
    return change;
}

} // namespace suppertide
