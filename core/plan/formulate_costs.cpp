// What costs how much: the user's preferences, as core/plan/weights.h weighs them, put into the
// problem.
#include <algorithm>
#include <set>

#include "core/plan/evening.h"
#include "core/plan/seen_step.h"
#include "core/plan/weights.h"

namespace suppertide {

namespace {

constexpr Minutes sessionGap{60};
constexpr Minutes lastHour{60};

void addQuietAtTable(Evening& evening, const Course& course, std::int64_t rate)
{
    FormulationDraft& draft = evening.draft;
    const TaskIndex served = evening.servings.at(course.id);
    if (course.atTable <= Minutes{0}) {
        return;
    }
    Quiet quiet;
    quiet.rate = rate;
    if (course.isServingPinned) {
        const PlanTime from = draft.problem().tasks[served].window.start;
        quiet.when = {from, std::min(from + course.atTable, draft.horizon())};
    } else {
        TaskSource source;
        source.role = TaskRole::Mark;
        source.rule = Rule::Serving;
        source.course = course.id;
        source.dishName = course.name;
        const TaskIndex eaten = draft.addEvent("eaten/" + course.id.text(), std::move(source));
        LagSource tie;
        tie.rule = Rule::Serving;
        draft.addLag(startOf(served), startOf(eaten), {course.atTable, course.atTable}, tie);
        quiet.before = eaten;
        quiet.minutes = course.atTable;
    }
    draft.costs().quiet.push_back(quiet);
}

void addQuiet(Evening& evening, std::int64_t rate)
{
    if (rate == 0) {
        return;
    }
    for (const Course& course : evening.occasion().courses) {
        Quiet before;
        before.rate = rate;
        before.before = evening.servings.at(course.id);
        before.minutes = lastHour;
        evening.draft.costs().quiet.push_back(before);
        addQuietAtTable(evening, course, rate);
    }
}

void addLosses(Evening& evening, const Weights& weights)
{
    FormulationDraft& draft = evening.draft;
    for (const LagIndex index : draft.problem().lags.indices()) {
        const int lossPerHour = draft.formulation().lags[index].lossPerHour;
        if (lossPerHour > 0) {
            draft.lag(index).loss = weights.lossMinute(lossPerHour);
        }
        const TaskIndex from = draft.problem().lags[index].from.task;
        if (draft.formulation().tasks[from].role == TaskRole::Target) {
            draft.lag(index).loss = weights.lateMinute;
        }
    }
}

void stayAtStarts(Evening& evening, const Weights& weights)
{
    FormulationDraft& draft = evening.draft;
    std::set<SeenStep> seen;
    for (const TaskIndex task : draft.problem().tasks.indices()) {
        const Task& what = draft.problem().tasks[task];
        const auto laid = evening.layout().starts.find(what.id);
        const auto step = seenStepOf(draft.formulation().tasks[task]);
        if (laid == evening.layout().starts.end() || !step || what.duration == Minutes{0}) {
            continue;
        }
        const PlanTime at = draft.calendar().planTime(laid->second);
        if (draft.wholeHorizon().contains(at) && seen.insert(*step).second) {
            draft.costs().before.push_back({task, at});
        }
    }
    draft.costs().beforeRate = weights.movedMinute;
    draft.costs().beforeMoved = weights.moved;
}

/// Another option than the plan's counts as moving all that it holds.
void stayWithOptions(Evening& evening, const Weights& weights)
{
    FormulationDraft& draft = evening.draft;
    for (const ChoiceIndex index : draft.problem().choices.indices()) {
        const Choice& choice = draft.problem().choices[index];
        const auto laid = evening.layout().options.find(choice.id);
        if (laid == evening.layout().options.end() ||
            std::ranges::find(choice.options, laid->second, &Option::id) == choice.options.end()) {
            continue;
        }
        for (const OptionIndex option : choice.options.indices()) {
            const auto steps =
                std::ranges::count_if(choice.options[option].tasks, [&](TaskIndex task) {
                    return draft.problem().tasks[task].duration > Minutes{0};
                });
            if (choice.options[option].id != laid->second) {
                draft.addCost({index, option}, weights.moved * std::max<std::int64_t>(1, steps));
            }
        }
    }
}

} // namespace

void addCosts(Evening& evening)
{
    const Weights weights = weightsFor(evening.occasion().preferences, evening.input.closeness);
    Costs& costs = evening.draft.costs();
    costs.ovenChange = weights.ovenChange;
    costs.ovenOnMinute = weights.ovenOnMinute;
    costs.ovenSwitchOn = weights.ovenSwitchOn;
    costs.ovenSwitchOnWithin = weights.ovenSwitchOnWithin;
    costs.preferC = weights.preferC;
    costs.session = weights.session;
    costs.sessionGap = sessionGap;
    addQuiet(evening, weights.quietRate);
    addLosses(evening, weights);
    if (weights.moved > 0) {
        stayAtStarts(evening, weights);
        stayWithOptions(evening, weights);
    }
}

} // namespace suppertide
