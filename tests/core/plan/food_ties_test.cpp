// What a food takes over: the days and minutes of a preparation that goes into it, and the days
// since it was bought.
#include <gmock/gmock.h>

#include <algorithm>

#include "core/plan/food_safety.h"
#include "core/plan/food_ties.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::Contains;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

FollowedFood followed(const std::string& name, FoodClass kind, const std::vector<Step>& steps,
                      Treatment treatment = Treatment::Stand)
{
    FollowedFood food;
    food.id = FollowedFoodId{slug(name)};
    food.name = name;
    food.kind.food = kind;
    for (const Step& each : steps) {
        FoodTreatment does;
        does.step = each.id;
        does.treatment = treatment;
        food.steps.push_back(does);
    }
    return food;
}

/// A custard that stands on the counter, and a trifle that it goes into and that stands on: each
/// for so long.
Supper trifleOf(Minutes custardStands, Minutes trifleStands)
{
    Supper supper;
    supper.occasion.preferences.rules = safety::RuleBook::UsHome;
    Recipe custard = recipe("Custard", {step("Stir the custard", 10_min)});
    custard.kind = RecipeKind::Preparation;
    custard.yields = Amount{Rational{1000}, Unit::Millilitre};
    custard.common.foods = {followed("custard", FoodClass::Custard, custard.common.steps)};
    supper.addRecipe(custard);
    Step layer = step("Layer the trifle", 10_min);
    layer.lines = {LineId{"custard"}};
    Recipe trifle = recipe("Trifle", {layer});
    IngredientLine line = ingredient("custard", {});
    line.amount = {Rational{1000}, Unit::Millilitre};
    line.preparation = custard.id;
    trifle.common.lines = {line};
    trifle.common.foods = {followed("trifle", FoodClass::Custard, trifle.common.steps)};
    supper.serve(trifle);
    const Instant served = supper.instant(19, 30);
    supper.layout.starts["trifle/*/layer-the-trifle"] = served - trifleStands - 10_min;
    supper.layout.starts["custard/*/stir-the-custard"] =
        served - trifleStands - 10_min - custardStands - 10_min;
    return supper;
}

std::vector<std::string> brokenIn(const Supper& supper)
{
    std::vector<std::string> rules;
    const PlanPtr plan = supper.laidOut();
    for (const Clash& clash : plan->clashes) {
        if (clash.kind == ClashKind::FoodSafety) {
            rules.push_back(plan->formulation->foods[*clash.food].name + " " + clash.finding->rule);
        }
    }
    return rules;
}

TEST(FoodParts, AreThePreparationsThatGoIn)
{
    const FormulationPtr formulation = trifleOf(30_min, 30_min).formulated();
    ASSERT_THAT(formulation->foods, SizeIs(2));
    const TrackedFood& trifle = formulation->foods[FoodIndex{0}];
    ASSERT_THAT(trifle.parts, SizeIs(1));
    EXPECT_EQ(trifle.parts[0].food, FoodIndex{1});
    EXPECT_EQ(trifle.parts[0].at, taskIndex(*formulation, "trifle/*/layer-the-trifle"));
    EXPECT_THAT(formulation->foods[FoodIndex{1}].parts, IsEmpty());
}

// Two hours between 40 and 140 °F: USDA FSIS, “Danger Zone”. Twenty minutes are the steps' own,
// half an hour is at table.
TEST(FoodParts, HaveTheirMinutesAddedToTheDish)
{
    EXPECT_THAT(brokenIn(trifleOf(30_min, 30_min)), IsEmpty());
    const std::vector<std::string> broken = brokenIn(trifleOf(60_min, 50_min));
    ASSERT_THAT(broken, SizeIs(1)) << "each alone stands for less than two hours";
    EXPECT_TRUE(broken[0].starts_with("trifle ")) << broken[0];
}

TEST(FoodParts, SayABrokenRuleOnceWhereItIsBroken)
{
    const std::vector<std::string> broken = brokenIn(trifleOf(180_min, 10_min));
    ASSERT_THAT(broken, SizeIs(1));
    EXPECT_TRUE(broken[0].starts_with("custard ")) << broken[0];
}

Supper boughtDaysBefore(unsigned days)
{
    Supper supper;
    supper.occasion.preferences.rules = safety::RuleBook::UsHome;
    Recipe chicken = recipe("Chicken", {inOven("Roast the chicken", 80_min, 190_degC)});
    chicken.common.foods = {
        followed("bird", FoodClass::RawPoultry, chicken.common.steps, Treatment::Heat)};
    supper.serve(chicken);
    ShoppingTrip trip;
    trip.id = HouseJobId{"market"};
    trip.name = "Market";
    trip.earliest = CivilTime{{2027, 6, 19U - days}, {9, 0}};
    trip.latest = CivilTime{{2027, 6, 19U - days}, {12, 0}};
    supper.occasion.trips = {trip};
    return supper;
}

// Raw poultry keeps one to two days: foodsafety.gov, Cold Food Storage Chart.
TEST(Bought, FoodKeepsFromTheDayOfTheTrip)
{
    EXPECT_THAT(brokenIn(boughtDaysBefore(0)), Not(Contains(testing::HasSubstr("storage/"))));
    const Supper early = boughtDaysBefore(3);
    EXPECT_THAT(brokenIn(early), Contains(testing::HasSubstr("bird storage/")));
    const FormulationPtr formulation = early.formulated();
    EXPECT_THAT(formulation->foods[FoodIndex{0}].bought, SizeIs(1));
}

TEST(Bought, IsWhatAShopSellsAndNotWhatIsMade)
{
    EXPECT_TRUE(isBoughtAs(FoodClass::RawPoultry));
    EXPECT_TRUE(isBoughtAs(FoodClass::ColdSmokedFish));
    EXPECT_FALSE(isBoughtAs(FoodClass::GelatineCream));
    EXPECT_FALSE(isBoughtAs(FoodClass::GravyOrBroth));
    EXPECT_FALSE(isBoughtAs(FoodClass::StuffedMeat));
}

} // namespace

} // namespace suppertide::test
