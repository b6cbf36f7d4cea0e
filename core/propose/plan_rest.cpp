#include "core/propose/plan_rest.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "core/base/log.h"
#include "core/check/check.h"

namespace suppertide {

namespace {

/// Tried one after the other.
constexpr std::array<Minutes, 5> laterBy{Minutes{10}, Minutes{20}, Minutes{30}, Minutes{60},
                                         Minutes{120}};

/// No more than this is given up; with more it is another evening.
constexpr std::size_t mostGivenUp = 6;
/// Steps that go to another cook one by one before all may.
constexpr int mostHandedOver = 4;
/// For the washing up, if need be.
constexpr Minutes moreHours{120};

RestOutcome asLaidOut(const RestRequest& request, RestOfEvening rest)
{
    Schedule schedule = carriedOn(rest);
    const bool holds = check(rest.formulation->problem, schedule).empty();
    PlanPtr plan =
        judgePlan(rest.formulation, request.input, std::move(schedule), request.revision);
    if (holds) {
        return RestPlan{std::move(rest), std::move(plan), true, {}};
    }
    return NoRest{std::move(rest), std::move(plan), {}, {}};
}

bool isAble(const Cook& cook, const Hands& hands)
{
    return !hands.skill || std::ranges::find(cook.skills, *hands.skill) != cook.skills.end();
}

/// Which cook each step of the rest was given to; empty: several, nobody, or somebody who cannot do
/// it, as it was given away where its own cook is busy for longer.
IndexedVector<TaskIndex, std::vector<CookIndex>> givenTo(const RestOfEvening& rest)
{
    const Problem& problem = rest.formulation->problem;
    IndexedVector<TaskIndex, std::vector<CookIndex>> given(problem.tasks.size());
    for (const TaskIndex task : rest.whole->problem.tasks.indices()) {
        const auto left = rest.inRest[task];
        if (left && problem.tasks[*left].needsCooks() && problem.tasks[*left].hands->cooks == 1 &&
            rest.planned.cooks[task].size() == 1 &&
            isAble(problem.cooks[rest.planned.cooks[task].front()], *problem.tasks[*left].hands)) {
            given[*left] = rest.planned.cooks[task];
        }
    }
    return given;
}

/// A skill of the cook's own, which is more than any skill asked for, as theirs is known to do.
Problem forTheSameCooks(Problem problem,
                        const IndexedVector<TaskIndex, std::vector<CookIndex>>& given)
{
    const auto own = [](CookIndex cook) { return fmt::format("as given to {}", cook.value()); };
    for (const CookIndex cook : problem.cooks.indices()) {
        problem.cooks[cook].skills.push_back(own(cook));
    }
    for (const TaskIndex task : problem.tasks.indices()) {
        if (!given[task].empty()) {
            problem.tasks[task].hands->skill = own(given[task].front());
        }
    }
    return problem;
}

/// Costs and schedule are the same without the skills, but the bound is not: others may do better.
PlannerOutcome reckonedFor(const Problem& problem, PlannerOutcome outcome)
{
    outcome.schedule.status = ScheduleStatus::Feasible;
    outcome.schedule.cost = costOf(problem, outcome.schedule).total();
    outcome.schedule.bound.reset();
    return outcome;
}

class RestPlanner
{
public:
    RestPlanner(const RestRequest& request, std::stop_token stop)
        : request_(request), stop_(std::move(stop))
    {}

