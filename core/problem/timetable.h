// Timetable: which tasks of a problem are present in a schedule, and when things happen in it.
// The common vocabulary of checker, assignment and planner; it judges nothing.
#pragma once

#include <optional>
#include <vector>

#include "core/problem/problem.h"
#include "core/problem/schedule.h"

namespace suppertide {

/// For each task whether it is present under these options: named by no option, or by a chosen one.
[[nodiscard]] IndexedVector<TaskIndex, bool>
presentTasks(const Problem& problem,
             const IndexedVector<ChoiceIndex, std::optional<OptionIndex>>& options);

class Timetable
{
public:
    Timetable(const Problem& problem, const Schedule& schedule);

    [[nodiscard]] bool isPresent(TaskIndex task) const { return present_[task]; }
    /// Absent if the task is not present or has no start.
    [[nodiscard]] std::optional<PlanTime> time(const TaskPoint& point) const;
    [[nodiscard]] std::optional<Interval> interval(TaskIndex task) const;
    /// Whether all the tasks that it names are present.
    [[nodiscard]] bool bothPresent(const TaskPoint& from, const TaskPoint& to) const
    {
        return present_[from.task] && present_[to.task];
    }
    /// From when to when something is held; absent if it does not count or holds nothing.
    [[nodiscard]] std::optional<Interval> held(const TaskPoint& from, const TaskPoint& to) const;
    /// The cook's times at table, fixed and after events, in no order, possibly overlapping.
    [[nodiscard]] std::vector<Interval> atTable(const Cook& cook) const;

private:
    const Problem* problem_;
    const Schedule* schedule_;
    IndexedVector<TaskIndex, bool> present_;
};

} // namespace suppertide
