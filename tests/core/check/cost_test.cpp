// Each part of the cost by itself, worked out by hand.
#include <gtest/gtest.h>

#include "core/check/check.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide {
namespace {

using test::endOf;
using test::SmallProblem;
using test::startOf;

/// Chop 20 minutes from minute 0, boil 30 from minute 40, both Ada's with 50 % and 20 %.
struct Costed
{
    Costed() { layOut(); }
    void layOut()
    {
        schedule = emptyScheduleFor(made.problem);
        schedule.starts[chop] = planTime(0);
        schedule.starts[boil] = planTime(40);
        schedule.cooks[chop] = {ada};
        schedule.cooks[boil] = {ada};
    }
    [[nodiscard]] CostParts cost() const { return costOf(made.problem, schedule); }
    [[nodiscard]] Costs& costs() { return made.problem.costs; }

    SmallProblem made{200};
    TaskIndex chop = made.work("chop", 20, 50);
    TaskIndex boil = made.work("boil", 30, 20);
    CookIndex ada = made.cook("Ada");
    Schedule schedule;
};

TEST(Cost, IsNothingByItself)
{
    EXPECT_EQ(Costed().cost(), CostParts{});
    EXPECT_EQ(Costed().cost().total(), 0);
}

TEST(Cost, AddsUpItsParts)
{
    EXPECT_EQ(
        (CostParts{1, 20, 300, 4000, 50'000, 600'000, 7'000'000, 80'000'000, 900'000'000}.total()),
        987'654'321);
}

TEST(Cost, OfALagIsItsLossAMinuteAboveMin)
{
    Costed evening;
    evening.made.lag("l", endOf(evening.chop), startOf(evening.boil), 5, std::nullopt).loss = 3;
    EXPECT_EQ(evening.cost().loss, 3 * (20 - 5));
    evening.made.problem.lags[LagIndex{0}].min.reset();
    EXPECT_EQ(evening.cost().loss, 0);
}

TEST(Cost, OfQuietMinutesCountsAttention)
{
    Costed evening;
    evening.costs().quiet = {{2, interval(10, 50), {}, {}}};
    EXPECT_EQ(evening.cost().quiet, 2 * (50 * 10 + 20 * 10));
    evening.made.problem.tasks[evening.boil].hands->cooks = 3;
    EXPECT_EQ(evening.cost().quiet, 2 * (50 * 10 + 3 * 20 * 10));
}

TEST(Cost, OfQuietMinutesBeforeAnEventMovesWithIt)
{
    Costed evening;
    evening.made.task("served", 0);
    evening.layOut();
    evening.costs().quiet = {{1, {}, TaskIndex{2}, 15_min}};
    EXPECT_EQ(evening.cost().quiet, 0); // not served at all
    evening.schedule.starts[TaskIndex{2}] = planTime(50);
    EXPECT_EQ(evening.cost().quiet, 20 * 10); // [35, 50)
    evening.schedule.starts[TaskIndex{2}] = planTime(25);
    EXPECT_EQ(evening.cost().quiet, 50 * 10); // [10, 25)
}

struct CostedOven : Costed
{
    explicit CostedOven(OvenProgram program)
    {
        made.oven("o", 2);
        layOut();
        schedule.programs[OvenIndex{0}] = std::move(program);
        costs().ovenChange = 100;
        costs().ovenOnMinute = 1;
        costs().ovenSwitchOn = 1000;
        costs().preferC = 10;
    }
};

TEST(Cost, OfAnOvenCountsChangesBetweenSettings)
{
    const auto changes = [](OvenProgram program) {
        return CostedOven(std::move(program)).cost().ovenChange / 100;
    };
    EXPECT_EQ(changes({}), 0);
    EXPECT_EQ(changes({{planTime(0), 180}, {planTime(50), std::nullopt}}), 0);
    EXPECT_EQ(changes({{planTime(0), 180}, {planTime(50), 200}, {planTime(60), 180}}), 2);
    EXPECT_EQ(changes({{planTime(0), 180}, {planTime(50), 180}}), 0);
    // Off in between does not make a change free, nor does it make one.
    EXPECT_EQ(changes({{planTime(0), 180}, {planTime(50), std::nullopt}, {planTime(60), 200}}), 1);
    EXPECT_EQ(changes({{planTime(0), 180}, {planTime(50), std::nullopt}, {planTime(60), 180}}), 0);
}

TEST(Cost, OfAnOvenCountsHowOftenItIsSwitchedOn)
{
    const auto times = [](OvenProgram program) {
        return CostedOven(std::move(program)).cost().ovenSwitchOn / 1000;
    };
    EXPECT_EQ(times({}), 0);
    EXPECT_EQ(times({{planTime(0), 180}, {planTime(50), 200}, {planTime(60), std::nullopt}}), 1);
    EXPECT_EQ(times({{planTime(0), std::nullopt}, {planTime(50), 200}}), 1);
    EXPECT_EQ(times({{planTime(0), 180}, {planTime(50), std::nullopt}, {planTime(60), 180}}), 2);
}

TEST(Cost, OfSwitchingOnIsMoreWithSomethingInThatStaysIn)
{
    const auto within = [](std::int64_t at) {
        CostedOven evening(
            {{planTime(0), 180}, {planTime(at - 1), std::nullopt}, {planTime(at), 180}});
        evening.costs().ovenSwitchOn = 0;
        evening.costs().ovenSwitchOnWithin = 7;
        evening.made.inOven("bake", evening.boil, 150, 200, 180);
        evening.layOut();
        evening.schedule.ovens[OvenDemandIndex{0}] = OvenIndex{0};
        evening.schedule.programs[OvenIndex{0}] = {
            {planTime(0), 180}, {planTime(at - 1), std::nullopt}, {planTime(at), 180}};
        return evening.cost().ovenSwitchOn;
    };
    const CostedOven evening({});
    const auto held = evening.schedule.starts[evening.boil];
    ASSERT_TRUE(held);
    const std::int64_t from = minuteOf(*held);
    const std::int64_t to = from + evening.made.problem.tasks[evening.boil].duration.count();
    EXPECT_EQ(within(from), 0);
    EXPECT_EQ(within(from + 1), 7);
    EXPECT_EQ(within(to - 1), 7);
    EXPECT_EQ(within(to), 0);
}

TEST(Cost, OfAnOvenCountsMinutesOnBeforeTheHorizon)
{
    const auto minutes = [](OvenProgram program) {
        return CostedOven(std::move(program)).cost().ovenOn;
    };
    EXPECT_EQ(minutes({{planTime(10), 180}, {planTime(50), std::nullopt}}), 40);
    EXPECT_EQ(minutes({{planTime(10), 180}, {planTime(50), 200}}), 190);
    EXPECT_EQ(minutes({{planTime(200), 180}}), 0);
}

TEST(Cost, OfWhatAnOvenDemandPrefersIsTheSettingAtItsStart)
{
    CostedOven evening({{planTime(0), 180}, {planTime(45), 100}});
    OvenDemand& demand = evening.made.inOven("e", evening.boil, 100, 200, 175);
    evening.schedule.ovens.push_back(OvenIndex{0});
    EXPECT_EQ(evening.cost().prefer, 10 * 5);
    evening.schedule.programs[OvenIndex{0}] = {{planTime(0), 180}, {planTime(40), 160}};
    EXPECT_EQ(evening.cost().prefer, 10 * 15);
    evening.schedule.programs[OvenIndex{0}] = {{planTime(0), 180}, {planTime(40), std::nullopt}};
    EXPECT_EQ(evening.cost().prefer, 10 * (175 - 20)); // off counts as ambient
    demand.prefer.reset();
    EXPECT_EQ(evening.cost().prefer, 0);
}

TEST(Cost, OfSessionsBeginsANewOneAfterMoreThanTheGap)
{
    Costed evening;
    evening.costs().session = 30;
    evening.costs().sessionGap = 20_min;
    EXPECT_EQ(evening.cost().session, 30); // a gap of 20 minutes
    evening.costs().sessionGap = 19_min;
    EXPECT_EQ(evening.cost().session, 60);
    evening.made.problem.tasks[evening.boil].hands->attention = Attention::percent(0);
    EXPECT_EQ(evening.cost().session, 30);
}

TEST(Cost, OfSessionsCountsEachCooksOwn)
{
    Costed evening;
    const CookIndex ben = evening.made.cook("Ben");
    evening.costs().session = 30;
    evening.costs().sessionGap = 20_min;
    evening.schedule.cooks[evening.boil] = {ben};
    EXPECT_EQ(evening.cost().session, 60);
}

TEST(Cost, OfSessionsGoesByTheLatestEndSoFar)
{
    Costed evening;
    const TaskIndex whisk = evening.made.work("whisk", 5, 10);
    evening.layOut();
    evening.schedule.starts[whisk] = planTime(2);
    evening.schedule.cooks[whisk] = {evening.ada};
    evening.costs().session = 30;
    evening.costs().sessionGap = 20_min;
    EXPECT_EQ(evening.cost().session, 30); // chopping goes on after whisking
}

TEST(Cost, OfOptionsIsThatOfTheChosenOnes)
{
    Costed evening;
    evening.made.problem.choices.push_back({"m", {{"a", {}, 5}, {"b", {}, 7}}});
    evening.layOut();
    EXPECT_EQ(evening.cost().option, 0);
    evening.schedule.options[ChoiceIndex{0}] = OptionIndex{1};
    EXPECT_EQ(evening.cost().option, 7);
}

TEST(Cost, OfWhatWasPlannedBeforeCountsMinutesAndMoves)
{
    Costed evening;
    evening.costs().before = {{evening.chop, planTime(0)}, {evening.boil, planTime(43)}};
    evening.costs().beforeRate = 2;
    evening.costs().beforeMoved = 60;
    EXPECT_EQ(evening.cost().before, 2 * 3 + 60);
    evening.schedule.starts[evening.boil] = planTime(46);
    EXPECT_EQ(evening.cost().before, 2 * 3 + 60);
    evening.schedule.starts[evening.boil] = planTime(43);
    EXPECT_EQ(evening.cost().before, 0);
}

} // namespace
} // namespace suppertide
