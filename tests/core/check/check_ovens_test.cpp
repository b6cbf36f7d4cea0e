// Programs, oven demands and shelves. The oven of these tests heats by 15 °C a minute and cools by
// 4, starts at 20 °C and can be set to 50…250 °C.
#include <gtest/gtest.h>

#include "tests/core/check/broken_text.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide {
namespace {

using test::brokenIn;
using test::Lines;
using test::SmallProblem;

constexpr std::nullopt_t off = std::nullopt;

/// Bread takes 30 minutes at 170…190 °C, meringue 30 at 90…110 °C; one oven of two shelves.
struct Baking
{
    explicit Baking(OvenProgram program)
    {
        made.inOven("e1", bread, 170, 190, 180);
        schedule = emptyScheduleFor(made.problem);
        schedule.programs[oven] = std::move(program);
        schedule.ovens[OvenDemandIndex{0}] = oven;
    }
    [[nodiscard]] Lines breadAt(std::int64_t start)
    {
        schedule.starts[bread] = planTime(start);
        return broken();
    }
    /// Adds a second demand, of another task of the same length.
    OvenDemand& beside(const char* id, int low, int high, std::int64_t start)
    {
        const TaskIndex task = made.task(id, 30);
        schedule.starts.push_back(planTime(start));
        schedule.cooks.push_back({});
        schedule.ovens.push_back(oven);
        return made.inOven("e2", task, low, high, low);
    }
    [[nodiscard]] Lines broken() const { return brokenIn(made.problem, schedule); }
    [[nodiscard]] OvenDemand& demand() { return made.problem.ovenDemands[OvenDemandIndex{0}]; }

