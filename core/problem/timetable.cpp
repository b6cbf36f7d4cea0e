#include "core/problem/timetable.h"

namespace suppertide {

IndexedVector<TaskIndex, bool>
presentTasks(const Problem& problem,
             const IndexedVector<ChoiceIndex, std::optional<OptionIndex>>& options)
{
    IndexedVector<TaskIndex, bool> present(problem.tasks.size(), true);
    for (const ChoiceIndex choice : problem.choices.indices()) {
        for (const OptionIndex option : problem.choices[choice].options.indices()) {
            const bool chosen = options[choice] == option;
            for (const TaskIndex task : problem.choices[choice].options[option].tasks) {
                present[task] = chosen;
            }
        }
    }
    return present;
}

Timetable::Timetable(const Problem& problem, const Schedule& schedule)
    : problem_(&problem), schedule_(&schedule), present_(presentTasks(problem, schedule.options))
{}

std::optional<PlanTime> Timetable::time(const TaskPoint& point) const
{
    const auto& start = schedule_->starts[point.task];
    if (!present_[point.task] || !start) {
        return std::nullopt;
    }
    return point.edge == Edge::Start ? *start : *start + problem_->tasks[point.task].duration;
}

std::optional<Interval> Timetable::interval(TaskIndex task) const
{
    const auto start = time({task, Edge::Start});
    if (!start) {
        return std::nullopt;
    }
    return Interval{*start, *start + problem_->tasks[task].duration};
}

std::optional<Interval> Timetable::held(const TaskPoint& from, const TaskPoint& to) const
{
    const auto begin = time(from);
    const auto end = time(to);
    if (!begin || !end || *end <= *begin) {
        return std::nullopt;
    }
    return Interval{*begin, *end};
}

std::vector<Interval> Timetable::atTable(const Cook& cook) const
{
    std::vector<Interval> result = cook.table;
    for (const TableAfter& after : cook.tableAfter) {
        const auto event = time({after.event, Edge::Start});
        if (event && after.minutes.count() > 0) {
            result.push_back({*event, *event + after.minutes});
        }
    }
    return result;
}

} // namespace suppertide