    /// The rest planned with this way of giving way; absent: no plan was found.
    std::optional<RestPlan> attempt(const RestOptions& way)
    {
        auto rest = restOfEvening(request_.input, request_.progress, request_.now, way);
        if (!rest || stop_.stop_requested()) {
            return std::nullopt;
        }
        const PlannerOutcome outcome = solvedWithFewHandedOver(*rest);
        const bool isSolved = outcome.schedule.status == ScheduleStatus::Optimal ||
                              outcome.schedule.status == ScheduleStatus::Feasible;
        if (!isSolved) {
            last_ = outcome;
            lastRest_ = std::move(*rest);
            return std::nullopt;
        }
        const auto broken = check(rest->formulation->problem, outcome.schedule);
        if (!broken.empty()) {
            log::error("core.propose", "a planned rest breaks {} and {} more",
                       broken.front().name(), broken.size() - 1);
            return std::nullopt;
        }
        // Who was told to do a step goes on being the one, which the planner does not mind.
        Schedule same = assignedAsBefore(*rest, outcome.schedule);
        const bool isSame = check(rest->formulation->problem, same).empty();
        PlanPtr plan = judgePlan(rest->formulation, request_.input,
                                 isSame ? std::move(same) : outcome.schedule, request_.revision);
        RestOptions needed = way;
        needed.servingLater = servedLater(*rest, outcome.schedule);
        return RestPlan{std::move(*rest), std::move(plan), false, std::move(needed)};
    }

    /// What the conflict of the last attempt names given up, one thing at a time, until it fits.
    std::optional<RestPlan> attemptGivingUp(RestOptions way, bool mayBeWaits)
    {
        while (way.givenUp.size() < mostGivenUp) {
            const auto least = leastMissed(way, mayBeWaits);
            if (!least || !way.givenUp.insert(*least).second) {
                return std::nullopt;
            }
            if (auto found = attempt(way)) {
                return found;
            }
        }
        return std::nullopt;
    }

    /// Of the last attempt that failed.
    [[nodiscard]] const std::optional<PlannerOutcome>& failed() const { return last_; }

private:
    /// The planner does not mind who does what, cooks do: first each step is for whom it was given
    /// to, then those that a conflict names may go to anybody, one at a time, and then all.
    PlannerOutcome solvedWithFewHandedOver(const RestOfEvening& rest)
    {
        const Problem& problem = rest.formulation->problem;
        IndexedVector<TaskIndex, std::vector<CookIndex>> given = givenTo(rest);
        PlannerLimits limits = request_.limits;
        limits.wallClock /= 2;
        for (int i = 0; i <= mostHandedOver && !stop_.stop_requested(); ++i) {
            PlannerOutcome outcome = solve(forTheSameCooks(problem, given), limits, stop_);
            if (outcome.schedule.status != ScheduleStatus::Infeasible) {
                if (outcome.schedule.status != ScheduleStatus::Unknown) {
                    return reckonedFor(problem, std::move(outcome));
                }
                break;
            }
            const auto next = lastNamed(rest, outcome.schedule.conflict, given);
            if (!next) {
                break;
            }
            given[*next].clear();
        }
        return solve(problem, request_.limits, stop_);
    }

    /// Of the steps that wait for their cook in a conflict, the one that was to begin last: what is
    /// near goes on as it was told.
    static std::optional<TaskIndex>
    lastNamed(const RestOfEvening& rest, const std::vector<std::string>& conflict,
              const IndexedVector<TaskIndex, std::vector<CookIndex>>& given)
    {
        std::optional<std::pair<PlanTime, TaskIndex>> last;
        for (const TaskIndex task : rest.whole->problem.tasks.indices()) {
            const auto left = rest.inRest[task];
            const auto& start = rest.planned.starts[task];
            const auto isNamed = [&] {
                const std::string name = "hands:" + rest.formulation->problem.tasks[*left].id;
                return std::ranges::find(conflict, name) != conflict.end();
            };
            if (left && start && !given[*left].empty() && isNamed()) {
                last = std::max(last, std::optional{std::pair{*start, *left}});
            }
        }
        return last ? std::optional{last->second} : std::nullopt;
    }

    /// Past the time by which courses may be served as set.
    static Minutes servedLater(const RestOfEvening& rest, const Schedule& schedule)
    {
        Minutes by{0};
        for (const auto& [course, event] : rest.whole->servings) {
            if (const auto left = rest.inRest[event]) {
                const PlanTime served = rest.facts.now + schedule.starts[*left]->time_since_epoch();
                by = std::max(by, served - rest.whole->problem.tasks[event].window.end);
            }
        }
        return by;
    }

