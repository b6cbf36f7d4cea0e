// The engine's answers against what can be seen by hand or by trying everything.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/check/check.h"
#include "core/planner/exact/conflict.h"
#include "core/planner/exact/exact.h"
#include "core/planner/exact/model.h"
#include "core/planner/planner.h"
#include "tests/support/for_each_seed.h"
#include "tests/support/problem/random_problem.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide {

namespace {

using exact::ExactSearch;
using quick_start::Budget;
using test::forEachSeed;
using test::Random;

struct Answer
{
    std::optional<Schedule> best;
    std::int64_t bound = 0;
    bool optimal = false;
    bool infeasible = false;
};

/// From `start`, if there is one, it only proves.
Answer answerOf(const Problem& problem, std::uint64_t seed, std::int64_t steps,
                const Schedule* start = nullptr)
{
    PlannerLimits limits;
    limits.wallClock = std::chrono::minutes{10};
    limits.steps = steps;
    Budget budget(limits, {}, Budget::Clock::now());
    Answer answer;
    ExactSearch search(
        problem, budget, seed, [](const Schedule&) {},
        [&](std::int64_t bound) { answer.bound = std::max(answer.bound, bound); });
    if (start != nullptr) {
        search.startFrom(*start);
    }
    search.run(start != nullptr ? ExactSearch::Work::Prove : ExactSearch::Work::All);
    answer.best = search.best();
    answer.optimal = search.isOptimal();
    answer.infeasible = search.isInfeasible();
    return answer;
}

/// Tasks, lags and counts only, few and short enough to try all starts.
Problem anyTinyPlain(Random& random)
{
    Problem problem;
    const std::int64_t horizon = random.between(4, 7);
    problem.horizon = planTime(horizon);
    const auto tasks = static_cast<std::size_t>(random.between(2, 4));
    for (std::size_t i = 0; i < tasks; ++i) {
        Task task;
        task.id = "t" + std::to_string(i);
        task.duration = Minutes{random.between(0, 3)};
        const std::int64_t from = random.oneIn(3) ? random.between(0, 2) : 0;
        task.window = interval(from, horizon);
        problem.tasks.push_back(std::move(task));
    }
    const auto any = [&] {
        return TaskPoint{TaskIndex{static_cast<std::size_t>(
                             random.between(0, static_cast<std::int64_t>(tasks) - 1))},
                         random.oneIn(2) ? Edge::Start : Edge::End};
    };
    for (std::int64_t i = random.between(0, 3); i > 0; --i) {
        Lag lag;
        lag.id = "l" + std::to_string(i);
        lag.from = any();
        lag.to = any();
        if (!random.oneIn(4)) {
            lag.min = Minutes{random.between(-2, 3)};
        }
        if (random.oneIn(2)) {
            lag.max = Minutes{random.between(-1, 4)};
        }
        lag.loss = random.between(0, 2);
        problem.lags.push_back(std::move(lag));
    }
    problem.counts.push_back({"c", random.between(1, 3)});
    for (std::int64_t i = random.between(1, 4); i > 0; --i) {
        Demand demand;
        demand.id = "d" + std::to_string(i);
        demand.from = any();
        demand.to = random.oneIn(2) ? any() : TaskPoint{demand.from.task, Edge::End};
        demand.count = CountIndex{0};
        demand.amount = random.between(0, 2);
        problem.demands.push_back(std::move(demand));
    }
    if (random.oneIn(2)) {
        problem.choices.push_back({"m", {{"a", {TaskIndex{0}}, 1}, {"b", {TaskIndex{1}}, 2}}});
    }
    problem.costs.quiet.push_back({random.between(0, 1), interval(1, 3), std::nullopt, {}});
    if (random.oneIn(2)) {
        problem.costs.before.push_back({TaskIndex{0}, planTime(random.between(0, 3))});
        problem.costs.beforeRate = random.between(0, 2);
        problem.costs.beforeMoved = random.between(0, 3);
    }
    return problem;
}

struct Extremes
{
    Schedule cheapest;
    Schedule dearest;
};

void note(std::optional<Extremes>& extremes, const Schedule& schedule)
{
    if (!extremes) {
        extremes = {schedule, schedule};
    }
    if (*schedule.cost < *extremes->cheapest.cost) {
        extremes->cheapest = schedule;
    }
    if (*schedule.cost > *extremes->dearest.cost) {
        extremes->dearest = schedule;
    }
}

/// Of all schedules, by trying all; absent: there is none.
std::optional<Extremes> extremesOf(const Problem& problem)
{
    std::optional<Extremes> result;
    const std::int64_t last = minuteOf(problem.horizon);
    const std::size_t options = problem.choices.empty() ? 1 : 2;
    for (std::size_t option = 0; option < options; ++option) {
        Schedule schedule = emptyScheduleFor(problem);
        if (!problem.choices.empty()) {
            schedule.options[ChoiceIndex{0}] = OptionIndex{option};
        }
        std::vector<TaskIndex> present;
        for (const TaskIndex task : problem.tasks.indices()) {
            if (problem.choices.empty() || task.value() > 1 || task.value() == option) {
                present.push_back(task);
                schedule.starts[task] = planTime(0);
            }
        }
        while (true) {
            if (check(problem, schedule).empty()) {
                schedule.cost = costOf(problem, schedule).total();
                note(result, schedule);
            }
            std::size_t i = 0;
            while (i < present.size() && schedule.starts[present[i]] == planTime(last)) {
                schedule.starts[present[i++]] = planTime(0);
            }
            if (i == present.size()) {
                break;
            }
            *schedule.starts[present[i]] += Minutes{1};
        }
    }
    return result;
}

/// The problem without requirements, as the page of the format has it: lags and demands go, a task
/// gets the whole horizon.
Problem without(Problem problem, const std::set<std::string>& ids)
{
    const auto isOut = [&](const std::string& id) { return ids.count(id) > 0; };
    IndexedVector<LagIndex, Lag> lags;
    for (const Lag& lag : problem.lags) {
        if (!isOut("lag:" + lag.id)) {
            lags.push_back(lag);
        }
    }
    problem.lags = lags;
    IndexedVector<DemandIndex, Demand> demands;
    for (const Demand& demand : problem.demands) {
        if (!isOut("demand:" + demand.id)) {
            demands.push_back(demand);
        }
    }
    problem.demands = demands;
    for (Task& task : problem.tasks) {
        if (isOut("window:" + task.id)) {
            task.window = {planTime(0), problem.horizon};
        }
    }
    return problem;
}

std::set<std::string> requirementsOf(const Problem& problem)
{
    std::set<std::string> ids;
    for (const Lag& lag : problem.lags) {
        ids.insert("lag:" + lag.id);
    }
    for (const Demand& demand : problem.demands) {
        ids.insert("demand:" + demand.id);
    }
    for (const Task& task : problem.tasks) {
        ids.insert("window:" + task.id);
    }
    return ids;
}

} // namespace

