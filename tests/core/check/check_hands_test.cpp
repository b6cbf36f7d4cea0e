// Hands of each task, and each cook's attention.
#include <gtest/gtest.h>

#include "tests/core/check/broken_text.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide {
namespace {

using test::brokenIn;
using test::Lines;
using test::SmallProblem;

/// Ada and Ben; chopping takes 20 minutes from minute 30 and is Ada's.
struct Kitchen
{
    [[nodiscard]] Lines with(std::vector<CookIndex> cooks, std::int64_t start = 30) const
    {
        Schedule schedule = emptyScheduleFor(made.problem);
        schedule.starts[chop] = planTime(start);
        schedule.cooks[chop] = std::move(cooks);
        return brokenIn(made.problem, schedule);
    }
    [[nodiscard]] Hands& hands() { return *made.problem.tasks[chop].hands; }

    SmallProblem made{100};
    TaskIndex chop = made.work("chop", 20);
    CookIndex ada = made.cook("Ada");
    CookIndex ben = made.cook("Ben");
};

TEST(CheckHands, HoldsWithOneCook)
{
    const Kitchen kitchen;
    EXPECT_EQ(kitchen.with({kitchen.ada}), Lines{});
}

TEST(CheckHands, AsksForAsManyCooksAsNeeded)
{
    Kitchen kitchen;
    EXPECT_EQ(kitchen.with({}), Lines{"hands:chop wrong number 0/1 [30,50) chop"});
    EXPECT_EQ(kitchen.with({kitchen.ada, kitchen.ben}),
              Lines{"hands:chop wrong number 2/1 [30,50) chop"});
    kitchen.hands().cooks = 2;
    EXPECT_EQ(kitchen.with({kitchen.ada, kitchen.ben}), Lines{});
    EXPECT_EQ(kitchen.with({kitchen.ada}), Lines{"hands:chop wrong number 1/2 [30,50) chop"});
}

TEST(CheckHands, CountsACookNamedTwiceOnce)
{
    Kitchen kitchen;
    kitchen.hands().cooks = 2;
    EXPECT_EQ(kitchen.with({kitchen.ada, kitchen.ada}),
              Lines{"hands:chop wrong number 1/2 [30,50) chop"});
}

TEST(CheckHands, GivesNobodyToWhatNeedsNobody)
{
    Kitchen kitchen;
    kitchen.hands().attention = Attention::percent(1);
    EXPECT_EQ(kitchen.with({kitchen.ada}), Lines{});
    kitchen.hands().attention = Attention::percent(0);
    EXPECT_EQ(kitchen.with({}), Lines{});
    EXPECT_EQ(kitchen.with({kitchen.ada}), Lines{"hands:chop wrong number 1/0 [30,50) chop"});
}

TEST(CheckHands, RefusesCooksOfATaskThatIsNotPresent)
{
    Kitchen kitchen;
    kitchen.made.problem.choices.push_back({"m", {{"a", {kitchen.chop}, 0}, {"b", {}, 0}}});
    Schedule schedule = emptyScheduleFor(kitchen.made.problem);
    schedule.options[ChoiceIndex{0}] = OptionIndex{1};
    EXPECT_EQ(brokenIn(kitchen.made.problem, schedule), Lines{});
    schedule.cooks[kitchen.chop] = {kitchen.ada};
    EXPECT_EQ(brokenIn(kitchen.made.problem, schedule), Lines{"hands:chop not present 0/0 chop"});
    schedule.cooks[kitchen.chop] = {};
    schedule.namedWithoutCooks = {kitchen.chop};
    EXPECT_EQ(brokenIn(kitchen.made.problem, schedule), Lines{"hands:chop not present 0/0 chop"});
}

TEST(CheckHands, AsksForTheSkill)
{
    Kitchen kitchen;
    kitchen.hands().skill = "knife";
    kitchen.made.problem.cooks[kitchen.ben].skills = {"sauce", "knife"};
    EXPECT_EQ(kitchen.with({kitchen.ben}), Lines{});
    EXPECT_EQ(kitchen.with({kitchen.ada}), Lines{"hands:chop no skill 0/0 [30,50) chop cook=Ada"});
}

TEST(CheckHands, AsksThatTheCookIsFreeAllTheTime)
{
    Kitchen kitchen;
    kitchen.made.problem.cooks[kitchen.ada].free = {interval(30, 50), interval(60, 80)};
    EXPECT_EQ(kitchen.with({kitchen.ada}, 30), Lines{});
    EXPECT_EQ(kitchen.with({kitchen.ada}, 60), Lines{});
    EXPECT_EQ(kitchen.with({kitchen.ada}, 29),
              Lines{"hands:chop not free 0/0 [29,49) chop cook=Ada"});
    EXPECT_EQ(kitchen.with({kitchen.ada}, 61),
              Lines{"hands:chop not free 0/0 [61,81) chop cook=Ada"});
}

TEST(CheckHands, AsksForOneFreeIntervalEvenIfTwoMeet)
{
    Kitchen kitchen;
    kitchen.made.problem.cooks[kitchen.ada].free = {interval(0, 40), interval(40, 100)};
    EXPECT_EQ(kitchen.with({kitchen.ada}, 20), Lines{});
    EXPECT_EQ(kitchen.with({kitchen.ada}, 40), Lines{});
    EXPECT_EQ(kitchen.with({kitchen.ada}, 21),
              Lines{"hands:chop not free 0/0 [21,41) chop cook=Ada"});
}

TEST(CheckHands, KeepsTheTableFree)
{
    Kitchen kitchen;
    kitchen.made.problem.cooks[kitchen.ada].table = {interval(50, 60)};
    EXPECT_EQ(kitchen.with({kitchen.ada}, 30), Lines{});
    EXPECT_EQ(kitchen.with({kitchen.ada}, 60), Lines{});
    EXPECT_EQ(kitchen.with({kitchen.ada}, 31),
              Lines{"hands:chop at table 0/0 [50,51) chop cook=Ada"});
    EXPECT_EQ(kitchen.with({kitchen.ada}, 59),
              Lines{"hands:chop at table 0/0 [59,60) chop cook=Ada"});
    kitchen.made.problem.tasks[kitchen.chop].atTable = true;
    EXPECT_EQ(kitchen.with({kitchen.ada}, 50), Lines{});
}

TEST(CheckHands, KeepsTheTableFreeAfterAnEvent)
{
    Kitchen kitchen;
    const TaskIndex served = kitchen.made.task("served", 0);
    kitchen.made.problem.cooks[kitchen.ada].tableAfter = {{served, 10_min}};
    Schedule schedule = emptyScheduleFor(kitchen.made.problem);
    schedule.starts[kitchen.chop] = planTime(30);
    schedule.cooks[kitchen.chop] = {kitchen.ada};
    const auto servedAt = [&](std::int64_t minute) {
        schedule.starts[served] = planTime(minute);
        return brokenIn(kitchen.made.problem, schedule);
    };
    EXPECT_EQ(servedAt(20), Lines{});
    EXPECT_EQ(servedAt(50), Lines{});
    EXPECT_EQ(servedAt(21), Lines{"hands:chop at table 0/0 [30,31) chop cook=Ada"});
    EXPECT_EQ(servedAt(49), Lines{"hands:chop at table 0/0 [49,50) chop cook=Ada"});
}

/// Chopping at `first` % from 0 to 20, a pan at `second` % from `start` on; both Ada's.
Lines together(int first, int second, std::int64_t start)
{
    SmallProblem made(100);
    const TaskIndex chop = made.work("chop", 20, first);
    const TaskIndex pan = made.work("pan", 20, second);
    const CookIndex ada = made.cook("Ada");
    Schedule schedule = emptyScheduleFor(made.problem);
    schedule.starts[chop] = planTime(0);
    schedule.starts[pan] = planTime(start);
    schedule.cooks[chop] = {ada};
    schedule.cooks[pan] = {ada};
    return brokenIn(made.problem, schedule);
}

TEST(CheckCook, HoldsUpToAllOfTheAttention)
{
    EXPECT_EQ(together(80, 20, 5), Lines{});
}

TEST(CheckCook, RefusesOnePercentMore)
{
    EXPECT_EQ(together(80, 21, 5), Lines{"cook:Ada overloaded 101/100 [5,20) chop,pan cook=Ada"});
}

TEST(CheckCook, LetsOneBeginInTheMinuteInWhichAnotherEnds)
{
    EXPECT_EQ(together(100, 100, 20), Lines{});
    EXPECT_EQ(together(100, 100, 19),
              Lines{"cook:Ada overloaded 200/100 [19,20) chop,pan cook=Ada"});
}

} // namespace
} // namespace suppertide
