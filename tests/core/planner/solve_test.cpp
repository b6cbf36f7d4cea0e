// One small problem for each kind of requirement and cost, with an answer that can be told by hand.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/check/check.h"
#include "core/planner/planner.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide {

namespace {

using test::endOf;
using test::SmallProblem;
using test::startOf;

PlannerOutcome planned(const Problem& problem, std::int64_t steps = 4000)
{
    PlannerLimits limits;
    limits.wallClock = std::chrono::minutes{10};
    limits.steps = steps;
    PlannerOutcome outcome = solve(problem, limits);
    if (outcome.schedule.cost) {
        EXPECT_EQ(check(problem, outcome.schedule), std::vector<Broken>{});
        EXPECT_EQ(costOf(problem, outcome.schedule).total(), *outcome.schedule.cost);
    }
    return outcome;
}

std::int64_t startAt(const PlannerOutcome& outcome, TaskIndex task)
{
    const auto& start = outcome.schedule.starts[task];
    return start ? minuteOf(*start) : -1;
}

std::vector<std::string> reasons(const PlannerOutcome& outcome, TaskIndex task)
{
    const auto found =
        std::find_if(outcome.unplaced.begin(), outcome.unplaced.end(),
                     [&](const Unplaced& unplaced) { return unplaced.task == task; });
    return found == outcome.unplaced.end() ? std::vector<std::string>{} : found->because;
}

} // namespace

TEST(Solve, GivesNothingToDoAtNoCost)
{
    const PlannerOutcome outcome = planned(SmallProblem(100).problem);
    EXPECT_EQ(outcome.schedule.status, ScheduleStatus::Optimal);
    EXPECT_EQ(outcome.schedule.cost, 0);
    EXPECT_FALSE(outcome.stopped);
}

TEST(Solve, KeepsAChainOfLagsBeforeServing)
{
    SmallProblem made(200);
    const TaskIndex served = made.event("served", 120);
    const TaskIndex chop = made.work("chop", 20);
    const TaskIndex chill = made.task("chill", 30);
    made.cook("c");
    made.lag("l1", endOf(chop), startOf(chill), 0, 0);
    made.lag("l2", endOf(chill), startOf(served), 10, 15).loss = 1;
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(startAt(outcome, chill), 80); // 10 minutes before serving: nothing is lost
    EXPECT_EQ(startAt(outcome, chop), 60);
    EXPECT_EQ(outcome.schedule.cost, 0);
}

TEST(Solve, LetsOneCookDoOneThingAtATime)
{
    SmallProblem made(60);
    const TaskIndex one = made.work("one", 30);
    const TaskIndex other = made.work("other", 30);
    made.cook("c");
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(std::abs(startAt(outcome, one) - startAt(outcome, other)), 30);
}

TEST(Solve, LetsOneCookKeepAnEyeMeanwhile)
{
    SmallProblem made(40);
    const TaskIndex chop = made.work("chop", 40, 80);
    const TaskIndex simmer = made.work("simmer", 40, 20);
    made.cook("c");
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(startAt(outcome, chop), 0);
    EXPECT_EQ(startAt(outcome, simmer), 0);
}

TEST(Solve, NamesTheHandsThatAreMissing)
{
    SmallProblem made(40);
    made.work("one", 30);
    made.work("other", 30);
    made.cook("c");
    const PlannerOutcome outcome = planned(made.problem);
    ASSERT_EQ(outcome.unplaced.size(), 1U);
    const TaskIndex left = outcome.unplaced.front().task;
    EXPECT_EQ(reasons(outcome, left),
              std::vector<std::string>{"hands:" + made.problem.tasks[left].id});
    EXPECT_EQ(outcome.schedule.status, ScheduleStatus::Infeasible);
    EXPECT_EQ(outcome.schedule.conflict, (std::vector<std::string>{"hands:one", "hands:other"}));
    EXPECT_FALSE(outcome.stopped);
}

TEST(Solve, NeedsTwoCooksForTwoHandedWork)
{
    SmallProblem made(60);
    const TaskIndex carve = made.work("carve", 10);
    made.problem.tasks[carve].hands->cooks = 2;
    const TaskIndex chop = made.work("chop", 50);
    made.cook("a");
    made.cook("b");
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(outcome.schedule.cooks[carve].size(), 2U);
    EXPECT_EQ(std::abs(startAt(outcome, carve) - startAt(outcome, chop)) % 40, 10);
}

