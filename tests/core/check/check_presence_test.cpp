// Choices, starts and windows.
#include <gtest/gtest.h>

#include "tests/core/check/broken_text.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide {
namespace {

using test::brokenIn;
using test::Lines;
using test::SmallProblem;

/// A roast in the oven or a stew on the hob, 30 minutes each, and bread besides.
struct RoastOrStew
{
    RoastOrStew()
    {
        made.problem.choices.push_back(
            {"main", {{"roast", {roast}, 0}, {"stew", {stew, skim}, 0}}});
        schedule = emptyScheduleFor(made.problem);
        schedule.options[ChoiceIndex{0}] = OptionIndex{0};
        schedule.starts[roast] = planTime(10);
        schedule.starts[bread] = planTime(0);
    }

    SmallProblem made{100};
    TaskIndex roast = made.task("roast", 30);
    TaskIndex stew = made.task("stew", 30);
    TaskIndex skim = made.task("skim", 0);
    TaskIndex bread = made.task("bread", 20);
    Schedule schedule;
};

TEST(CheckPresence, HoldsWithOneOptionAndItsTasksAlone)
{
    const RoastOrStew evening;
    EXPECT_EQ(brokenIn(evening.made.problem, evening.schedule), Lines{});
}

TEST(CheckPresence, AsksForAnOptionOfEachChoice)
{
    RoastOrStew evening;
    evening.schedule.options[ChoiceIndex{0}].reset();
    evening.schedule.starts[evening.roast].reset();
    EXPECT_EQ(brokenIn(evening.made.problem, evening.schedule),
              Lines{"choice:main missing 0/0 roast,stew,skim"});
}

TEST(CheckPresence, AsksForAStartOfEachPresentTask)
{
    RoastOrStew evening;
    evening.schedule.starts[evening.bread].reset();
    EXPECT_EQ(brokenIn(evening.made.problem, evening.schedule),
              Lines{"start:bread missing 0/0 bread"});
}

TEST(CheckPresence, RefusesAStartOfATaskThatIsNotPresent)
{
    RoastOrStew evening;
    evening.schedule.starts[evening.stew] = planTime(5);
    EXPECT_EQ(brokenIn(evening.made.problem, evening.schedule),
              Lines{"start:stew not present 0/0 [5,35) stew"});
}

TEST(CheckPresence, AsksForAllTasksOfTheOptionThatIsChosen)
{
    RoastOrStew evening;
    evening.schedule.options[ChoiceIndex{0}] = OptionIndex{1};
    EXPECT_EQ(brokenIn(evening.made.problem, evening.schedule),
              (Lines{"start:roast not present 0/0 [10,40) roast", "start:stew missing 0/0 stew",
                     "start:skim missing 0/0 skim"}));
}

struct Windowed
{
    explicit Windowed(std::int64_t start)
    {
        made.problem.tasks[bake].window = interval(20, 60);
        schedule = emptyScheduleFor(made.problem);
        schedule.starts[bake] = planTime(start);
    }

    SmallProblem made{100};
    TaskIndex bake = made.task("bake", 30);
    Schedule schedule;
};

TEST(CheckWindow, HoldsFromTheFirstToTheLastMinute)
{
    for (const std::int64_t start : {20, 30}) {
        const Windowed evening(start);
        EXPECT_EQ(brokenIn(evening.made.problem, evening.schedule), Lines{}) << start;
    }
}

TEST(CheckWindow, RefusesAStartOneMinuteBefore)
{
    const Windowed evening(19);
    EXPECT_EQ(brokenIn(evening.made.problem, evening.schedule),
              Lines{"window:bake too early 19/20 [19,20) bake"});
}

TEST(CheckWindow, RefusesAnEndOneMinuteAfter)
{
    const Windowed evening(31);
    EXPECT_EQ(brokenIn(evening.made.problem, evening.schedule),
              Lines{"window:bake too late 61/60 [60,61) bake"});
}

TEST(CheckWindow, NamesBothEndsOfAWindowThatIsTooShort)
{
    Windowed evening(19);
    evening.made.problem.tasks[evening.bake].window = interval(20, 48);
    EXPECT_EQ(brokenIn(evening.made.problem, evening.schedule),
              (Lines{"window:bake too early 19/20 [19,20) bake",
                     "window:bake too late 49/48 [48,49) bake"}));
}

TEST(CheckWindow, HoldsForAnEventAtItsMinuteAlone)
{
    SmallProblem made(100);
    const TaskIndex served = made.event("served", 70);
    Schedule schedule = emptyScheduleFor(made.problem);
    schedule.starts[served] = planTime(70);
    EXPECT_EQ(brokenIn(made.problem, schedule), Lines{});
    schedule.starts[served] = planTime(71);
    EXPECT_EQ(brokenIn(made.problem, schedule),
              Lines{"window:served too late 71/70 [70,71) served"});
    schedule.starts[served] = planTime(69);
    EXPECT_EQ(brokenIn(made.problem, schedule),
              Lines{"window:served too early 69/70 [69,70) served"});
}

TEST(CheckWindow, RefusesAnEndAfterTheHorizon)
{
    SmallProblem made(100);
    const TaskIndex bake = made.task("bake", 30);
    Schedule schedule = emptyScheduleFor(made.problem);
    schedule.starts[bake] = planTime(71);
    EXPECT_EQ(brokenIn(made.problem, schedule),
              Lines{"window:bake too late 101/100 [100,101) bake"});
}

} // namespace
} // namespace suppertide
