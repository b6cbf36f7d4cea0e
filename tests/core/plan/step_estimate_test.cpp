// Durations that are computed from a food: they follow mass, altitude, burner and what the kitchen
// has taken; where nothing can be computed the recipe's own figure stands, with a sentence.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/plan/step_estimate.h"
#include "tests/support/supper/supper.h"

namespace suppertide {
namespace {

using test::inOven;
using test::recipeInOrder;
using test::step;
using test::Supper;
using test::with;
using std::chrono_literals::operator""min;
using ::testing::HasSubstr;

constexpr Celsius at180 = Celsius::degrees(180);

FollowedFood joint(const StepId& step)
{
    FollowedFood food;
    food.id = FollowedFoodId{"joint"};
    food.name = "joint";
    food.kind.food = FoodClass::RawMeat;
    food.material = "pork_loin";
    food.shape = FoodShape::Round;
    food.thickness = centimetres(11);
    food.mass = grams(1600);
    food.isOnePiece = true;
    FoodTreatment roast;
    roast.step = step;
    roast.treatment = Treatment::Heat;
    roast.to = Celsius::degrees(63);
    roast.setsDuration = true;
    food.steps = {roast};
    return food;
}

Supper roastSupper(int portions)
{
    Supper supper;
    Recipe roast = recipeInOrder("Joint", {inOven("Roast the joint", 70min, at180)});
    roast.common.foods = {joint(roast.common.steps.front().id)};
    supper.serve(roast, portions);
    return supper;
}

const TaskSource& roasting(const FormulationPtr& formulation)
{
    return test::sourceOf(*formulation, "joint/*/roast-the-joint");
}

Supper potSupper(BurnerKind kind = BurnerKind::Electric)
{
    Supper supper;
    supper.kitchen.burners = {
        {KitchenItemId{"front"}, "front", centimetres(22), watts(1800), kind}};
    Recipe soup = recipeInOrder(
        "Soup", {with(step("Boil the soup", 20min, keepAnEye), BurnerUse{centimetres(20)})});
    FollowedFood food;
    food.id = FollowedFoodId{"soup"};
    food.name = "soup";
    food.shape = FoodShape::Stirred;
    food.thickness = centimetres(12);
    food.mass = grams(4000);
    food.from = KeepPlace::Counter;
    FoodTreatment boil;
    boil.step = soup.common.steps.front().id;
    boil.treatment = Treatment::Boil;
    boil.isLid = true;
    boil.setsDuration = true;
    food.steps = {boil};
    soup.common.foods = {food};
    supper.serve(soup);
    return supper;
}

Minutes boiling(const Supper& supper)
{
    return test::sourceOf(*supper.formulated(), "soup/*/boil-the-soup").duration.likely;
}

TEST(StepEstimate, FollowsTheMassOfARoast)
{
    const FormulationPtr small = roastSupper(8).formulated();
    const FormulationPtr large = roastSupper(16).formulated();
    ASSERT_TRUE(roasting(small).computed);
    EXPECT_EQ(roasting(small).computed->failure, "");
    EXPECT_EQ(roasting(small).computed->written.likely, 70min);
    const double ratio = static_cast<double>(roasting(large).duration.likely.count()) /
                         static_cast<double>(roasting(small).duration.likely.count());
    // Twice the mass in the same form: 2^(2/3) = 1.59 if only conduction counts, 2^(1/3) = 1.26 if
    // only the surface does (dimension analysis of conduction).
    EXPECT_GT(ratio, 1.26);
    EXPECT_LT(ratio, 1.60);
    EXPECT_LE(roasting(small).duration.least, roasting(small).duration.likely);
    EXPECT_LE(roasting(small).duration.likely, roasting(small).duration.most);
    EXPECT_FALSE(roasting(small).computed->because.empty());
}

TEST(StepEstimate, IsWhatTheTaskLasts)
{
    const FormulationPtr plan = roastSupper(8).formulated();
    EXPECT_EQ(test::taskOf(*plan, "joint/*/roast-the-joint").duration,
              roasting(plan).computed->range.likely);
}

TEST(StepEstimate, BoilsSoonerHighUpAndOnInduction)
{
    Supper sea = potSupper();
    Supper hill = potSupper();
    hill.kitchen.altitudeMetres = 1500;
    EXPECT_LT(boiling(hill), boiling(sea));
    EXPECT_LT(boiling(potSupper(BurnerKind::Induction)), boiling(sea));
    EXPECT_GT(boiling(potSupper(BurnerKind::Gas)), boiling(sea));
}

TEST(StepEstimate, LearnsFromTwoEvenings)
{
    Supper supper = potSupper();
    const Minutes before = boiling(supper);
    const CivilDate day{2027, 5, 1};
    supper.kitchen.timesTaken = {
        {KitchenItemId{"may"}, "soup", KitchenItemId{"front"}, day, 20min, 26min},
        {KitchenItemId{"june"}, "soup", KitchenItemId{"front"}, day, 10min, 13min}};
    const Minutes after = boiling(supper);
    EXPECT_GT(after, before);
    EXPECT_LE(after.count(), std::lround(static_cast<double>(before.count()) * 1.3) + 1);
    supper.kitchen.timesTaken.front().on = KitchenItemId{"back"};
    supper.kitchen.timesTaken.back().on = KitchenItemId{"back"};
    EXPECT_EQ(boiling(supper), before);
}

TEST(StepEstimate, SaysWhereItDiffersMuchFromTheAuthor)
{
    Supper supper = roastSupper(8);
    for (auto& [id, recipe] : supper.recipes) {
        recipe.common.steps.front().duration = {20min, 20min, 20min};
    }
    EXPECT_TRUE(roasting(supper.formulated()).computed->differsMuch);
    const Minutes computed = roasting(supper.formulated()).computed->range.likely;
    for (auto& [id, recipe] : supper.recipes) {
        recipe.common.steps.front().duration = {computed, computed, computed};
    }
    EXPECT_FALSE(roasting(supper.formulated()).computed->differsMuch);
}

struct Unreachable
{
    const char* what;
    void (*change)(FollowedFood& food);
    const char* says;
};

class StepEstimateFails : public ::testing::TestWithParam<Unreachable>
{};

TEST_P(StepEstimateFails, WithASentenceAndTheAuthorsFigure)
{
    Supper supper = roastSupper(8);
    for (auto& [id, recipe] : supper.recipes) {
        GetParam().change(recipe.common.foods.front());
    }
    const FormulationPtr plan = supper.formulated();
    ASSERT_TRUE(roasting(plan).computed);
    EXPECT_THAT(roasting(plan).computed->failure, HasSubstr(GetParam().says));
    EXPECT_EQ(roasting(plan).duration.likely, 70min);
}

INSTANTIATE_TEST_SUITE_P(
    All, StepEstimateFails,
    ::testing::Values(
        Unreachable{"hotter than the oven",
                    [](FollowedFood& food) { food.steps.front().to = Celsius::degrees(200); },
                    "200"},
        Unreachable{"unknown material", [](FollowedFood& food) { food.material = "moon rock"; },
                    "moon rock"},
        Unreachable{"no mass",
                    [](FollowedFood& food) {
                        food.mass = Grams{};
                        food.material.clear();
                    },
                    "weighs"}),
    [](const auto& one) {
        std::string name = one.param.what;
        std::replace(name.begin(), name.end(), ' ', '_');
        return name;
    });

// USDA FSIS, Let's Talk Turkey: a stuffed bird takes 15 to 30 minutes longer than one that is not.
TEST(StepEstimate, IsLongerForABirdWithItsStuffing)
{
    const auto roasted = [](FoodClass kind, FoodShape shape) {
        Supper supper = roastSupper(8);
        FollowedFood& food = supper.recipes.begin()->second.common.foods.front();
        food.kind.food = kind;
        food.shape = shape;
        return roasting(supper.formulated()).computed->range;
    };
    const DurationRange plain = roasted(FoodClass::RawPoultry, FoodShape::Round);
    const DurationRange stuffed = roasted(FoodClass::StuffedMeat, FoodShape::Round);
    EXPECT_EQ(stuffed.likely, plain.likely + 22min);
    EXPECT_EQ(stuffed.least, plain.least + 15min);
    EXPECT_EQ(stuffed.most, plain.most + 30min);
    // A stuffed fillet is as thick as it is.
    EXPECT_EQ(roasted(FoodClass::StuffedMeat, FoodShape::Flat),
              roasted(FoodClass::RawPoultry, FoodShape::Flat));
}

/// A joint in a casserole with its lid on, in an oven or at the boil on a burner.
Supper braiseSupper(int portions, Treatment treatment, int middle = 90)
{
    Supper supper;
    supper.kitchen.burners = {
        {KitchenItemId{"front"}, "front", centimetres(22), watts(1800), BurnerKind::Electric}};
    const Step braise =
        treatment == Treatment::Heat
            ? inOven("Braise the joint", 150min, Celsius::degrees(150))
            : with(step("Braise the joint", 150min, unattended), BurnerUse{centimetres(20)});
    Recipe recipe = recipeInOrder("Joint", {braise});
    FollowedFood food = joint(recipe.common.steps.front().id);
    food.steps.front().treatment = treatment;
    food.steps.front().to = Celsius::degrees(middle);
    food.steps.front().isLid = true;
    recipe.common.foods = {food};
    supper.serve(recipe, portions);
    return supper;
}

ComputedDuration braising(const Supper& supper)
{
    return *test::sourceOf(*supper.formulated(), "joint/*/braise-the-joint").computed;
}

TEST(StepEstimate, BraisesLongerTheMoreThereIsAndTheHotterTheMiddle)
{
    for (const Treatment treatment : {Treatment::Heat, Treatment::Simmer}) {
        const ComputedDuration usual = braising(braiseSupper(8, treatment));
        EXPECT_EQ(usual.failure, "");
        EXPECT_LT(usual.range.likely, braising(braiseSupper(16, treatment)).range.likely);
        EXPECT_LT(braising(braiseSupper(8, treatment, 80)).range.likely, usual.range.likely);
        EXPECT_FALSE(usual.because.empty());
    }
    // Whatever the oven is, the pot is no hotter than it boils: on the burner it is there sooner.
    EXPECT_LE(braising(braiseSupper(8, Treatment::Simmer)).range.likely,
              braising(braiseSupper(8, Treatment::Heat)).range.likely);
}

TEST(StepEstimate, BraisesNoHotterThanWaterBoils)
{
    const ComputedDuration computed = braising(braiseSupper(8, Treatment::Heat, 101));
    EXPECT_THAT(computed.failure, HasSubstr("never gets to 101"));
    EXPECT_EQ(computed.range, computed.written);
    Supper high = braiseSupper(8, Treatment::Simmer, 92);
    EXPECT_EQ(braising(high).failure, "");
    high.kitchen.altitudeMetres = 3000; // water boils at 90 °C
    EXPECT_THAT(braising(high).failure, HasSubstr("never gets to 92"));
}

TEST(StepEstimate, SetsCustardsInAWaterBathMoreSlowlyThanBare)
{
    const auto baked = [](bool isInBath, int at) {
        Supper supper;
        Recipe recipe =
            recipeInOrder("Custard", {inOven("Bake the custards", 40min, Celsius::degrees(at))});
        FollowedFood food = joint(recipe.common.steps.front().id);
        food.kind.food = FoodClass::Custard;
        food.material = "custard_baked";
        food.shape = FoodShape::Flat;
        food.thickness = centimetres(4);
        food.mass = grams(1000);
        food.isOnePiece = false;
        food.steps.front().to = Celsius::degrees(78);
        food.steps.front().isInBath = isInBath;
        recipe.common.foods = {food};
        supper.serve(recipe);
        return *test::sourceOf(*supper.formulated(), "custard/*/bake-the-custards").computed;
    };
    const ComputedDuration bath = baked(true, 160);
    EXPECT_EQ(bath.failure, "");
    EXPECT_THAT(bath.because, ::testing::Contains(::testing::Field(&science::Figure::name,
                                                                   "water of the bath, likely")));
    EXPECT_LE(bath.range.least, bath.range.likely);
    EXPECT_LT(bath.range.likely, baked(true, 150).range.likely + 1min);
    EXPECT_EQ(baked(true, 40).range, baked(true, 40).written); // no oven is so cool
}

TEST(StepEstimate, BringsAnOpenPotToTheBoilLater)
{
    Supper open = potSupper();
    open.recipes.begin()->second.common.foods.front().steps.front().isLid = false;
    EXPECT_GT(boiling(open), boiling(potSupper()));
    Supper more = open;
    more.recipes.begin()->second.common.foods.front().mass = grams(6000);
    EXPECT_GT(boiling(more), boiling(open));
}

} // namespace
} // namespace suppertide