TEST(ExactSearch, ProvesTheLeastCostOfTinyProblems)
{
    int feasible = 0;
    forEachSeed(400, [&](Random& random) {
        const Problem problem = anyTinyPlain(random);
        const auto expected = extremesOf(problem);
        const Answer answer = answerOf(problem, random.seed(), 1'000'000);
        EXPECT_EQ(answer.infeasible, !expected.has_value());
        if (expected) {
            ++feasible;
            EXPECT_TRUE(answer.optimal);
            ASSERT_TRUE(answer.best);
            EXPECT_EQ(answer.best->cost, expected->cheapest.cost);
            EXPECT_TRUE(check(problem, *answer.best).empty());
        }
    });
    EXPECT_GT(feasible, 100);
    EXPECT_LT(feasible, 400);
}

// Beginning with the dearest schedule it has to raise its bound by sums of terms, and to hold what
// is better to them, again and again.
TEST(ExactSearch, ProvesTheLeastCostFromTheDearestSchedule)
{
    int proven = 0;
    forEachSeed(400, [&](Random& random) {
        Problem problem = anyTinyPlain(random);
        for (Lag& lag : problem.lags) {
            lag.loss *= random.between(1, 5);
        }
        const auto expected = extremesOf(problem);
        if (!expected || expected->dearest.cost == expected->cheapest.cost) {
            return;
        }
        ++proven;
        const Answer answer = answerOf(problem, random.seed(), 1'000'000, &expected->dearest);
        EXPECT_TRUE(answer.optimal);
        EXPECT_EQ(answer.best->cost, expected->cheapest.cost);
        EXPECT_LE(answer.bound, *expected->cheapest.cost);
    });
    EXPECT_GT(proven, 100);
}