    /// Hours of what is no food first, then waits.
    [[nodiscard]] std::optional<std::string> leastMissed(const RestOptions& way,
                                                         bool mayBeWaits) const
    {
        if (!last_ || stop_.stop_requested()) {
            return std::nullopt;
        }
        const Formulation& formulation = *lastRest_.formulation;
        std::optional<std::string> wait;
        for (const std::string& name : last_->schedule.conflict) {
            if (way.givenUp.contains(name)) {
                continue;
            }
            if (isHoursOfTheHouse(formulation, name)) {
                return name;
            }
            for (const LagIndex lag : formulation.problem.lags.indices()) {
                const bool isNamed = name == "lag:" + formulation.problem.lags[lag].id;
                if (mayBeWaits && !wait && isNamed && formulation.lags[lag].wait) {
                    wait = name;
                }
            }
        }
        return wait;
    }

    static bool isHoursOfTheHouse(const Formulation& formulation, const std::string& name)
    {
        constexpr std::string_view kind = "window:";
        const auto task = name.starts_with(kind)
                              ? formulation.taskById.find(name.substr(kind.size()))
                              : formulation.taskById.end();
        if (task == formulation.taskById.end()) {
            return false;
        }
        const Task& what = formulation.problem.tasks[task->second];
        if (what.window == Interval{planTime(0), planTime(0) + what.duration}) {
            return false; // under way: those are no hours, but a fact
        }
        const TaskSource& source = formulation.tasks[task->second];
        return source.role == TaskRole::HouseJob || source.role == TaskRole::Trip ||
               source.role == TaskRole::Washing ||
               (source.role != TaskRole::Serving && source.rule == Rule::Pins &&
                source.role != TaskRole::Target && source.role != TaskRole::OvenSetting);
    }

    const RestRequest& request_;
    std::stop_token stop_;
    std::optional<PlannerOutcome> last_;
    RestOfEvening lastRest_;
};

RestOptions later(Minutes by, bool mayChoose = false)
{
    RestOptions way;
    way.mayChoose = mayChoose;
    way.servingLater = by;
    return way;
}

/// In the order of what a table would rather have.
std::optional<RestPlan> anyAttempt(RestPlanner& planner)
{
    if (auto found = planner.attempt({})) {
        return found;
    }
    if (auto found = planner.attemptGivingUp({}, false)) {
        return found;
    }
    if (auto found = planner.attempt(later(Minutes{0}, true))) {
        return found;
    }
    for (const Minutes by : laterBy) {
        if (auto found = planner.attempt(later(by))) {
            return found;
        }
    }
    if (auto found = planner.attempt(later(laterBy.back(), true))) {
        return found;
    }
    if (auto found = planner.attemptGivingUp(later(laterBy.back()), true)) {
        return found;
    }
    RestOptions longer = later(laterBy.back());
    longer.cooksLonger = moreHours;
    return planner.attempt(longer);
}

} // namespace

Result<RestOutcome> carryOn(const RestRequest& request)
{
    auto rest = restOfEvening(request.input, request.progress, request.now);
    if (!rest) {
        return rest.error();
    }
    return asLaidOut(request, std::move(*rest));
}

Result<RestOutcome> planRest(const RestRequest& request, const std::stop_token& stop)
{
    auto outcome = carryOn(request);
    if (!outcome || std::holds_alternative<RestPlan>(*outcome)) {
        return outcome;
    }
    RestPlanner planner(request, stop);
    if (auto found = anyAttempt(planner)) {
        return RestOutcome{std::move(*found)};
    }
    if (stop.stop_requested()) {
        return RestOutcome{std::monostate{}};
    }
    NoRest none = std::get<NoRest>(std::move(*outcome));
    if (planner.failed()) {
        none.unplaced = planner.failed()->unplaced;
        none.conflict = planner.failed()->schedule.conflict;
    }
    return RestOutcome{std::move(none)};
}

} // namespace suppertide
