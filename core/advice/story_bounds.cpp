#include "core/advice/story_bounds.h"

#include <algorithm>

#include "core/plan/presence.h"

namespace suppertide {

namespace {

Minutes offset(const Problem& problem, const TaskPoint& point)
{
    return point.edge == Edge::End ? problem.tasks[point.task].duration : Minutes{0};
}

} // namespace

StoryBounds::StoryBounds(const Formulation& formulation, const std::vector<Requirement>& conflict,
                         bool withHours)
    : problem_(formulation.problem)
{
    const Problem& problem = formulation.problem;
    for (const Requirement& requirement : conflict) {
        for (const TaskIndex task : tasksOf(problem, requirement)) {
            add(formulation, task);
        }
        if (const auto* lag = std::get_if<LagIndex>(&requirement)) {
            lags_.push_back(*lag);
        }
        if (const auto* hands = std::get_if<HandsOf>(&requirement)) {
            bounds_.at(hands->task).hands = withHours;
        }
        if (const auto* window = std::get_if<WindowOf>(&requirement)) {
            setWindow(window->task);
        }
    }
    for (const ChoiceIndex choice : problem.choices.indices()) {
        for (const OptionIndex option : problem.choices[choice].options.indices()) {
            for (const TaskIndex task : problem.choices[choice].options[option].tasks) {
                places_.emplace(task, Place{choice, option});
            }
        }
    }
    settle();
}

void StoryBounds::add(const Formulation& formulation, TaskIndex task)
{
    const bool isNew =
        bounds_
            .try_emplace(task, Bound{PlanTime{},
                                     problem_.horizon - problem_.tasks[task].duration,
                                     StoryLeg::Why::Window,
                                     StoryLeg::Why::Window,
                                     {},
                                     {},
                                     false,
                                     false})
            .second;
    // The hour of a course is known to whoever reads of it, named by the conflict or not.
    if (isNew && formulation.tasks[task].role == TaskRole::Serving) {
        setWindow(task);
    }
}

void StoryBounds::setWindow(TaskIndex index)
{
    const Task& task = problem_.tasks[index];
    Bound& bound = bounds_.at(index);
    bound.earliest = task.window.start;
    bound.latest = task.window.end - task.duration;
    bound.dated = true;
}

void StoryBounds::settle()
{
    // Each pass settles one more of a chain; a circle of ties that contradict each other never
    // settles, and needs no more.
    for (std::size_t passes = 0; passes <= 2 * bounds_.size() + 2; ++passes) {
        if (!pass()) {
            return;
        }
    }
}

bool StoryBounds::pass()
{
    bool isChanged = false;
    for (const LagIndex lag : lags_) {
        isChanged = pushBy(lag) || isChanged;
    }
    for (auto& [task, bound] : bounds_) {
        isChanged = (bound.hands && snap(task)) || isChanged;
    }
    return isChanged;
}

bool StoryBounds::pushBy(LagIndex index)
{
    const Lag& lag = problem_.lags[index];
    const Minutes between = offset(problem_, lag.from) - offset(problem_, lag.to);
    bool isChanged = false;
    if (lag.min) {
        isChanged = push(lag.from.task, lag.to.task, between + *lag.min, index);
    }
    if (lag.max) {
        isChanged = push(lag.to.task, lag.from.task, -between - *lag.max, index) || isChanged;
    }
    return isChanged;
}

bool StoryBounds::push(TaskIndex from, TaskIndex to, Minutes gap, LagIndex lag)
{
    Bound& first = bounds_.at(from);
    Bound& second = bounds_.at(to);
    bool isChanged = first.dated != second.dated;
    first.dated = first.dated || second.dated;
    second.dated = first.dated;
    if (reaches(from, to) && second.earliest < first.earliest + gap) {
        second.earliest = first.earliest + gap;
        second.earliestWhy = StoryLeg::Why::Tie;
        second.lag = lag;
        second.from = from;
        isChanged = true;
    }
    if (reaches(to, from) && first.latest > second.latest - gap) {
        first.latest = second.latest - gap;
        first.latestWhy = StoryLeg::Why::Tie;
        isChanged = true;
    }
    return isChanged;
}

bool StoryBounds::reaches(TaskIndex from, TaskIndex to) const
{
    const auto one = places_.find(from);
    if (one == places_.end()) {
        return true;
    }
    const auto other = places_.find(to);
    return other != places_.end() && other->second.choice == one->second.choice &&
           other->second.option == one->second.option;
}

/// Only the earliest: a chain is told from when somebody comes to when it is too late.
bool StoryBounds::snap(TaskIndex task)
{
    Bound& bound = bounds_.at(task);
    const Minutes length = problem_.tasks[task].duration;
    PlanTime first = problem_.horizon; // where there is no such time at all
    for (const Interval& open : openTo(task)) {
        const PlanTime from = std::max(open.start, bound.earliest);
        if (from + length <= open.end) {
            first = std::min(first, from);
        }
    }
    if (bound.earliest >= first) {
        return false;
    }
    bound.earliest = first;
    bound.earliestWhy = StoryLeg::Why::Hours;
    bound.lag.reset();
    bound.from.reset();
    return true;
}

std::vector<Interval> StoryBounds::freeTimes(const Cook& cook, const Task& task) const
{
    std::vector<Interval> table = cook.table;
    for (const TableAfter& after : cook.tableAfter) {
        const auto event = bounds_.find(after.event);
        if (event != bounds_.end() && event->second.earliest == event->second.latest) {
            table.push_back({event->second.earliest, event->second.earliest + after.minutes});
        }
    }
    if (task.atTable) {
        return cook.free;
    }
    return common(cook.free, gapsIn({PlanTime{}, problem_.horizon}, merged(std::move(table))));
}

/// Times in which some cook who can do the task is free; for several cooks those of the first.
std::vector<Interval> StoryBounds::openTo(TaskIndex index) const
{
    const Task& task = problem_.tasks[index];
    std::vector<Interval> open;
    for (const Cook& cook : problem_.cooks) {
        const auto& skill = task.hands->skill;
        if (skill && std::ranges::find(cook.skills, *skill) == cook.skills.end()) {
            continue;
        }
        const std::vector<Interval> times = freeTimes(cook, task);
        open.insert(open.end(), times.begin(), times.end());
    }
    // Not merged: one cook does it from beginning to end.
    std::ranges::sort(open);
    return open;
}

std::vector<CookIndex> StoryBounds::comingAt(TaskIndex index, PlanTime time) const
{
    std::vector<CookIndex> coming;
    const Task& task = problem_.tasks[index];
    for (const CookIndex cook : problem_.cooks.indices()) {
        const auto& skill = task.hands->skill;
        const Cook& who = problem_.cooks[cook];
        const bool isAble = !skill || std::ranges::find(who.skills, *skill) != who.skills.end();
        const std::vector<Interval> times = freeTimes(who, task);
        if (isAble && std::ranges::any_of(times, [&](const Interval& free) {
                return free.start == time && time + task.duration <= free.end;
            })) {
            coming.push_back(cook);
        }
    }
    return coming;
}

std::optional<TaskIndex> StoryBounds::late() const
{
    std::optional<TaskIndex> late;
    for (const auto& [task, bound] : bounds_) {
        if (bound.earliest > bound.latest && bound.latestWhy != StoryLeg::Why::Tie &&
            !places_.contains(task) && (!late || bounds_.at(*late).latest < bound.latest)) {
            late = task;
        }
    }
    return late;
}

std::vector<StoryLeg> StoryBounds::legsTo(TaskIndex task) const
{
    std::vector<StoryLeg> legs;
    std::optional<TaskIndex> at = task;
    while (at && legs.size() <= bounds_.size()) {
        const Bound& bound = bounds_.at(*at);
        StoryLeg leg{bound.earliestWhy, *at, bound.earliest, bound.lag, {}};
        if (leg.why == StoryLeg::Why::Hours) {
            leg.cooks = comingAt(*at, bound.earliest);
        }
        legs.push_back(std::move(leg));
        at = bound.earliestWhy == StoryLeg::Why::Tie ? bound.from : std::nullopt;
    }
    std::ranges::reverse(legs);
    return legs;
}

const std::string* StoryBounds::optionOf(TaskIndex task) const
{
    const auto place = places_.find(task);
    return place == places_.end()
               ? nullptr
               : &problem_.choices[place->second.choice].options[place->second.option].id;
}

} // namespace suppertide
