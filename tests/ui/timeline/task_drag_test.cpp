#include <gtest/gtest.h>

#include "ui/timeline/task_drag.h"

namespace suppertide::ui {
namespace {

/// A step of 40 min at minute 70 of a day, picked up at its tenth minute.
DragPick pickAt70()
{
    return {"beef", planTime(70), 40_min, planTime(80), interval(0, 600), std::nullopt};
}

TaskDrag drag(const DragPick& pick)
{
    return TaskDrag{pick, PlanCalendar{}};
}

TEST(TaskDrag, SnapsToFiveMinutesOfTheClock)
{
    TaskDrag moved = drag(pickAt70());
    moved.moveTo(planTime(93)); // 13 later: 83
    EXPECT_EQ(moved.start(), planTime(85));
    EXPECT_EQ(moved.drop(), (MoveTask{"beef", planTime(85)}));
}

TEST(TaskDrag, GivesAHalfToTheLaterPoint)
{
    EXPECT_EQ((SnapGrid{PlanCalendar{}, 4_min}).nearest(planTime(10)), planTime(12));
    EXPECT_EQ((SnapGrid{PlanCalendar{}, 4_min}).nearest(planTime(-10)), planTime(-8));
}

TEST(TaskDrag, MovesByTheMinuteWithAltHeld)
{
    TaskDrag moved = drag(pickAt70());
    moved.moveTo(planTime(93), Fineness::Fine);
    EXPECT_EQ(moved.start(), planTime(83));
}

TEST(TaskDrag, SnapsByTheWallNotByThePlansOrigin)
{
    PlanCalendar odd;
    odd.origin = Instant{Minutes{3}};
    TaskDrag moved{pickAt70(), odd};
    moved.moveTo(planTime(112)); // 32 later: 102, which the wall calls 105
    EXPECT_EQ(moved.start(), planTime(102));
    EXPECT_EQ(odd.civil(moved.start()).clock.minute % 5, 0);
}

TEST(TaskDrag, ReachesTheEndsOfItsRangeThoughTheyLieOffTheGrid)
{
    DragPick pick = pickAt70();
    pick.range = interval(52, 123);
    TaskDrag moved = drag(pick);
    moved.moveTo(planTime(133)); // 53 later: 123
    EXPECT_EQ(moved.start(), planTime(123));
    EXPECT_TRUE(moved.isWithinRange());
    moved.moveTo(planTime(135));
    EXPECT_EQ(moved.start(), planTime(125));
    EXPECT_FALSE(moved.isWithinRange());
    moved.moveTo(planTime(62));
    EXPECT_EQ(moved.start(), planTime(52));
}

TEST(TaskDrag, ComesBackToWhereItStoodThoughThatLiesOffTheGrid)
{
    DragPick pick = pickAt70();
    pick.start = planTime(72);
    pick.grabbedAt = planTime(72);
    TaskDrag moved = drag(pick);
    moved.moveTo(planTime(200));
    moved.moveTo(planTime(72));
    EXPECT_EQ(moved.start(), planTime(72));
    EXPECT_FALSE(moved.hasMoved());
    EXPECT_EQ(moved.drop(), std::nullopt);
}

TEST(TaskDrag, StaysWhollyWithinTheHorizon)
{
    TaskDrag moved = drag(pickAt70());
    moved.moveTo(planTime(9000));
    EXPECT_EQ(moved.start(), planTime(560));
    moved.moveTo(planTime(-9000));
    EXPECT_EQ(moved.start(), planTime(0));
}

TEST(TaskDrag, IsWithinAnyRangeIfNoneIsKnown)
{
    TaskDrag moved = drag(pickAt70());
    moved.moveTo(planTime(400));
    EXPECT_TRUE(moved.isWithinRange());
}

TEST(Nudged, StepsByFiveMinutes)
{
    EXPECT_EQ(nudged(pickAt70(), PlanCalendar{}, 1), planTime(75));
    EXPECT_EQ(nudged(pickAt70(), PlanCalendar{}, -2), planTime(60));
}

TEST(Nudged, FirstOnlyReachesTheNextPointOfTheGrid)
{
    DragPick pick = pickAt70();
    pick.start = planTime(72);
    EXPECT_EQ(nudged(pick, PlanCalendar{}, 1), planTime(75));
    EXPECT_EQ(nudged(pick, PlanCalendar{}, -1), planTime(70));
}

TEST(Nudged, StopsAtTheHorizon)
{
    DragPick pick = pickAt70();
    pick.start = planTime(558);
    EXPECT_EQ(nudged(pick, PlanCalendar{}, 1), planTime(560));
}

} // namespace
} // namespace suppertide::ui