TEST(Solve, GivesSkilledWorkToTheSkilled)
{
    SmallProblem made(20);
    const TaskIndex sauce = made.work("sauce", 20);
    made.problem.tasks[sauce].hands->skill = "sauce";
    const TaskIndex chop = made.work("chop", 20);
    const CookIndex skilled = made.cook("skilled");
    const CookIndex other = made.cook("other");
    made.problem.cooks[skilled].skills = {"sauce"};
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(outcome.schedule.cooks[sauce], std::vector<CookIndex>{skilled});
    EXPECT_EQ(outcome.schedule.cooks[chop], std::vector<CookIndex>{other});
}

TEST(Solve, WorksOnlyWhileTheCookIsFreeAndNotAtTable)
{
    SmallProblem made(200);
    const TaskIndex served = made.event("served", 100);
    const TaskIndex dress = made.work("dress", 20);
    const CookIndex cook = made.cook("c");
    made.problem.cooks[cook].free = {interval(90, 150)};
    made.problem.cooks[cook].tableAfter = {{served, Minutes{25}}};
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_GE(startAt(outcome, dress), 125);
    EXPECT_LE(startAt(outcome, dress), 130);

    made.problem.tasks[dress].atTable = true;
    made.problem.cooks[cook].free = {interval(90, 124)};
    EXPECT_GE(startAt(planned(made.problem), dress), 90);
}

TEST(Solve, MovesAnEventThatWouldSeatTheCook)
{
    // The cook is free for just the work; the event must be before or after it.
    SmallProblem made(100);
    const TaskIndex served = made.task("served", 0);
    const TaskIndex plate = made.work("plate", 40);
    const CookIndex cook = made.cook("c");
    made.problem.cooks[cook].free = {interval(30, 70)};
    made.problem.cooks[cook].tableAfter = {{served, Minutes{25}}};
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(startAt(outcome, plate), 30);
    EXPECT_TRUE(startAt(outcome, served) <= 5 || startAt(outcome, served) >= 70);
}

TEST(Solve, KeepsACountOverASpan)
{
    // 3 + 2 litres do not fit into 4: the spans, from one task's end to serving, cannot overlap.
    SmallProblem made(120);
    const CountIndex fridge = made.count("fridge", 4);
    const TaskIndex first = made.event("first", 60);
    const TaskIndex second = made.event("second", 120);
    const TaskIndex mousse = made.task("mousse", 10);
    const TaskIndex jelly = made.task("jelly", 10);
    made.lag("l1", endOf(mousse), startOf(first), 20, std::nullopt);
    made.lag("l2", endOf(jelly), startOf(second), 20, std::nullopt);
    made.counted("d1", endOf(mousse), startOf(first), fridge, 3);
    made.counted("d2", endOf(jelly), startOf(second), fridge, 2);
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_LE(startAt(outcome, mousse), 30);
    EXPECT_GE(startAt(outcome, jelly), 50);
}

TEST(Solve, NamesTheCountThatIsTooSmall)
{
    SmallProblem made(30);
    const CountIndex blender = made.count("blender", 1);
    const TaskIndex soup = made.task("soup", 20);
    const TaskIndex sauce = made.task("sauce", 20);
    made.counted("d1", startOf(soup), endOf(soup), blender, 1);
    made.counted("d2", startOf(sauce), endOf(sauce), blender, 1);
    const PlannerOutcome outcome = planned(made.problem);
    ASSERT_EQ(outcome.unplaced.size(), 1U);
    EXPECT_EQ(outcome.unplaced.front().because, std::vector<std::string>{"count:blender"});
    EXPECT_EQ(outcome.schedule.conflict, (std::vector<std::string>{"demand:d1", "demand:d2"}));
}

