#include "core/plan/lay_out.h"

#include <algorithm>

#include "core/assign/live_assign.h"
#include "core/check/live_check.h"
#include "core/plan/tie_graph.h"
#include "core/problem/timetable.h"

namespace suppertide {

namespace {

template <typename Index, typename T>
std::optional<Index> indexOfId(const IndexedVector<Index, T>& list, const std::string& id)
{
    for (const Index index : list.indices()) {
        if (list[index].id == id) {
            return index;
        }
    }
    return std::nullopt;
}

/// What the layout says; else what is least disliked, of several the first.
OptionIndex chosenOption(const Choice& choice, const Layout& layout)
{
    if (const auto said = layout.options.find(choice.id); said != layout.options.end()) {
        if (const auto option = indexOfId(choice.options, said->second)) {
            return *option;
        }
    }
    OptionIndex best{0};
    for (const OptionIndex option : choice.options.indices()) {
        if (choice.options[option].cost < choice.options[best].cost) {
            best = option;
        }
    }
    return best;
}

/// Times that the evening gives; where the user put an event counts only within its window.
bool isGiven(TaskRole role)
{
    return role == TaskRole::Serving || role == TaskRole::Target || role == TaskRole::Watch ||
           role == TaskRole::OvenSetting;
}

/// Events that only follow from the starts of others.
bool isDerived(const Formulation& formulation, TaskIndex task)
{
    return formulation.problem.tasks[task].duration == Minutes{0} &&
           formulation.tasks[task].role != TaskRole::Step && !isGiven(formulation.tasks[task].role);
}

Starts knownStarts(const Formulation& formulation, const Layout& layout)
{
    const Problem& problem = formulation.problem;
    Starts known(problem.tasks.size());
    for (const TaskIndex task : problem.tasks.indices()) {
        const Task& what = problem.tasks[task];
        const auto laid = layout.starts.find(what.id);
        if (laid != layout.starts.end() && !isDerived(formulation, task)) {
            known[task] = formulation.calendar.planTime(laid->second);
        }
        if (isGiven(formulation.tasks[task].role)) {
            const PlanTime latest = what.window.end - what.duration;
            known[task] = std::clamp(known[task].value_or(what.window.start), what.window.start,
                                     std::max(what.window.start, latest));
        }
    }
    return known;
}

/// Washing after a use, and the end of what is held, wait for nobody: they come as soon as they
/// may.
bool comesEarly(const Formulation& formulation, const TieGraph& ties, TaskIndex task)
{
    const TaskRole role = formulation.tasks[task].role;
    return (role == TaskRole::Washing && !ties.before(task).empty()) ||
           (isDerived(formulation, task) && ties.after(task).empty());
}

void bringForward(const Formulation& formulation, const TieGraph& ties, const Starts& known,
                  Starts& starts)
{
    for (const TaskIndex task : formulation.problem.tasks.indices()) {
        if (!starts[task] || known[task] || !comesEarly(formulation, ties, task)) {
            continue;
        }
        PlanTime earliest = ties.window(task).start;
        for (const Tie& tie : ties.before(task)) {
            earliest = std::max(earliest, *starts[tie.other] + tie.gap);
        }
        starts[task] = std::min(earliest, std::max(*starts[task], ties.window(task).start));
    }
}

IndexedVector<TaskIndex, bool> pinnedTasks(const Formulation& formulation, const Layout& layout)
{
    IndexedVector<TaskIndex, bool> pinned(formulation.problem.tasks.size(), false);
    for (const TaskIndex task : formulation.problem.tasks.indices()) {
        pinned[task] = layout.pinned.contains(formulation.problem.tasks[task].id) ||
                       isGiven(formulation.tasks[task].role);
    }
    return pinned;
}

TieGraph tiesIn(const Formulation& formulation, const Schedule& schedule)
{
    return {formulation.problem, presentTasks(formulation.problem, schedule.options)};
}

/// How far the group may shift with all else fixed, by ties and windows alone.
std::pair<Minutes, Minutes> shiftAlone(const TieGraph& ties, const Starts& starts,
                                       const std::vector<TaskIndex>& group)
{
    Minutes back = Minutes::max();
    Minutes forth = Minutes::max();
    const auto isOther = [&](TaskIndex task) {
        return std::ranges::find(group, task) == group.end() && starts[task];
    };
    for (const TaskIndex task : group) {
        const PlanTime start = *starts[task];
        back = std::min(back, start - ties.window(task).start);
        forth = std::min(forth, ties.window(task).end - start);
        for (const Tie& tie : ties.before(task)) {
            if (isOther(tie.other)) {
                back = std::min(back, start - (*starts[tie.other] + tie.gap));
            }
        }
        for (const Tie& tie : ties.after(task)) {
            if (isOther(tie.other)) {
                forth = std::min(forth, *starts[tie.other] - (start + tie.gap));
            }
        }
    }
    return {std::max(back, Minutes{0}), std::max(forth, Minutes{0})};
}

void shift(Starts& starts, const std::vector<TaskIndex>& group, Minutes by)
{
    for (const TaskIndex task : group) {
        starts[task] = *starts[task] + by;
    }
}

} // namespace

AssignmentPins assignmentPins(const Formulation& formulation, const Layout& layout)
{
    const Problem& problem = formulation.problem;
    AssignmentPins pins = AssignmentPins::none(problem);
    for (const auto& [id, names] : layout.cooks) {
        const auto task = formulation.taskById.find(id);
        for (const std::string& name : names) {
            const auto cook = indexOfId(problem.cooks, name);
            if (task != formulation.taskById.end() && cook) {
                pins.cooks[task->second].push_back(*cook);
            }
        }
    }
    for (const DemandIndex demand : problem.demands.indices()) {
        const auto said = layout.units.find(problem.demands[demand].id);
        if (said != layout.units.end() && problem.demands[demand].pool) {
            pins.units[demand] =
                indexOfId(problem.pools[*problem.demands[demand].pool].units, said->second);
        }
    }
    for (const OvenDemandIndex demand : problem.ovenDemands.indices()) {
        const auto said = layout.ovens.find(problem.ovenDemands[demand].id);
        if (said != layout.ovens.end()) {
            pins.ovens[demand] = indexOfId(problem.ovens, said->second);
        }
    }
    return pins;
}

Schedule layOut(const Formulation& formulation, const Layout& layout)
{
    const Problem& problem = formulation.problem;
    Schedule schedule = emptyScheduleFor(problem);
    for (const ChoiceIndex choice : problem.choices.indices()) {
        schedule.options[choice] = chosenOption(problem.choices[choice], layout);
    }
    const TieGraph ties = tiesIn(formulation, schedule);
    const Starts known = knownStarts(formulation, layout);
    schedule.starts = ties.latestStarts(known);
    bringForward(formulation, ties, known, schedule.starts);
    return assign(problem, std::move(schedule), assignmentPins(formulation, layout));
}

DragRange dragRange(const Formulation& formulation, const Schedule& schedule, TaskIndex task)
{
    const TieGraph ties = tiesIn(formulation, schedule);
    if (!schedule.starts[task] || !ties.isPresent(task)) {
        return {};
    }
    const PlanTime start = *schedule.starts[task];
    const Starts free(formulation.problem.tasks.size());
    const PlanTime earliest = *ties.earliestStarts(free)[task];
    const PlanTime latest = *ties.latestStarts(free)[task];
    DragRange range;
    // Ties that contradict each other leave no room at all.
    range.starts = earliest <= latest ? Interval{earliest, latest} : Interval{start, start};
    const auto [back, forth] = shiftAlone(ties, schedule.starts, ties.rigidGroup(task));
    range.startsAlone = {start - back, start + forth};
    return range;
}

Interval slackOf(const Formulation& formulation, const Layout& layout, const Schedule& schedule,
                 TaskIndex task)
{
    const Problem& problem = formulation.problem;
    const TieGraph ties = tiesIn(formulation, schedule);
    if (!schedule.starts[task] || !ties.isPresent(task)) {
        return {};
    }
    const std::vector<TaskIndex> group = ties.rigidGroup(task);
    const auto [back, forth] = shiftAlone(ties, schedule.starts, group);
    const AssignmentPins pins = assignmentPins(formulation, layout);
    LiveAssign assigned(problem);
    LiveCheck check(problem, schedule);
    const std::size_t brokenNow = check.broken().size();
    const auto holdsAt = [&](Minutes by) {
        Schedule moved = schedule;
        shift(moved.starts, group, by);
        return check.update(assigned.assign(std::move(moved), pins)).size() <= brokenNow;
    };
    Minutes earlier{0};
    while (earlier < back && holdsAt(-earlier - Minutes{1})) {
        ++earlier;
    }
    Minutes later{0};
    while (later < forth && holdsAt(later + Minutes{1})) {
        ++later;
    }
    const PlanTime start = *schedule.starts[task];
    return {start - earlier, start + later};
}

Schedule movedStarts(const Formulation& formulation, const Layout& layout, Schedule schedule,
                     TaskIndex task, PlanTime start)
{
    if (!schedule.starts[task]) {
        return schedule;
    }
    const Minutes by = start - *schedule.starts[task];
    if (by == Minutes{0}) {
        return schedule;
    }
    const TieGraph ties = tiesIn(formulation, schedule);
    const std::vector<TaskIndex> group = ties.rigidGroup(task);
    shift(schedule.starts, group, by);
    ties.follow(schedule.starts, group, by > Minutes{0}, pinnedTasks(formulation, layout));
    return schedule;
}

Schedule moveTask(const Formulation& formulation, const Layout& layout, const Schedule& schedule,
                  TaskIndex task, PlanTime start)
{
    return assign(formulation.problem, movedStarts(formulation, layout, schedule, task, start),
                  assignmentPins(formulation, layout));
}

} // namespace suppertide
