// Where each step stands: what is reported, and what follows from it.
#include <gtest/gtest.h>

#include "core/night/rest_of_evening.h"
#include "core/wording/night_words.h"
#include "tests/support/supper/supper.h"

namespace suppertide {
namespace {

using test::after;
using test::recipeInOrder;
using test::step;
using test::Supper;
using test::waitBetween;

/// Peel 20, roast 60 at 180 °C (in 1, out 1), carve 10; served at 19:30.
Supper roast()
{
    Supper supper;
    supper.serve(
        recipeInOrder("Roast", {step("Peel", 20_min), test::inOven("Roast", 60_min, 180_degC),
                                step("Carve", 10_min)}));
    supper.put("roast/*/peel", 17, 0);
    supper.put("roast/*/roast.in", 18, 0);
    supper.put("roast/*/roast", 18, 1);
    supper.put("roast/*/roast.out", 19, 1);
    supper.put("roast/*/carve", 19, 15);
    return supper;
}

struct Night
{
    explicit Night(Supper evening) : supper(std::move(evening)), plan(supper.laidOut()) {}

    [[nodiscard]] TaskIndex task(const std::string& id) const
    {
        return test::taskIndex(*plan->formulation, id);
    }
    void start(const std::string& id, int hour, int minute)
    {
        progress = withStarted(std::move(progress), *plan, task(id), supper.instant(hour, minute));
    }
    void finish(const std::string& id, int hour, int minute)
    {
        progress = withDone(std::move(progress), *plan, task(id), supper.instant(hour, minute));
    }
    [[nodiscard]] RestOfEvening rest(int hour, int minute) const
    {
        auto rest = restOfEvening(supper.input(), progress, supper.instant(hour, minute));
        EXPECT_TRUE(rest) << rest.error().forCook;
        return *rest;
    }
    [[nodiscard]] StepState state(const std::string& id, int hour, int minute) const
    {
        return rest(hour, minute).facts.steps[task(id)].state;
    }