TEST(Solve, PutsTheLargePanOnTheLargeBurner)
{
    SmallProblem made(30);
    const PoolIndex hob = made.pool("hob", {14, 21});
    const TaskIndex large = made.task("large", 30);
    const TaskIndex small = made.task("small", 30);
    made.pooled("d1", startOf(small), endOf(small), hob);
    made.pooled("d2", startOf(large), endOf(large), hob, 18);
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(outcome.schedule.units[DemandIndex{0}], UnitIndex{0});
    EXPECT_EQ(outcome.schedule.units[DemandIndex{1}], UnitIndex{1});
}

TEST(Solve, KeepsPansOnTheBurnersTheyMayHave)
{
    SmallProblem made(60);
    const PoolIndex hob = made.pool("hob", {18, 18});
    const TaskIndex one = made.task("one", 30);
    const TaskIndex other = made.task("other", 30);
    made.pooled("d1", startOf(one), endOf(one), hob).units = std::vector{UnitIndex{1}};
    made.pooled("d2", startOf(other), endOf(other), hob).units = std::vector{UnitIndex{1}};
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(std::abs(startAt(outcome, one) - startAt(outcome, other)), 30);
}

TEST(Solve, BakesAtOneTemperatureAfterTheOther)
{
    // From 160 at most to 210 at least: 50 °C at 15 °C a minute, 4 whole minutes.
    SmallProblem made(90);
    const TaskIndex gratin = made.task("gratin", 30);
    const TaskIndex bread = made.task("bread", 30);
    made.oven("o", 2);
    made.inOven("e1", gratin, 140, 160, 150);
    made.inOven("e2", bread, 210, 230, 220);
    const PlannerOutcome outcome = planned(made.problem);
    const std::int64_t apart = startAt(outcome, bread) - startAt(outcome, gratin);
    EXPECT_TRUE(apart >= 34 || apart <= -30 - 13); // 50 °C down at 4 °C a minute: 13 minutes
}

TEST(Solve, FindsNoPlanForAnOvenThatIsNotThere)
{
    SmallProblem made(90);
    made.inOven("e1", made.task("gratin", 30), 140, 160, 150);
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(outcome.schedule.status, ScheduleStatus::Infeasible);
    EXPECT_EQ(outcome.schedule.conflict, std::vector<std::string>{"oven:e1"});
}

TEST(Solve, SharesTheOvenWhereBandsMeet)
{
    SmallProblem made(200);
    made.problem.costs.ovenOnMinute = 1;
    made.problem.costs.ovenSwitchOn = 30;
    const TaskIndex gratin = made.task("gratin", 30);
    const TaskIndex roast = made.task("roast", 30);
    made.oven("o", 2);
    made.inOven("e1", gratin, 150, 170, 160);
    made.inOven("e2", roast, 170, 190, 180);
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(startAt(outcome, gratin), startAt(outcome, roast));
    // 10 minutes from 20 °C to 170 °C, then 30, switched on once.
    EXPECT_EQ(outcome.schedule.cost, 70);
}

TEST(Solve, KeepsShelvesModesAndGroups)
{
    SmallProblem made(300);
    const TaskIndex large = made.task("large", 30);
    const TaskIndex other = made.task("other", 30);
    const TaskIndex grilled = made.task("grilled", 30);
    made.oven("o1", 2);
    made.inOven("e1", large, 170, 190, 180).shelves = 2;
    made.inOven("e2", other, 170, 190, 180).mode = "fan";
    made.inOven("e3", grilled, 170, 190, 180).mode = "grill";
    const PlannerOutcome outcome = planned(made.problem);
    ASSERT_TRUE(outcome.schedule.cost);
    EXPECT_GE(std::abs(startAt(outcome, large) - startAt(outcome, other)), 30);
    EXPECT_GE(std::abs(startAt(outcome, grilled) - startAt(outcome, other)), 30);

    made.oven("o2", 2);
    for (OvenDemand& demand : made.problem.ovenDemands) {
        demand.group = "g";
    }
    const PlannerOutcome grouped = planned(made.problem);
    EXPECT_EQ(grouped.schedule.ovens[OvenDemandIndex{0}],
              grouped.schedule.ovens[OvenDemandIndex{1}]);
    EXPECT_EQ(grouped.schedule.ovens[OvenDemandIndex{0}],
              grouped.schedule.ovens[OvenDemandIndex{2}]);
}

