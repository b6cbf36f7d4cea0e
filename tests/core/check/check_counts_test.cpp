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

/// A fridge of 10 litres; a tart takes 6 of them for 30 minutes, a jelly `jellyLitres`.
struct Fridge
{
    explicit Fridge(std::int64_t jellyLitres)
    {
        const CountIndex fridge = made.count("fridge", 10);
        made.counted("d1", startOf(tart), endOf(tart), fridge, 6);
        made.counted("d2", startOf(jelly), endOf(jelly), fridge, jellyLitres);
    }
    [[nodiscard]] Lines with(std::int64_t tartStart, std::int64_t jellyStart) const
    {
        Schedule schedule = emptyScheduleFor(made.problem);
        schedule.starts[tart] = planTime(tartStart);
        schedule.starts[jelly] = planTime(jellyStart);
        return brokenIn(made.problem, schedule);
    }

    SmallProblem made{100};
    TaskIndex tart = made.task("tart", 30);
    TaskIndex jelly = made.task("jelly", 30);
};

TEST(CheckCount, HoldsUpToItsCapacity)
{
    EXPECT_EQ(Fridge(4).with(0, 10), Lines{});
}

TEST(CheckCount, RefusesOneMoreThanItsCapacity)
{
    EXPECT_EQ(Fridge(5).with(0, 10), Lines{"count:fridge over capacity 11/10 [10,30) tart,jelly"});
}

TEST(CheckCount, LetsOneBeginInTheMinuteInWhichAnotherEnds)
{
    EXPECT_EQ(Fridge(5).with(0, 30), Lines{});
    EXPECT_EQ(Fridge(5).with(30, 0), Lines{});
    EXPECT_EQ(Fridge(5).with(0, 29), Lines{"count:fridge over capacity 11/10 [29,30) tart,jelly"});
    EXPECT_EQ(Fridge(5).with(29, 0), Lines{"count:fridge over capacity 11/10 [29,30) jelly,tart"});
}

TEST(CheckCount, RefusesOneThatIsTooMuchAlone)
{
    EXPECT_EQ(Fridge(11).with(0, 50), Lines{"count:fridge over capacity 11/10 [50,80) jelly"});
}

TEST(CheckCount, TellsEachStretchAndTheMostInIt)
{
    Fridge evening(5);
    const TaskIndex cheese = evening.made.task("cheese", 10);
    evening.made.counted("d3", startOf(cheese), endOf(cheese), CountIndex{0}, 9);
    Schedule schedule = emptyScheduleFor(evening.made.problem);
    schedule.starts[evening.tart] = planTime(0);
    schedule.starts[evening.jelly] = planTime(20);
    schedule.starts[cheese] = planTime(25);
    // tart 6 until 30, jelly 5 from 20 until 50, cheese 9 from 25 until 35
    EXPECT_EQ(brokenIn(evening.made.problem, schedule),
              Lines{"count:fridge over capacity 20/10 [20,35) tart,jelly,cheese"});
    schedule.starts[cheese] = planTime(40);
    EXPECT_EQ(brokenIn(evening.made.problem, schedule),
              (Lines{"count:fridge over capacity 11/10 [20,30) tart,jelly",
                     "count:fridge over capacity 14/10 [40,50) jelly,cheese"}));
}

TEST(CheckCount, HoldsFromOneTaskToAnother)
{
    SmallProblem made(100);
    const TaskIndex into = made.task("in", 0);
    const TaskIndex out = made.task("out", 0);
    made.counted("d", startOf(into), startOf(out), made.count("fridge", 1), 2);
    Schedule schedule = emptyScheduleFor(made.problem);
    schedule.starts[into] = planTime(10);
    schedule.starts[out] = planTime(11);
    EXPECT_EQ(brokenIn(made.problem, schedule),
              Lines{"count:fridge over capacity 2/1 [10,11) in,out"});
    schedule.starts[out] = planTime(10);
    EXPECT_EQ(brokenIn(made.problem, schedule), Lines{}); // it holds nothing
    schedule.starts[out] = planTime(9);
    EXPECT_EQ(brokenIn(made.problem, schedule), Lines{});
}

} // namespace
} // namespace suppertide