    Supper supper;
    PlanPtr plan;
    Progress progress;
};

TEST(Facts, NothingIsBegunBeforeAnybodySaysSo)
{
    const Night night(roast());
    EXPECT_EQ(night.state("roast/*/peel", 17, 30), StepState::ToCome);
}

TEST(Facts, GoingIntoTheOvenIsFollowedByTheTimeThere)
{
    Night night(roast());
    night.finish("roast/*/roast.in", 18, 6);
    EXPECT_EQ(night.state("roast/*/roast", 18, 30), StepState::UnderWay);
    const RestOfEvening rest = night.rest(18, 30);
    const StepFact& fact = rest.facts.steps[night.task("roast/*/roast")];
    EXPECT_EQ(rest.whole->calendar.instant(fact.when.start), night.supper.instant(18, 6));
    EXPECT_EQ(rest.whole->calendar.instant(fact.when.end), night.supper.instant(19, 6));
}

TEST(Facts, WhatIsInTheOvenStaysThereUntilSomebodyTakesItOut)
{
    Night night(roast());
    night.finish("roast/*/roast.in", 18, 1);
    EXPECT_EQ(night.state("roast/*/roast", 19, 20), StepState::UnderWay);
    EXPECT_EQ(night.rest(19, 20).facts.steps[night.task("roast/*/roast")].overdue, 19_min);
    night.start("roast/*/roast.out", 19, 20);
    EXPECT_EQ(night.state("roast/*/roast", 19, 20), StepState::Done);
}

TEST(Facts, WhatMustHaveComeBeforeIsDone)
{
    Night night(roast());
    night.start("roast/*/roast.in", 18, 0);
    EXPECT_EQ(night.state("roast/*/peel", 18, 0), StepState::Done);
}

TEST(Facts, AForgottenStepIsDoneAfterHalfAnHour)
{
    Night night(roast());
    night.start("roast/*/peel", 17, 0);
    EXPECT_EQ(night.state("roast/*/peel", 17, 49), StepState::UnderWay);
    EXPECT_EQ(night.state("roast/*/peel", 17, 50), StepState::Done);
}

TEST(Facts, ReportsOfLaterDoNotCountYet)
{
    Night night(roast());
    night.start("roast/*/peel", 17, 30);
    EXPECT_EQ(night.state("roast/*/peel", 17, 10), StepState::ToCome);
}

TEST(Facts, NotRoastingLeavesOutCarvingToo)
{
    Night night(roast());
    night.progress =
        withLeftOut(std::move(night.progress), *night.plan, night.task("roast/*/roast.in"));
    EXPECT_EQ(night.state("roast/*/roast", 17, 0), StepState::LeftOut);
    EXPECT_EQ(night.state("roast/*/roast.out", 17, 0), StepState::LeftOut);
    EXPECT_EQ(night.state("roast/*/carve", 17, 0), StepState::LeftOut);
    EXPECT_EQ(night.state("roast/*/peel", 17, 0), StepState::ToCome);
    EXPECT_EQ(night.state("serve/main", 17, 0), StepState::ToCome);
}

TEST(RestOfEvening, BeginsNowAndLeavesWhatIsDone)
{
    Night night(roast());
    night.finish("roast/*/peel", 17, 20);
    const RestOfEvening rest = night.rest(17, 40);
    EXPECT_EQ(rest.formulation->calendar.instant(planTime(0)), night.supper.instant(17, 40));
    EXPECT_FALSE(rest.formulation->taskById.contains("roast/*/peel"));
    EXPECT_TRUE(rest.formulation->taskById.contains("roast/*/carve"));
}

TEST(RestOfEvening, FixesWhatIsUnderWayWithTheTimeThatItStillTakes)
{
    Night night(roast());
    night.start("roast/*/peel", 17, 5);
    night.progress = withLate(std::move(night.progress), *night.plan, night.task("roast/*/peel"),
                              12_min, night.supper.instant(17, 10));
    const RestOfEvening rest = night.rest(17, 10);
    const Task& peel = test::taskOf(*rest.formulation, "roast/*/peel");
    EXPECT_EQ(peel.duration, 27_min);
    EXPECT_EQ(peel.window, interval(0, 27));
}

TEST(RestOfEvening, StartsWithTheOvenAsHotAsTheRoastNeeds)
{
    Night night(roast());
    night.finish("roast/*/roast.in", 18, 1);
    EXPECT_EQ(night.rest(18, 30).formulation->problem.ovens[OvenIndex{0}].startC, 180);
}

TEST(RestOfEvening, BelievesTheThermometer)
{
    Night night(roast());
    night.finish("roast/*/roast.in", 18, 1);
    const std::string oven = night.plan->formulation->problem.ovens[OvenIndex{0}].id;
    night.progress = withOvenAt(std::move(night.progress), oven, night.supper.instant(18, 30), 160);
    const RestOfEvening rest = night.rest(18, 30);
    EXPECT_EQ(rest.formulation->problem.ovens[OvenIndex{0}].startC, 160);
    // The roast is in it all the same: what is so cannot be impossible.
    EXPECT_EQ(rest.formulation->problem.ovenDemands[OvenDemandIndex{0}].acceptLow, 160);
}

TEST(RestOfEvening, TurnsTiesToWhatIsDoneIntoTiesToNow)
{
    Supper supper;
    Recipe recipe = recipeInOrder("Cream", {step("Whip", 10_min), step("Pipe", 5_min)});
    recipe.common.waits = {waitBetween("firms", "Whip", "Pipe", 30_min, 120_min)};
    supper.serve(std::move(recipe));
    supper.put("cream/*/whip", 17, 0);
    supper.put("cream/*/pipe", 18, 0);
    Night night(std::move(supper));
    night.finish("cream/*/whip", 17, 10);
    const RestOfEvening rest = night.rest(17, 30);
    const LagIndex lag = test::lagIndex(*rest.formulation, "now:start", "cream/*/pipe:start");
    EXPECT_EQ(rest.formulation->problem.lags[lag].min, 10_min);
    EXPECT_EQ(rest.formulation->problem.lags[lag].max, 100_min);
}

TEST(RestOfEvening, LeavesOutAWaitThatHasLastedTooLongAndSaysSo)
{
    Supper supper;
    Recipe recipe = recipeInOrder("Cream", {step("Whip", 10_min), step("Pipe", 5_min)});
    recipe.common.waits = {waitBetween("firms", "Whip", "Pipe", 30_min, 60_min)};
    supper.serve(std::move(recipe));
    supper.put("cream/*/whip", 17, 0);
    supper.put("cream/*/pipe", 18, 0);
    Night night(std::move(supper));
    night.finish("cream/*/whip", 17, 10);
    const RestOfEvening rest = night.rest(18, 40);
    ASSERT_EQ(rest.passed.size(), 1U);
    EXPECT_EQ(rest.passed[0].kind, PassedKind::Wait);
    EXPECT_NE(passedText(rest).find("“firms” (the cream) lasts longer than 1 h"), std::string::npos)
        << passedText(rest);
}

TEST(RestOfEvening, KeepsACourseThatIsPastItsTimePossible)
{
    Night night(roast());
    const RestOfEvening rest = night.rest(20, 15);
    ASSERT_FALSE(rest.passed.empty());
    EXPECT_EQ(rest.passed[0].kind, PassedKind::Serving);
    const Task& serving = test::taskOf(*rest.formulation, "serve/main");
    EXPECT_GE(serving.window.end, planTime(30));
}

TEST(RestOfEvening, TableTimeUnderWayIsTableTime)
{
    Supper supper = roast();
    supper.kitchen.cooks.front().isHost = true;
    supper.occasion.courses.front().atTable = 40_min;
    Night night(std::move(supper));
    night.finish("roast/*/carve", 19, 25);
    night.finish("serve/main", 19, 30);
    const RestOfEvening rest = night.rest(19, 40);
    EXPECT_EQ(rest.formulation->problem.cooks[CookIndex{0}].table, (std::vector{interval(0, 30)}));
}

} // namespace
} // namespace suppertide