TEST(Solve, DriesInTheOvenSwitchedOff)
{
    SmallProblem made(400);
    const TaskIndex bake = made.task("bake", 60);
    const TaskIndex dry = made.task("dry", 120);
    const TaskIndex roast = made.task("roast", 30);
    made.oven("o", 2);
    made.lag("l", endOf(bake), startOf(dry), 0, 0);
    made.inOven("e1", bake, 90, 110, 100);
    OvenDemand& drying = made.inOven("e2", dry, 20, 110, 0);
    drying.prefer.reset();
    drying.mode = modeOff;
    made.inOven("e3", roast, 170, 190, 180);
    const PlannerOutcome outcome = planned(made.problem);
    ASSERT_TRUE(outcome.schedule.cost);
    EXPECT_EQ(startAt(outcome, dry), startAt(outcome, bake) + 60);
}

TEST(Solve, TakesTheCheaperOptionUnlessItDoesNotFit)
{
    SmallProblem made(100);
    const TaskIndex cheap = made.work("cheap", 60);
    const TaskIndex dear = made.work("dear", 20);
    made.cook("c");
    Choice choice;
    choice.id = "m";
    choice.options.push_back({"a", {cheap}, 1});
    choice.options.push_back({"b", {dear}, 5});
    made.problem.choices.push_back(choice);
    EXPECT_EQ(planned(made.problem).schedule.options[ChoiceIndex{0}], OptionIndex{0});

    made.problem.cooks[CookIndex{0}].free = {interval(10, 40)};
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(outcome.schedule.options[ChoiceIndex{0}], OptionIndex{1});
    EXPECT_EQ(outcome.schedule.cost, 5);
}

TEST(Solve, KeepsTheQuietTimeQuiet)
{
    SmallProblem made(100);
    const TaskIndex chop = made.work("chop", 30, 50);
    made.cook("c");
    Quiet quiet;
    quiet.rate = 1;
    quiet.when = interval(20, 100);
    made.problem.costs.quiet = {quiet};
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(startAt(outcome, chop), 0); // 10 of the 30 minutes cannot be avoided
    EXPECT_EQ(outcome.schedule.cost, 500);
}

TEST(Solve, WorksInOneSession)
{
    SmallProblem made(600);
    made.problem.costs.session = 30;
    made.problem.costs.sessionGap = Minutes{20};
    for (int i = 0; i < 5; ++i) {
        made.work("w" + std::to_string(i), 30);
    }
    made.cook("c");
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(outcome.schedule.cost, 30);
    EXPECT_EQ(outcome.schedule.status, ScheduleStatus::Optimal); // less than a session cannot be
}