TEST(ExactSearch, ReturnsOnlyWhatHoldsAndBoundsNothingFalsely)
{
    int found = 0;
    forEachSeed(400, [&](Random& random) {
        const Problem problem = test::anyProblem(random);
        const Answer answer = answerOf(problem, random.seed(), 30'000);
        PlannerLimits limits;
        limits.wallClock = std::chrono::minutes{10};
        limits.steps = 3000;
        const PlannerOutcome other = solve(problem, limits);
        const bool otherFound = other.schedule.cost.has_value();
        EXPECT_FALSE(answer.infeasible && otherFound);
        if (answer.best) {
            ++found;
            EXPECT_TRUE(check(problem, *answer.best).empty());
            EXPECT_EQ(answer.best->cost, costOf(problem, *answer.best).total());
            EXPECT_FALSE(other.schedule.status == ScheduleStatus::Infeasible);
        }
        if (otherFound) {
            EXPECT_LE(answer.bound, *other.schedule.cost);
            EXPECT_TRUE(!answer.optimal || *answer.best->cost <= *other.schedule.cost);
        }
    });
    EXPECT_GT(found, 40);
}

// The oven cools from 110 °C by 3 °C a minute as soon as it is off: what must have 90 °C can stay
// in for 6 minutes more. Heated anew at 10 °C a minute, it has them 7 minutes after.
TEST(Model, LetsAnOvenThatIsOffKeepWarmOnlyWhatEndsSoon)
{
    test::SmallProblem made(400);
    const TaskIndex bake = made.task("bake", 30);
    const TaskIndex dry = made.task("dry", 60);
    made.oven("o", 2);
    made.problem.ovens[OvenIndex{0}].coolMilliCPerMin = 3'000;
    made.problem.ovens[OvenIndex{0}].heatMilliCPerMin = 10'000;
    made.inOven("e1", bake, 90, 110, 100);
    OvenDemand& drying = made.inOven("e2", dry, 20, 110, 0);
    drying.prefer.reset();
    drying.mode = modeOff;
    const auto holds = [&](engine::Bound bakeStart) {
        exact::Model model(made.problem, {});
        engine::Engine& engine = model.engine();
        for (const auto& [task, at] :
             {std::pair{dry, engine::Bound{100}}, std::pair{bake, bakeStart}}) {
            engine.addFact(engine::atMost(model.start(task), at));
            engine.addFact(engine::atLeast(model.start(task), at));
        }
        return engine.propagate();
    };
    EXPECT_TRUE(holds(60));
    EXPECT_TRUE(holds(76));
    EXPECT_FALSE(holds(77));
    EXPECT_FALSE(holds(120));
    EXPECT_FALSE(holds(166));
    EXPECT_TRUE(holds(167));
}

// Bread is out of the oven 34 minutes after it goes in, and the tart goes in 5 later at least: how
// they lie to each other is said by when they go in, and the tart is out by 34 + 5 + 24 at least.
TEST(Model, SaysTheEndOfAStayThatAlwaysLastsAsLongByItsBeginning)
{
    test::SmallProblem made(400);
    const auto stay = [&](const std::string& name, std::int64_t minutes) {
        const TaskIndex into = made.task(name + ".in", 2);
        const TaskIndex bake = made.task(name, minutes);
        const TaskIndex out = made.task(name + ".out", 2);
        made.lag(name + ".1", test::endOf(into), test::startOf(bake), 0, 0);
        made.lag(name + ".2", test::endOf(bake), test::startOf(out), 0, 0);
        made.inOven(name + ":oven", into, 170, 190, 180).to = test::endOf(out);
        return std::pair(into, out);
    };
    made.oven("o", 1);
    made.problem.costs.ovenOnMinute = 1;
    const auto bread = stay("bread", 30);
    const auto tart = stay("tart", 20);
    made.lag("later", test::endOf(bread.second), test::startOf(tart.first), 5, std::nullopt);
    exact::Model model(made.problem, {});
    ASSERT_TRUE(model.engine().propagate());
    const engine::Trail& trail = model.engine().trail();
    const auto& first = *model.ovenStays[OvenDemandIndex{0}];
    const auto& second = *model.ovenStays[OvenDemandIndex{1}];
    EXPECT_EQ(first.from.variable, first.to.variable);
    EXPECT_EQ(first.to.plus - first.from.plus, 34);
    EXPECT_NE(model.ovenStretches[OvenDemandIndex{0}]->to.variable, first.to.variable);
    ASSERT_TRUE(model.differences->knows(first.from, second.to));
    EXPECT_EQ(model.differences->leastAlways(trail, first.to, second.from), 5);
    EXPECT_EQ(model.differences->leastAlways(trail, first.from, second.to), 34 + 5 + 24);
}

// Free from 0 to 100, from 130 to 200 and from 300 to 400, with a task in the first time, one in
// the last, and one anywhere. With pauses of up to 60 minutes nothing in the last goes on from
// before.
TEST(Model, CountsASessionForEachStretchOfFreeTimeThatIsUsed)
{
    const auto least = [](std::int64_t gap) {
        test::SmallProblem made(400);
        made.problem.costs.session = 10;
        made.problem.costs.sessionGap = Minutes{gap};
        const TaskIndex early = made.work("early", 20);
        made.work("anywhere", 20);
        const TaskIndex late = made.work("late", 20);
        made.problem.tasks[early].window = interval(0, 100);
        made.problem.tasks[late].window = interval(300, 400);
        const CookIndex cook = made.cook("c");
        made.problem.cooks[cook].free = {interval(0, 100), interval(130, 200), interval(300, 400)};
        exact::Model model(made.problem, {});
        EXPECT_TRUE(model.engine().propagate());
        return model.engine().trail().least(model.cost());
    };
    EXPECT_EQ(least(60), 20);
    EXPECT_EQ(least(99), 20);
    EXPECT_EQ(least(100), 10);
}

TEST(Conflict, CannotHoldAndNoneOfItCanBeSpared)
{
    int conflicts = 0;
    forEachSeed(400, [&](Random& random) {
        Problem problem = anyTinyPlain(random);
        problem.choices.clear();
        if (extremesOf(problem)) {
            return;
        }
        PlannerLimits limits;
        limits.wallClock = std::chrono::minutes{10};
        Budget budget(limits, {}, Budget::Clock::now());
        const auto conflict = exact::findConflict(problem, budget);
        ASSERT_TRUE(conflict);
        EXPECT_TRUE(conflict->minimal);
        ++conflicts;
        std::set<std::string> out = requirementsOf(problem);
        for (const std::string& id : conflict->requirements) {
            EXPECT_EQ(out.erase(id), 1U) << id;
        }
        EXPECT_FALSE(extremesOf(without(problem, out)));
        for (const std::string& id : conflict->requirements) {
            std::set<std::string> more = out;
            more.insert(id);
            EXPECT_TRUE(extremesOf(without(problem, more))) << id;
        }
    });
    EXPECT_GT(conflicts, 50);
}

} // namespace suppertide
