// Demands of a pool, and its units.
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

/// A hob of two burners, u0 of 14 and u1 of 21; soup and sauce take one for 20 minutes each.
struct Hob
{
    Hob()
    {
        const PoolIndex hob = made.pool("hob", {14, 21});
        made.pooled("d1", startOf(soup), endOf(soup), hob);
        made.pooled("d2", startOf(sauce), endOf(sauce), hob);
        schedule = emptyScheduleFor(made.problem);
        schedule.starts[soup] = planTime(0);
        schedule.starts[sauce] = planTime(10);
        schedule.units[DemandIndex{0}] = UnitIndex{0};
        schedule.units[DemandIndex{1}] = UnitIndex{1};
    }
    [[nodiscard]] Lines broken() const { return brokenIn(made.problem, schedule); }

    SmallProblem made{100};
    TaskIndex soup = made.task("soup", 20);
    TaskIndex sauce = made.task("sauce", 20);
    Schedule schedule;
};

TEST(CheckPool, HoldsWithAUnitForEach)
{
    EXPECT_EQ(Hob().broken(), Lines{});
}

TEST(CheckPool, AsksForAUnit)
{
    Hob evening;
    evening.schedule.units[DemandIndex{1}].reset();
    EXPECT_EQ(evening.broken(), Lines{"demand:d2 missing 0/0 [10,30) sauce"});
}

TEST(CheckPool, AsksForNoUnitWhereNothingIsHeld)
{
    Hob evening;
    evening.made.problem.demands[DemandIndex{1}].to = startOf(evening.soup);
    evening.schedule.units[DemandIndex{1}].reset();
    EXPECT_EQ(evening.broken(), Lines{});
}

TEST(CheckPool, RefusesAUnitForTasksThatAreNotPresent)
{
    Hob evening;
    evening.made.problem.choices.push_back({"m", {{"with", {evening.sauce}, 0}, {"w/o", {}, 0}}});
    evening.schedule.options.push_back(OptionIndex{1});
    evening.schedule.starts[evening.sauce].reset();
    EXPECT_EQ(evening.broken(), Lines{"demand:d2 not present 0/0 sauce"});
    evening.schedule.units[DemandIndex{1}].reset();
    EXPECT_EQ(evening.broken(), Lines{});
}

TEST(CheckPool, TakesAUnitOfJustTheSizeAndNoSmaller)
{
    Hob evening;
    evening.made.problem.demands[DemandIndex{0}].minSize = 14;
    EXPECT_EQ(evening.broken(), Lines{});
    evening.made.problem.demands[DemandIndex{0}].minSize = 15;
    EXPECT_EQ(evening.broken(), Lines{"demand:d1 too small 15/14 [0,20) soup"});
}

TEST(CheckPool, TakesOnlyUnitsThatAreNamed)
{
    Hob evening;
    evening.made.problem.demands[DemandIndex{0}].units = std::vector{UnitIndex{0}};
    EXPECT_EQ(evening.broken(), Lines{});
    evening.made.problem.demands[DemandIndex{0}].units = std::vector{UnitIndex{1}};
    EXPECT_EQ(evening.broken(), Lines{"demand:d1 not allowed 0/0 [0,20) soup"});
}

TEST(CheckPool, RefusesOneUnitForTwoAtOnce)
{
    Hob evening;
    evening.schedule.units[DemandIndex{1}] = UnitIndex{0};
    EXPECT_EQ(evening.broken(), Lines{"unit:hob/u0 double use 2/1 [10,20) soup,sauce"});
    evening.schedule.starts[evening.sauce] = planTime(19);
    EXPECT_EQ(evening.broken(), Lines{"unit:hob/u0 double use 2/1 [19,20) soup,sauce"});
    evening.schedule.starts[evening.sauce] = planTime(20);
    EXPECT_EQ(evening.broken(), Lines{});
}

TEST(CheckPool, NamesEachPairOnAUnit)
{
    Hob evening;
    const TaskIndex rice = evening.made.task("rice", 20);
    evening.made.pooled("d3", startOf(rice), endOf(rice), PoolIndex{0});
    Schedule schedule = emptyScheduleFor(evening.made.problem);
    for (const DemandIndex demand : evening.made.problem.demands.indices()) {
        schedule.units[demand] = UnitIndex{1};
    }
    schedule.starts[evening.soup] = planTime(0);
    schedule.starts[evening.sauce] = planTime(10);
    schedule.starts[rice] = planTime(15);
    EXPECT_EQ(brokenIn(evening.made.problem, schedule),
              (Lines{"unit:hob/u1 double use 2/1 [10,20) soup,sauce",
                     "unit:hob/u1 double use 2/1 [15,20) soup,rice",
                     "unit:hob/u1 double use 2/1 [15,30) sauce,rice"}));
}

} // namespace
} // namespace suppertide
