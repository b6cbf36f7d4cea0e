#include "core/night/rest_of_evening.h"

#include <algorithm>
#include <map>

#include "core/check/check.h"
#include "core/night/rest_writer.h"
#include "core/plan/lay_out.h"
#include "core/plan/tie_graph.h"

namespace suppertide {

namespace {

/// After so many attempts to keep most with whom it was, all may go to anybody.
constexpr int mostHandedOver = 24;

/// What is begun, where it really was and as long as it really takes.
Formulation withFacts(Formulation formulation, const EveningFacts& facts)
{
    for (const TaskIndex index : formulation.problem.tasks.indices()) {
        const StepFact& fact = facts.steps[index];
        if (fact.isBegun()) {
            Task& task = formulation.problem.tasks[index];
            task.duration = fact.when.length();
            task.window = fact.when;
        }
    }
    return formulation;
}

/// The layout with true starts, and with the means by which things were begun.
Layout withFacts(Layout layout, const Formulation& formulation, const EveningFacts& facts,
                 const Progress& progress)
{
    for (const TaskIndex task : formulation.problem.tasks.indices()) {
        const StepFact& fact = facts.steps[task];
        const std::string& id = formulation.problem.tasks[task].id;
        if (fact.isBegun() && isReportable(formulation.tasks[task])) {
            layout.starts[id] = formulation.calendar.instant(fact.when.start);
        }
    }
    for (const auto& [id, cooks] : progress.cooks) {
        layout.cooks.emplace(id, cooks);
    }
    for (const auto& [id, report] : progress.steps) {
        if (report.started && !report.cooks.empty()) {
            layout.cooks[id] = report.cooks;
        }
        for (const auto& [demand, unit] : report.units) {
            layout.units[demand] = unit;
        }
        for (const auto& [demand, oven] : report.ovens) {
            layout.ovens[demand] = oven;
        }
    }
    return layout;
}

} // namespace

Result<RestOfEvening> restOfEvening(const PlanInput& input, const Progress& progress, Instant now,
                                    const RestOptions& options)
{
    const Result<FormulationPtr> formulation = formulate(input);
    if (!formulation) {
        return formulation.error();
    }
    RestOfEvening rest;
    const Schedule asPlanned = layOut(**formulation, *input.layout);
    rest.layout = layoutOf(**formulation, asPlanned, *input.layout);
    rest.facts = factsOf(**formulation, asPlanned, progress, now);
    rest.whole =
        std::make_shared<const Formulation>(withFacts(Formulation(**formulation), rest.facts));
    rest.planned = layOut(*rest.whole, withFacts(rest.layout, *rest.whole, rest.facts, progress));
    RestOptions all = options;
    all.givenUp.insert(progress.givenUp.begin(), progress.givenUp.end());
    all.cooksLonger = std::max(all.cooksLonger, progress.longerHours);
    RestWriter(rest, progress, all).write();
    return rest;
}

Progress withGivenUp(Progress progress, const RestOptions& givingWay)
{
    progress.givenUp.insert(givingWay.givenUp.begin(), givingWay.givenUp.end());
    progress.longerHours = std::max(progress.longerHours, givingWay.cooksLonger);
    return progress;
}

Schedule carriedOn(const RestOfEvening& of)
{
    const Formulation& rest = *of.formulation;
    Layout onward = of.layout;
    for (const Task& task : rest.problem.tasks) {
        const auto laid = onward.starts.find(task.id);
        if (laid != onward.starts.end()) {
            laid->second = std::max(laid->second, rest.calendar.instant(task.window.start));
        }
    }
    Schedule schedule = layOut(rest, onward);
    const TieGraph ties(rest.problem, presentTasks(rest.problem, schedule.options));
    IndexedVector<TaskIndex, bool> fixed(rest.problem.tasks.size(), false);
    std::vector<TaskIndex> inOrder;
    for (const TaskIndex index : rest.problem.tasks.indices()) {
        const Task& task = rest.problem.tasks[index];
        fixed[index] = task.window.length() == task.duration;
        if (schedule.starts[index]) {
            inOrder.push_back(index);
        }
    }
    std::ranges::stable_sort(inOrder, {}, [&](TaskIndex task) { return *schedule.starts[task]; });
    for (const TaskIndex task : inOrder) {
        ties.follow(schedule.starts, {task}, true, fixed);
    }
    return assignedAsBefore(of, schedule);
}

Schedule assignedAsBefore(const RestOfEvening& rest, const Schedule& starts)
{
    const Problem& problem = rest.formulation->problem;
    const AssignmentPins wished = assignmentPins(*rest.formulation, rest.layout);
    AssignmentPins all = wished;
    for (const TaskIndex task : rest.whole->problem.tasks.indices()) {
        const auto left = rest.inRest[task];
        if (left && problem.tasks[*left].needsCooks()) {
            all.cooks[*left] = rest.planned.cooks[task];
        }
    }
    const auto byId = [](const auto& list) {
        std::map<std::string, std::size_t> ids;
        for (const auto index : list.indices()) {
            ids.emplace(list[index].id, index.value());
        }
        return ids;
    };
    const auto demands = byId(rest.whole->problem.demands);
    for (const DemandIndex index : problem.demands.indices()) {
        const auto whole = demands.find(problem.demands[index].id);
        if (whole != demands.end()) {
            all.units[index] = rest.planned.units[DemandIndex{whole->second}];
        }
    }
    const auto ovenDemands = byId(rest.whole->problem.ovenDemands);
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        const auto whole = ovenDemands.find(problem.ovenDemands[index].id);
        if (whole != ovenDemands.end()) {
            all.ovens[index] = rest.planned.ovens[OvenDemandIndex{whole->second}];
        }
    }
    // What cannot stay with its cook goes to another, one after the other.
    for (int i = 0; i < mostHandedOver; ++i) {
        Schedule schedule = assign(problem, starts, all);
        const std::vector<Broken> broken = check(problem, schedule);
        if (broken.empty()) {
            return schedule;
        }
        std::optional<TaskIndex> next; // the one that begins last, so that what is on goes on
        for (const Broken& each : broken) {
            for (const TaskIndex task : each.tasks) {
                const bool mayGo = all.cooks[task] != wished.cooks[task];
                if (mayGo && (!next || starts.starts[*next] < starts.starts[task])) {
                    next = task;
                }
            }
            if (next) {
                break;
            }
        }
        if (next) {
            all.cooks[*next] = wished.cooks[*next];
        } else {
            all.units = wished.units;
            all.ovens = wished.ovens;
        }
    }
    return assign(problem, starts, wished);
}

