#include <gtest/gtest.h>

#include "tests/core/check/broken_text.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide {
namespace {

using test::brokenIn;
using test::endOf;
using test::Lines;
using test::SmallProblem;
using test::startOf;

/// Chop (20 minutes, from minute 0), then boil (10 minutes); one lag "l" between them.
struct ChopAndBoil
{
    [[nodiscard]] Lines withBoilAt(std::int64_t start) const
    {
        Schedule schedule = emptyScheduleFor(made.problem);
        schedule.starts[chop] = planTime(0);
        schedule.starts[boil] = planTime(start);
        return brokenIn(made.problem, schedule);
    }

    SmallProblem made{100};
    TaskIndex chop = made.task("chop", 20);
    TaskIndex boil = made.task("boil", 10);
};

TEST(CheckLag, HoldsFromMinToMax)
{
    ChopAndBoil evening;
    evening.made.lag("l", endOf(evening.chop), startOf(evening.boil), 5, 15);
    EXPECT_EQ(evening.withBoilAt(25), Lines{});
    EXPECT_EQ(evening.withBoilAt(35), Lines{});
}

TEST(CheckLag, RefusesOneMinuteLessThanMin)
{
    ChopAndBoil evening;
    evening.made.lag("l", endOf(evening.chop), startOf(evening.boil), 5, 15);
    EXPECT_EQ(evening.withBoilAt(24), Lines{"lag:l below min 4/5 [20,24) chop,boil"});
}

TEST(CheckLag, RefusesOneMinuteMoreThanMax)
{
    ChopAndBoil evening;
    evening.made.lag("l", endOf(evening.chop), startOf(evening.boil), 5, 15);
    EXPECT_EQ(evening.withBoilAt(36), Lines{"lag:l above max 16/15 [20,36) chop,boil"});
}

TEST(CheckLag, TellsANegativeGap)
{
    ChopAndBoil evening;
    evening.made.lag("l", endOf(evening.chop), startOf(evening.boil), 0, std::nullopt);
    EXPECT_EQ(evening.withBoilAt(20), Lines{});
    EXPECT_EQ(evening.withBoilAt(12), Lines{"lag:l below min -8/0 [12,20) chop,boil"});
}

TEST(CheckLag, HasNoBoundWhereNoneIsGiven)
{
    ChopAndBoil evening;
    evening.made.lag("l", endOf(evening.chop), startOf(evening.boil), std::nullopt, 0);
    EXPECT_EQ(evening.withBoilAt(0), Lines{});
    EXPECT_EQ(evening.withBoilAt(21), Lines{"lag:l above max 1/0 [20,21) chop,boil"});
}

TEST(CheckLag, TakesNegativeBounds)
{
    ChopAndBoil evening; // boil begins five to ten minutes before chopping ends
    evening.made.lag("l", endOf(evening.chop), startOf(evening.boil), -10, -5);
    EXPECT_EQ(evening.withBoilAt(10), Lines{});
    EXPECT_EQ(evening.withBoilAt(15), Lines{});
    EXPECT_EQ(evening.withBoilAt(9), Lines{"lag:l below min -11/-10 [9,20) chop,boil"});
    EXPECT_EQ(evening.withBoilAt(16), Lines{"lag:l above max -4/-5 [16,20) chop,boil"});
}

TEST(CheckLag, TellsStartFromEnd)
{
    ChopAndBoil evening;
    evening.made.lag("starts", startOf(evening.chop), startOf(evening.boil), 5, 5);
    evening.made.lag("ends", endOf(evening.chop), endOf(evening.boil), -5, -5);
    EXPECT_EQ(evening.withBoilAt(5), Lines{});
    EXPECT_EQ(evening.withBoilAt(6), (Lines{"lag:starts above max 6/5 [0,6) chop,boil",
                                            "lag:ends above max -4/-5 [16,20) chop,boil"}));
}

TEST(CheckLag, NamesBothBoundsThatContradictEachOther)
{
    ChopAndBoil evening;
    evening.made.lag("l", endOf(evening.chop), startOf(evening.boil), 10, 5);
    EXPECT_EQ(evening.withBoilAt(27), (Lines{"lag:l below min 7/10 [20,27) chop,boil",
                                             "lag:l above max 7/5 [20,27) chop,boil"}));
}

TEST(CheckLag, DoesNotCountIfOneOfItsTasksIsNotPresent)
{
    ChopAndBoil evening;
    evening.made.lag("l", endOf(evening.chop), startOf(evening.boil), 5, 15);
    evening.made.problem.choices.push_back({"m", {{"hot", {evening.boil}, 0}, {"cold", {}, 0}}});
    Schedule schedule = emptyScheduleFor(evening.made.problem);
    schedule.options[ChoiceIndex{0}] = OptionIndex{1};
    schedule.starts[evening.chop] = planTime(0);
    EXPECT_EQ(brokenIn(evening.made.problem, schedule), Lines{});
}

} // namespace
} // namespace suppertide
