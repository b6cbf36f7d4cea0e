// Waits whose least is computed from what gets cold in them.
#include <gmock/gmock.h>

#include "core/plan/wait_estimate.h"
#include "tests/support/supper/supper.h"

namespace suppertide {
namespace {

using test::recipeInOrder;
using test::step;
using test::Supper;
using test::waitBetween;
using std::chrono_literals::operator""min;
using std::chrono_literals::operator""h;
using ::testing::HasSubstr;

/// Creams that go into the fridge at 30 °C and set there, for 6 h as the recipe has it.
Supper creamSupper(int portions = 8)
{
    Supper supper;
    Recipe recipe =
        recipeInOrder("Cream", {step("Fill the moulds", 10min), step("Turn out", 5min)});
    FollowedFood food;
    food.id = FollowedFoodId{"creams"};
    food.name = "creams";
    food.kind.food = FoodClass::GelatineCream;
    food.material = "cream_heavy";
    food.shape = FoodShape::Flat;
    food.thickness = centimetres(5);
    food.mass = grams(1000);
    FoodTreatment filled;
    filled.step = recipe.common.steps.front().id;
    filled.to = Celsius::degrees(30);
    food.steps = {filled};
    recipe.common.foods = {food};
    Wait sets = waitBetween("sets", "Fill the moulds", "Turn out", 360min, 2880min);
    sets.keep = {test::inFridge(decilitres(20))};
    sets.chillsTo = Celsius::degrees(8);
    sets.setsFor = 180min;
    recipe.common.waits = {sets};
    supper.serve(recipe, portions);
    return supper;
}

Recipe& only(Supper& supper)
{
    return supper.recipes.begin()->second;
}

const char* const filled = "cream/*/fill-the-moulds:end";
const char* const turnedOut = "cream/*/turn-out:start";

ComputedDuration computedIn(const Supper& supper)
{
    const FormulationPtr formulation = supper.formulated();
    return formulation->lags[test::lagIndex(*formulation, filled, turnedOut)].computed.value();
}

TEST(WaitEstimate, IsTheLeastOfTheWait)
{
    const Supper supper = creamSupper();
    const FormulationPtr formulation = supper.formulated();
    const LagIndex lag = test::lagIndex(*formulation, filled, turnedOut);
    const ComputedDuration computed = computedIn(supper);
    EXPECT_EQ(computed.failure, "");
    EXPECT_EQ(computed.written.likely, 360min);
    EXPECT_EQ(formulation->problem.lags[lag].min, computed.range.likely);
    EXPECT_EQ(formulation->lags[lag].least, computed.range.likely);
    EXPECT_GT(computed.range.least, 180min); // it sets after it is cold
    EXPECT_LE(computed.range.least, computed.range.likely);
    EXPECT_LE(computed.range.likely, computed.range.most);
    EXPECT_FALSE(computed.because.empty());
}

TEST(WaitEstimate, IsLongerForAThickerMouldAWarmerStartAndAWarmerFridge)
{
    const Minutes usual = computedIn(creamSupper()).range.likely;
    Supper thick = creamSupper();
    only(thick).common.foods.front().thickness = centimetres(7);
    EXPECT_GT(computedIn(thick).range.likely, usual);
    Supper hot = creamSupper();
    only(hot).common.foods.front().steps.front().to = Celsius::degrees(60);
    EXPECT_GT(computedIn(hot).range.likely, usual);
    Supper warmFridge = creamSupper();
    for (ColdPlace& place : warmFridge.kitchen.coldPlaces) {
        place.temperature = Celsius::degrees(7);
    }
    EXPECT_GT(computedIn(warmFridge).range.likely, usual);
}

TEST(WaitEstimate, FollowsTheMassOfOneLargeMould)
{
    const auto inOneMould = [](int portions) {
        Supper supper = creamSupper(portions);
        only(supper).common.foods.front().isOnePiece = true;
        only(supper).common.foods.front().thickness = centimetres(8);
        return computedIn(supper).range.likely;
    };
    EXPECT_GT(inOneMould(16), inOneMould(8));
}

TEST(WaitEstimate, LeavesTheRecipesFigureWhereNothingCanBeComputed)
{
    Supper supper = creamSupper();
    only(supper).common.waits.front().chillsTo = Celsius::degrees(2);
    EXPECT_THAT(computedIn(supper).failure, HasSubstr("never gets to 2 °C"));
    EXPECT_EQ(computedIn(supper).range.likely, 360min);
    Supper unknown = creamSupper();
    only(unknown).common.foods.front().material = "moon rock";
    EXPECT_THAT(computedIn(unknown).failure, HasSubstr("moon rock"));
    Supper weightless = creamSupper();
    only(weightless).common.foods.front().mass = Grams{};
    only(weightless).common.foods.front().material.clear(); // else the recipe is at fault
    EXPECT_THAT(computedIn(weightless).failure, HasSubstr("weighs"));
    Supper nobody = creamSupper();
    only(nobody).common.foods.clear();
    EXPECT_THAT(computedIn(nobody).failure, HasSubstr("No food of this recipe is followed"));
    for (const Supper& each : {supper, unknown, weightless, nobody}) {
        EXPECT_THAT(test::lagsBetween(*each.formulated(), filled, turnedOut),
                    ::testing::ElementsAre("360…2880"));
    }
}

TEST(WaitEstimate, IsNeverLongerThanTheRecipeLetsItWait)
{
    Supper supper = creamSupper();
    only(supper).common.waits.front().least = 60min;
    only(supper).common.waits.front().most = 90min;
    EXPECT_GT(computedIn(supper).range.likely, 90min);
    EXPECT_THAT(test::lagsBetween(*supper.formulated(), filled, turnedOut),
                ::testing::ElementsAre("90…90"));
}

TEST(WaitEstimate, IsOnlyThereWhereTheWaitNamesATemperature)
{
    Supper supper = creamSupper();
    only(supper).common.waits.front().chillsTo.reset();
    const FormulationPtr formulation = supper.formulated();
    EXPECT_FALSE(formulation->lags[test::lagIndex(*formulation, filled, turnedOut)].computed);
    EXPECT_EQ(*formulation->problem.lags[test::lagIndex(*formulation, filled, turnedOut)].min,
              360min);
}

} // namespace
} // namespace suppertide