std::vector<NightMove> movesOf(const RestOfEvening& of, const Schedule& schedule)
{
    const Formulation& rest = *of.formulation;
    std::vector<NightMove> moves;
    for (const TaskIndex index : rest.problem.tasks.indices()) {
        const Task& task = rest.problem.tasks[index];
        const auto laid = of.layout.starts.find(task.id);
        const auto& start = schedule.starts[index];
        const bool isUnderWay = task.window == Interval{planTime(0), planTime(0) + task.duration};
        if (laid == of.layout.starts.end() || !start || isUnderWay ||
            rest.calendar.instant(*start) == laid->second || !isReportable(rest.tasks[index])) {
            continue;
        }
        moves.push_back({index, laid->second, rest.calendar.instant(*start)});
    }
    std::ranges::stable_sort(moves, {}, &NightMove::to);
    std::vector<NightMove> firsts;
    for (const NightMove& move : moves) {
        const bool isSaid = std::ranges::any_of(firsts, [&](const NightMove& first) {
            return areOneBatch(rest.tasks[first.task], rest.tasks[move.task]) &&
                   first.to - first.from == move.to - move.from;
        });
        if (!isSaid) {
            firsts.push_back(move);
        }
    }
    return firsts;
}

Layout layoutWith(const RestOfEvening& rest, const Schedule& schedule)
{
    const Formulation& left = *rest.formulation;
    const Layout planned = layoutOf(left, schedule, rest.layout);
    Layout with = rest.layout;
    for (const auto& [id, start] : planned.starts) {
        with.starts[id] = start;
    }
    with.options = planned.options;
    for (const TaskIndex task : rest.whole->problem.tasks.indices()) {
        const StepFact& fact = rest.facts.steps[task];
        if (fact.isBegun() && isReportable(rest.whole->tasks[task])) {
            with.starts[rest.whole->problem.tasks[task].id] =
                rest.whole->calendar.instant(fact.when.start);
        }
    }
    return with;
}

} // namespace suppertide
