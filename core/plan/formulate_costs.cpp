// What costs how much: the user's preferences as weights of the problem. All are in cost units, of
// which one point has costUnitsPerPoint; between them they keep the order: on time, then fresh or
// calm as preferred, then the oven, then sessions, then closeness to the plan before.
#include <algorithm>

#include "core/plan/evening.h"

namespace suppertide {

namespace {

/// Points, unless said otherwise. Weights are our own choice.
constexpr std::int64_t lateMinute = 5;
constexpr std::int64_t ovenChange = 2;
constexpr std::int64_t session = 1;
constexpr Minutes sessionGap{60};
constexpr Minutes lastHour{60};
constexpr int calmest = 100;
constexpr int midway = 50;

/// Cost units a minute with the oven on: a third of a point an hour.
constexpr std::int64_t ovenOnMinute = 7;
/// Nobody switches an oven off to have it on again within so many minutes.
constexpr std::int64_t minutesWorthSwitching = 20;
/// Cost units a degree off what is preferred.
constexpr std::int64_t preferC = 12;
/// Cost units a minute away from where it was, and for having been moved at all.
constexpr std::int64_t beforeRate = 1;
constexpr std::int64_t beforeMoved = 30;

/// Cost units for a percent of a cook and minute: at 100 calm, ten minutes hands-on in the last
/// hour cost some three points.
constexpr std::int64_t calmestRate = 4;

std::int64_t quietRate(int calm)
{
    return calmestRate * calm / calmest;
}

/// Cost units a minute for a loss of so many points an hour; twice as dear where all is for
/// freshness, never nothing.
std::int64_t lossPerMinute(int lossPerHour, int calm)
{
    constexpr std::int64_t minutes = 60;
    const std::int64_t usual = lossPerHour * costUnitsPerPoint / minutes;
    return std::max<std::int64_t>(usual * (calmest - calm) / midway, usual / 10);
}

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

void addQuiet(Evening& evening, int calm)
{
    const std::int64_t rate = quietRate(calm);
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

void addLosses(Evening& evening, int calm)
{
    FormulationDraft& draft = evening.draft;
    for (const LagIndex index : draft.problem().lags.indices()) {
        const int lossPerHour = draft.formulation().lags[index].lossPerHour;
        if (lossPerHour > 0) {
            draft.lag(index).loss = lossPerMinute(lossPerHour, calm);
        }
        const TaskIndex from = draft.problem().lags[index].from.task;
        if (draft.formulation().tasks[from].role == TaskRole::Target) {
            draft.lag(index).loss = lateMinute * costUnitsPerPoint;
        }
    }
}

void addCloseness(Evening& evening)
{
    FormulationDraft& draft = evening.draft;
    for (const auto& [id, start] : evening.layout().starts) {
        const auto task = draft.formulation().taskById.find(id);
        if (task == draft.formulation().taskById.end()) {
            continue;
        }
        const PlanTime at = draft.calendar().planTime(start);
        const bool isWork = draft.problem().tasks[task->second].duration > Minutes{0};
        if (isWork && draft.wholeHorizon().contains(at)) {
            draft.costs().before.push_back({task->second, at});
        }
    }
    std::ranges::sort(draft.costs().before, {}, &BeforeStart::task);
    if (!draft.costs().before.empty()) {
        draft.costs().beforeRate = beforeRate;
        draft.costs().beforeMoved = beforeMoved;
    }
}

} // namespace

void addCosts(Evening& evening)
{
    const int calm = std::clamp(evening.occasion().preferences.calm, 0, calmest);
    Costs& costs = evening.draft.costs();
    costs.ovenChange = ovenChange * costUnitsPerPoint;
    costs.ovenOnMinute = ovenOnMinute;
    costs.ovenSwitchOn = minutesWorthSwitching * ovenOnMinute;
    costs.preferC = preferC;
    costs.session = session * costUnitsPerPoint;
    costs.sessionGap = sessionGap;
    addQuiet(evening, calm);
    addLosses(evening, calm);
    addCloseness(evening);
}

} // namespace suppertide