// So many that the model does not tell of each pair whether one goes on from the other.
TEST(Solve, CountsTheSessionsOfACookWithManyTasks)
{
    SmallProblem made(600);
    made.problem.costs.session = 30;
    made.problem.costs.sessionGap = Minutes{60};
    for (int i = 0; i < 50; ++i) {
        const TaskIndex task = made.work("w" + std::to_string(i), 5);
        const std::int64_t from = i < 25 ? 0 : 320;
        made.problem.tasks[task].window = interval(from, from + 200);
    }
    made.cook("c");
    const PlannerOutcome outcome = planned(made.problem, 10'000);
    EXPECT_EQ(outcome.schedule.cost, 60);
}

TEST(Solve, StaysCloseToThePlanBefore)
{
    SmallProblem made(200);
    const TaskIndex one = made.work("one", 30);
    const TaskIndex other = made.work("other", 30);
    made.cook("c");
    made.problem.costs.before = {{one, planTime(50)}, {other, planTime(70)}};
    made.problem.costs.beforeRate = 2;
    made.problem.costs.beforeMoved = 15;
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(outcome.schedule.cost, 2 * 10 + 15); // one of the two moves by 10 minutes
}

TEST(Solve, ProvesThatLagsContradictEachOther)
{
    SmallProblem made(200);
    const TaskIndex a = made.task("a", 10);
    const TaskIndex b = made.task("b", 10);
    made.lag("l1", endOf(a), startOf(b), 30, std::nullopt);
    made.lag("l2", startOf(a), startOf(b), std::nullopt, 35);
    made.lag("l3", endOf(b), startOf(a), std::nullopt, 500);
    const PlannerOutcome outcome = planned(made.problem);
    EXPECT_EQ(outcome.schedule.status, ScheduleStatus::Infeasible);
    EXPECT_EQ(outcome.schedule.conflict, (std::vector<std::string>{"lag:l1", "lag:l2"}));
}

TEST(Solve, ProvesThatAWindowIsTooShort)
{
    SmallProblem made(200);
    const TaskIndex a = made.task("a", 30);
    made.problem.tasks[a].window = interval(10, 30);
    EXPECT_EQ(planned(made.problem).schedule.conflict, std::vector<std::string>{"window:a"});
}

TEST(Solve, ProvesThatNobodyHasTheSkill)
{
    SmallProblem made(200);
    const TaskIndex a = made.work("a", 30);
    made.problem.tasks[a].hands->skill = "sauce";
    made.cook("c");
    EXPECT_EQ(planned(made.problem).schedule.conflict, std::vector<std::string>{"hands:a"});
}

TEST(Solve, ProvesThatNothingIsLargeEnough)
{
    SmallProblem made(200);
    const TaskIndex a = made.task("a", 30);
    made.pooled("d", startOf(a), endOf(a), made.pool("hob", {14, 18}), 21);
    EXPECT_EQ(planned(made.problem).schedule.conflict, std::vector<std::string>{"demand:d"});

    SmallProblem hot(200);
    const TaskIndex b = hot.task("b", 30);
    hot.oven("o", 1);
    hot.inOven("e", b, 280, 300, 290);
    EXPECT_EQ(planned(hot.problem).schedule.conflict, std::vector<std::string>{"oven:e"});
}

TEST(Solve, ProvesNothingFromATaskThatNeedNotBe)
{
    SmallProblem made(200);
    const TaskIndex never = made.work("never", 30);
    made.problem.tasks[never].hands->skill = "sauce";
    const TaskIndex instead = made.work("instead", 30);
    made.cook("c");
    Choice choice;
    choice.id = "m";
    choice.options.push_back({"a", {never}, 0});
    choice.options.push_back({"b", {instead}, 7});
    made.problem.choices.push_back(choice);
    EXPECT_EQ(planned(made.problem).schedule.cost, 7);
}

// The engine, which would have to find one if the quick start did not, takes far longer.
TEST(Solve, FindsAFirstPlanOfManyTasksSoon)
{
    SmallProblem made(2880);
    for (int i = 0; i < 20; ++i) {
        made.cook("c" + std::to_string(i));
    }
    TaskIndex served;
    for (int i = 0; i < 500; ++i) {
        const std::string id = std::to_string(i);
        if (i % 50 == 0) {
            served = made.task("served" + id, 0);
            made.problem.tasks[served].window = interval(2400, 2800);
        }
        const TaskIndex chop = made.work("chop" + id, 20);
        const TaskIndex fry = made.work("fry" + id, 20);
        made.lag("then" + id, endOf(chop), startOf(fry), 0, 600);
        made.lag("keeps" + id, endOf(fry), startOf(served), 0, 1500);
    }
    std::int64_t first = 0;
    std::stop_source found;
    PlannerLimits limits;
    limits.wallClock = std::chrono::minutes{10};
    const auto outcome =
        solve(made.problem, limits, found.get_token(), [&](const PlannerProgress& progress) {
            if (progress.better && first == 0) {
                first = progress.stepsTaken;
                found.request_stop();
            }
        });
    EXPECT_TRUE(outcome.schedule.cost);
    EXPECT_GT(first, 0);
    EXPECT_LT(first, 40'000);
}

// Two thousand years of minutes are more than the engine reckons with.
TEST(Solve, PlansWhatIsTooLargeForTheEngine)
{
    SmallProblem made(1'000'000'000);
    const TaskIndex roast = made.work("roast", 30);
    const TaskIndex braise = made.work("braise", 40);
    made.cook("c");
    made.problem.choices.push_back({"m", {{"a", {roast}, 3}, {"b", {braise}, 2}}});
    EXPECT_TRUE(planned(made.problem).schedule.cost);
}

} // namespace suppertide
