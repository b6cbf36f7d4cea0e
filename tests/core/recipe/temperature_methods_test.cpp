// Steps given at several oven temperatures, as methods.
#include <gmock/gmock.h>

#include "core/recipe/temperature_methods.h"
#include "tests/core/recipe/recipes.h"

namespace suppertide {
namespace {

using test::findStep;
using test::gratin;
using test::step;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

OtherHeat heat(int celsius, Minutes likely)
{
    return {Celsius::degrees(celsius - 5),
            Celsius::degrees(celsius + 5),
            Celsius::degrees(celsius),
            {likely - 5_min, likely, likely + 5_min},
            3};
}

Step baked(const std::string& id)
{
    Step made = step(id, {StepId{"slice"}}, 60_min);
    made.uses = {OvenUse{1, 155_degC, 165_degC, 160_degC, OvenMode::Any}};
    made.turnAfter = 30_min;
    made.otherHeats = {heat(180, 45_min)};
    return made;
}

TEST(TemperatureMethods, AreAChoiceOfTheStepAtEachOfItsTemperatures)
{
    Recipe recipe = gratin();
    *std::ranges::find(recipe.common.steps, StepId{"bake"}, &Step::id) = baked("bake");
    EXPECT_THAT(faultsOf(recipe), IsEmpty());
    const ResolvedRecipe made = *resolve(recipe, VariantId{"plain"});
    EXPECT_EQ(findStep(made.part, "bake"), nullptr);
    ASSERT_THAT(made.methods, SizeIs(1));
    EXPECT_EQ(made.methods[0].id, heatChoiceOf(StepId{"bake"}));
    const std::vector<Method>& methods = made.methods[0].methods;
    ASSERT_THAT(methods, SizeIs(2));
    EXPECT_EQ(methods[0].name, "60 min at 160 °C");
    EXPECT_EQ(methods[0].cost, 0);
    EXPECT_EQ(methods[1].name, "45 min at 180 °C");
    EXPECT_EQ(methods[1].id, MethodId{"at-180-c"});
    EXPECT_EQ(methods[1].cost, 3);
    const Step& hotter = methods[1].part.steps[0];
    EXPECT_EQ(std::get<OvenUse>(hotter.uses[0]),
              (OvenUse{1, 175_degC, 185_degC, 180_degC, OvenMode::Any}));
    EXPECT_EQ(hotter.duration, (DurationRange{40_min, 45_min, 50_min}));
    EXPECT_EQ(hotter.turnAfter, 22_min); // half of 45
    EXPECT_THAT(hotter.after, ElementsAre(StepId{"slice"}));
    EXPECT_THAT(hotter.otherHeats, IsEmpty());
}

TEST(TemperatureMethods, SpreadAMethodOfAChoiceThatThereIs)
{
    Recipe recipe = gratin();
    Method oven{MethodId{"oven"}, "in the oven", 5, {}};
    oven.part.steps = {baked("brown")};
    Method pan{MethodId{"pan"}, "in a pan", 0, {}};
    pan.part.steps = {step("fry")};
    recipe.methods = {{MethodChoiceId{"how"}, "how it is browned", {oven, pan}}};
    EXPECT_THAT(faultsOf(recipe), IsEmpty());
    const ResolvedRecipe made = *resolve(recipe, VariantId{"plain"});
    ASSERT_THAT(made.methods, SizeIs(1));
    const std::vector<Method>& methods = made.methods[0].methods;
    ASSERT_THAT(methods, SizeIs(3));
    EXPECT_EQ(methods[0].id, oven.id); // what names it elsewhere still does
    EXPECT_EQ(methods[1].name, "in the oven, 45 min at 180 °C");
    EXPECT_EQ(methods[1].cost, 8);
    EXPECT_EQ(methods[2], pan);
}

TEST(TemperatureMethods, NeedAnOvenAndOneTimeForEachTemperature)
{
    Recipe recipe = gratin();
    Step& bake = *std::ranges::find(recipe.common.steps, StepId{"bake"}, &Step::id);
    bake.otherHeats = {heat(180, 45_min)};
    ASSERT_THAT(faultsOf(recipe), SizeIs(1));
    EXPECT_EQ(faultsOf(recipe)[0].sentence,
              "It is given at several oven temperatures, but it uses no oven.");
    bake = baked("bake");
    bake.otherHeats.push_back(heat(160, 50_min));
    ASSERT_THAT(faultsOf(recipe), SizeIs(1));
    EXPECT_EQ(faultsOf(recipe)[0].sentence,
              "It is given twice at 160 °C. Take one of the two away.");
}

} // namespace
} // namespace suppertide
