#include <gmock/gmock.h>

#include "core/plan/tool_order.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

FollowedFood followed(const std::string& name, FoodClass kind, const Step& step)
{
    FollowedFood food;
    food.id = FollowedFoodId{slug(name)};
    food.name = name;
    food.kind.food = kind;
    FoodTreatment does;
    does.step = step.id;
    food.steps = {does};
    return food;
}

VesselUse bowl(Minutes washing)
{
    return {"bowl", decilitres(30), 1, washing};
}

/// Raw fish, and then a salad, in the one bowl; washed for so long in between.
Supper ceviche(Minutes washing)
{
    Supper supper;
    supper.kitchen.vessels = {
        {KitchenItemId{"bowl"}, "Bowl", "bowl", decilitres(30), centimetres(20), 1}};
    Recipe fish = recipe("Fish", {with(step("Salt the fish", 10_min), bowl(washing))});
    fish.common.foods = {followed("fish", FoodClass::LeanFish, fish.common.steps[0])};
    Recipe salad = recipe("Salad", {with(step("Dress the leaves", 5_min), bowl(0_min))});
    salad.common.foods = {followed("leaves", FoodClass::CutProduce, salad.common.steps[0])};
    supper.serve(fish);
    supper.serve(salad);
    supper.put("fish/*/salt-the-fish", 18, 0);
    supper.put("salad/*/dress-the-leaves", 19, 0);
    return supper;
}

std::vector<ToolConflict> conflictsOf(const Supper& supper)
{
    const PlanPtr plan = supper.laidOut();
    return toolConflicts(*plan->formulation, supper.input(), plan->schedule);
}

TEST(ToolOrder, NamesWhatGoesFromRawToReadyUnwashed)
{
    const Supper supper = ceviche(0_min);
    const auto conflicts = conflictsOf(supper);
    ASSERT_THAT(conflicts, SizeIs(1));
    EXPECT_EQ(conflicts[0].tool, "bowl");
    EXPECT_EQ(conflicts[0].rule, "board_order");
    const FormulationPtr formulation = supper.formulated();
    EXPECT_EQ(conflicts[0].earlier, taskIndex(*formulation, "fish/*/salt-the-fish"));
    EXPECT_EQ(conflicts[0].later, taskIndex(*formulation, "salad/*/dress-the-leaves"));
}

TEST(ToolOrder, IsSilentWhereItIsWashedOrTheReadyFoodCameFirst)
{
    EXPECT_THAT(conflictsOf(ceviche(5_min)), IsEmpty());
    Supper supper = ceviche(0_min);
    supper.put("salad/*/dress-the-leaves", 17, 0);
    EXPECT_THAT(conflictsOf(supper), IsEmpty());
}

TEST(ToolOrder, NamesWhatIsLeftForPortionsThatMustBeFreeOfIt)
{
    Supper supper = ceviche(0_min);
    supper.recipes.begin()->second.common.foods.clear();
    for (auto& [id, each] : supper.recipes) {
        each.common.foods.clear();
    }
    Recipe& fish = supper.recipes.at(RecipeId{"fish"});
    fish.common.lines = {ingredient("walnuts", {Substance::Walnut})};
    EXPECT_THAT(conflictsOf(supper), IsEmpty());
    const GuestId guest = supper.addGuest("Fay", {Substance::Walnut}).id;
    for (Dish& dish : supper.occasion.courses.back().dishes) {
        if (dish.recipe == RecipeId{"salad"}) {
            dish.mix.front().guests = {guest};
        }
    }
    const auto conflicts = conflictsOf(supper);
    ASSERT_THAT(conflicts, SizeIs(1));
    EXPECT_EQ(conflicts[0].rule, "allergen_order");
    EXPECT_THAT(conflicts[0].substances, ElementsAre(Substance::Walnut));
}

} // namespace

} // namespace suppertide::test