    SmallProblem made{200};
    TaskIndex bread = made.task("bread", 30);
    OvenIndex oven = made.oven("o", 2);
    Schedule schedule;
};

TEST(CheckProgram, HoldsAtTheColdestAndTheHottestSetting)
{
    Baking evening({{planTime(0), 50}, {planTime(10), 250}, {planTime(20), off}});
    evening.made.problem.ovenDemands.clear();
    evening.schedule.ovens.clear();
    evening.schedule.starts[evening.bread] = planTime(0);
    EXPECT_EQ(evening.broken(), Lines{});
}

TEST(CheckProgram, RefusesASettingOneDegreeBeyond)
{
    Baking evening({{planTime(0), 49}, {planTime(10), 251}});
    evening.made.problem.ovenDemands.clear();
    evening.schedule.ovens.clear();
    evening.schedule.starts[evening.bread] = planTime(0);
    EXPECT_EQ(evening.broken(), (Lines{"program:o out of range 49000/50000 [0,10) oven=o",
                                       "program:o out of range 251000/250000 [10,200) oven=o"}));
}

TEST(CheckOven, HoldsFromTheMinuteInWhichTheBandIsReached)
{
    EXPECT_EQ(Baking({{planTime(0), 180}}).breadAt(10), Lines{}); // 20 + 10 × 15 = 170
}

TEST(CheckOven, RefusesOneMinuteTooSoon)
{
    EXPECT_EQ(Baking({{planTime(0), 180}}).breadAt(9),
              Lines{"oven:e1 too cold 155000/170000 [9,10) bread oven=o demand=e1"});
}

TEST(CheckOven, HoldsAtTheUpperEndOfTheBand)
{
    EXPECT_EQ(Baking({{planTime(0), 190}}).breadAt(20), Lines{});
}

TEST(CheckOven, RefusesOneDegreeTooHot)
{
    EXPECT_EQ(Baking({{planTime(0), 191}}).breadAt(20),
              Lines{"oven:e1 too hot 191000/190000 [20,50) bread oven=o demand=e1"});
}

TEST(CheckOven, TellsTheMinutesWithAMomentOutside)
{
    // 185 °C at 11, 190 °C a third of a minute later
    EXPECT_EQ(Baking({{planTime(0), 191}}).breadAt(10),
              Lines{"oven:e1 too hot 191000/190000 [11,40) bread oven=o demand=e1"});
}

TEST(CheckOven, LetsTheOvenCoolInTheLastMinutes)
{
    // from 180 °C it takes two and a half minutes to 170 °C
    EXPECT_EQ(Baking({{planTime(0), 180}, {planTime(48), off}}).breadAt(20), Lines{});
    EXPECT_EQ(Baking({{planTime(0), 180}, {planTime(47), off}}).breadAt(20),
              Lines{"oven:e1 too cold 168000/170000 [49,50) bread oven=o demand=e1"});
}

TEST(CheckOven, LooksAtTheLastMomentToo)
{
    Baking evening({{planTime(0), 180}, {planTime(45), 155}, {planTime(50), 180}});
    EXPECT_EQ(evening.breadAt(17), Lines{}); // 172 °C at 47, its end
    EXPECT_EQ(evening.breadAt(18),
              Lines{"oven:e1 too cold 168000/170000 [47,48) bread oven=o demand=e1"});
}

TEST(CheckOven, FindsADipInTheMiddle)
{
    Baking evening({{planTime(0), 180}, {planTime(30), off}, {planTime(35), 180}});
    // 172 °C at 32, 160 °C at 35, 175 °C at 36
    EXPECT_EQ(evening.breadAt(20),
              Lines{"oven:e1 too cold 160000/170000 [32,36) bread oven=o demand=e1"});
}

TEST(CheckOven, StaysColdWithoutAProgram)
{
    EXPECT_EQ(Baking({}).breadAt(20),
              Lines{"oven:e1 too cold 20000/170000 [20,50) bread oven=o demand=e1"});
}

TEST(CheckOven, TakesRatesOfThousandthsExactly)
{
    Baking evening({{planTime(0), 250}});
    evening.made.problem.ovens[evening.oven].heatMilliCPerMin = 3'333;
    evening.made.problem.tasks[evening.bread].duration = 1_min;
    EXPECT_EQ(evening.breadAt(46), Lines{}); // 20 + 46 × 3.333 = 173.318
    EXPECT_EQ(evening.breadAt(45),           // 169.985
              Lines{"oven:e1 too cold 169985/170000 [45,46) bread oven=o demand=e1"});
}

TEST(CheckOven, AsksForAnOven)
{
    Baking evening({{planTime(0), 180}});
    evening.schedule.ovens[OvenDemandIndex{0}].reset();
    EXPECT_EQ(evening.breadAt(20), Lines{"oven:e1 missing 0/0 [20,50) bread demand=e1"});
}

TEST(CheckOven, RefusesAnOvenForATaskThatIsNotPresent)
{
    Baking evening({});
    evening.made.problem.choices.push_back({"m", {{"a", {evening.bread}, 0}, {"b", {}, 0}}});
    evening.schedule.options.push_back(OptionIndex{1});
    EXPECT_EQ(evening.broken(), Lines{"oven:e1 not present 0/0 bread oven=o demand=e1"});
    evening.schedule.ovens[OvenDemandIndex{0}].reset();
    EXPECT_EQ(evening.broken(), Lines{});
}

TEST(CheckOven, TakesOnlyOvensThatAreNamed)
{
    Baking evening({{planTime(0), 180}});
    const OvenIndex small = evening.made.oven("small", 1);
    evening.schedule.programs.push_back({});
    evening.demand().ovens = std::vector{evening.oven};
    EXPECT_EQ(evening.breadAt(20), Lines{});
    evening.demand().ovens = std::vector{small};
    EXPECT_EQ(evening.breadAt(20), Lines{"oven:e1 not allowed 0/0 [20,50) bread oven=o demand=e1"});
}

TEST(CheckOven, KeepsAGroupTogether)
{
    Baking evening({{planTime(0), 180}});
    const OvenIndex small = evening.made.oven("small", 1);
    evening.schedule.programs.push_back({{planTime(0), 180}});
    evening.beside("rolls", 170, 190, 60).group = "tray";
    evening.demand().group = "tray";
    EXPECT_EQ(evening.breadAt(20), Lines{});
    evening.schedule.ovens[OvenDemandIndex{1}] = small;
    EXPECT_EQ(evening.broken(), Lines{"oven:e2 other oven 0/0 [60,90) bread,rolls "
                                      "oven=small demand=e2 with=e1"});
    evening.demand().group = "other tray";
    EXPECT_EQ(evening.broken(), Lines{});
}

TEST(CheckOven, KeepsModesApartWhileBothAreIn)
{
    Baking evening({{planTime(0), 180}});
    evening.beside("gratin", 170, 190, 50).mode = "grill";
    evening.demand().mode = "fan";
    EXPECT_EQ(evening.breadAt(20), Lines{});
    EXPECT_EQ(evening.breadAt(21), Lines{"oven:e2 other mode 0/0 [50,51) bread,gratin "
                                         "oven=o demand=e2 with=e1"});
    evening.demand().mode.reset();
    EXPECT_EQ(evening.broken(), Lines{});
    evening.demand().mode = "grill";
    EXPECT_EQ(evening.broken(), Lines{});
}

TEST(CheckOven, AsksThatTheOvenIsOffForModeOff)
{
    Baking evening({{planTime(0), 180}, {planTime(30), off}, {planTime(60), 180}});
    evening.demand().mode = modeOff;
    evening.demand().acceptLow = 20;
    EXPECT_EQ(evening.breadAt(30), Lines{});
    EXPECT_EQ(evening.breadAt(29), Lines{"oven:e1 not off 0/0 [29,30) bread oven=o demand=e1"});
    EXPECT_EQ(evening.breadAt(31), Lines{"oven:e1 not off 0/0 [60,61) bread oven=o demand=e1"});
}

TEST(CheckOven, NamesBothWhoseBandsDoNotMeet)
{
    // 100 °C at 20, 115 at 21, 175 at 25
    Baking evening({{planTime(0), 100}, {planTime(20), 180}});
    evening.beside("meringue", 90, 110, 10);
    EXPECT_EQ(evening.breadAt(25), Lines{"oven:e2 too hot 180000/110000 [20,40) meringue,bread "
                                         "oven=o demand=e2 with=e1"});
}

TEST(CheckOven, NamesBothThatLeaveNoTimeToHeat)
{
    // 100 °C at 28, 130 at 30, 160 at 32, 175 at 33
    Baking evening({{planTime(0), 100}, {planTime(28), 180}});
    evening.beside("meringue", 90, 110, 0);
    evening.schedule.starts[TaskIndex{1}] = planTime(6);
    evening.made.problem.tasks[TaskIndex{1}].duration = 24_min;
    EXPECT_EQ(evening.breadAt(31), (Lines{"oven:e1 too cold 145000/170000 [31,33) meringue,bread "
                                          "oven=o demand=e1 with=e2",
                                          "oven:e2 too hot 130000/110000 [28,30) meringue,bread "
                                          "oven=o demand=e2 with=e1"}));
}

TEST(CheckOven, HoldsWithJustTimeEnoughToHeat)
{
    // from 110 °C to 170 °C takes four minutes
    Baking evening({{planTime(0), 110}, {planTime(36), 180}});
    evening.beside("meringue", 90, 110, 6);
    EXPECT_EQ(evening.breadAt(40), Lines{});
    EXPECT_EQ(evening.breadAt(39), Lines{"oven:e1 too cold 155000/170000 [39,40) meringue,bread "
                                         "oven=o demand=e1 with=e2"});
}

TEST(CheckOven, JudgesNothingThatHoldsNothing)
{
    Baking evening({});
    evening.made.problem.tasks[evening.bread].duration = 0_min;
    EXPECT_EQ(evening.breadAt(20), Lines{});
}

TEST(CheckShelves, HoldUpToAllThatThereAre)
{
    Baking evening({{planTime(0), 180}});
    evening.beside("rolls", 170, 190, 20).shelves = 1;
    EXPECT_EQ(evening.breadAt(20), Lines{});
}

TEST(CheckShelves, RefuseOneMoreThanThereAre)
{
    Baking evening({{planTime(0), 180}});
    evening.beside("rolls", 170, 190, 49).shelves = 2;
    EXPECT_EQ(evening.breadAt(20), Lines{"shelves:o over capacity 3/2 [49,50) bread,rolls oven=o"});
    EXPECT_EQ(evening.breadAt(19), Lines{});
}

TEST(CheckShelves, AreNotTakenByADemandOfNone)
{
    Baking evening({{planTime(0), 180}});
    evening.demand().shelves = 2;
    evening.beside("stone", 170, 190, 20).shelves = 0;
    EXPECT_EQ(evening.breadAt(20), Lines{});
}

} // namespace
} // namespace suppertide
