// Rules 1, 2, 3, 8 and 10: attention, ways in and out of the oven, batches, ovens, durations.
#include <gmock/gmock.h>

#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(Attention, TakesAShareOfOneCook)
{
    Supper supper;
    supper.serve(recipe("Custard", {step("Temper the eggs", 5_min, undivided),
                                    step("Chop the mint", 10_min, handsOn),
                                    step("Simmer the milk", 20_min, keepAnEye),
                                    step("Cool the milk", 30_min, unattended)}));
    const FormulationPtr formulation = supper.formulated();
    const auto percent = [&](const char* id) {
        const auto& hands = taskOf(*formulation, id).hands;
        return hands ? hands->attention.percent() : 0;
    };
    EXPECT_EQ(percent("custard/*/temper-the-eggs"), 100);
    EXPECT_EQ(percent("custard/*/chop-the-mint"), 80);
    EXPECT_EQ(percent("custard/*/simmer-the-milk"), 10);
    EXPECT_FALSE(taskOf(*formulation, "custard/*/cool-the-milk").hands);
    EXPECT_EQ(sourceOf(*formulation, "custard/*/temper-the-eggs").rule, Rule::Attention);
}

TEST(Attention, IsFitForTheTableOnlyWhereAnEyeIsEnough)
{
    Supper supper;
    Step marked = step("Turn the flame down", 1_min, handsOn);
    marked.atTable = true;
    supper.serve(recipe("Custard", {step("Chop the mint", 10_min, handsOn),
                                    step("Simmer the milk", 20_min, keepAnEye), marked}));
    const FormulationPtr formulation = supper.formulated();
    EXPECT_FALSE(taskOf(*formulation, "custard/*/chop-the-mint").atTable);
    EXPECT_TRUE(taskOf(*formulation, "custard/*/simmer-the-milk").atTable);
    EXPECT_TRUE(taskOf(*formulation, "custard/*/turn-the-flame-down").atTable);
}

TEST(Attention, MayChangeHandsWhereAnEyeIsKeptForLong)
{
    Supper supper;
    supper.addCook("Jory");
    supper.serve(recipe("Stock", {step("Simmer the stock", 150_min, keepAnEye)}));
    supper.serve(recipe("Sauce", {step("Simmer the sauce", 30_min, keepAnEye)}));
    const FormulationPtr formulation = supper.formulated();
    EXPECT_EQ(taskOf(*formulation, "stock/*/simmer-the-stock").duration, 50_min);
    EXPECT_EQ(taskOf(*formulation, "stock/*/simmer-the-stock.2").duration, 50_min);
    EXPECT_EQ(taskOf(*formulation, "stock/*/simmer-the-stock.3").duration, 50_min);
    EXPECT_THAT(lagsBetween(*formulation, "stock/*/simmer-the-stock:end",
                            "stock/*/simmer-the-stock.2:start"),
                ElementsAre("0…0"));
    EXPECT_EQ(taskOf(*formulation, "sauce/*/simmer-the-sauce").duration, 30_min);
}

TEST(InAndOut, AreHandsOnAndTiedToTheTimeInTheOvenWithoutGap)
{
    Supper supper;
    Step roast = inOven("Roast the roots", 40_min, 210_degC, 230_degC);
    roast.ovenIn = 2_min;
    supper.serve(recipe("Roots", {roast}));
    const FormulationPtr formulation = supper.formulated();
    const Task& in = taskOf(*formulation, "roots/*/roast-the-roots.in");
    const Task& out = taskOf(*formulation, "roots/*/roast-the-roots.out");
    EXPECT_EQ(in.duration, 2_min);
    EXPECT_EQ(in.hands->attention, handsOn);
    EXPECT_EQ(out.duration, 1_min);
    EXPECT_EQ(out.hands->attention, handsOn);
    EXPECT_FALSE(taskOf(*formulation, "roots/*/roast-the-roots").hands);
    EXPECT_THAT(lagsBetween(*formulation, "roots/*/roast-the-roots.in:end",
                            "roots/*/roast-the-roots:start"),
                ElementsAre("0…0"));
    EXPECT_THAT(lagsBetween(*formulation, "roots/*/roast-the-roots:end",
                            "roots/*/roast-the-roots.out:start"),
                ElementsAre("0…0"));
    EXPECT_EQ(sourceOf(*formulation, "roots/*/roast-the-roots.in").rule, Rule::InAndOut);
    EXPECT_EQ(sourceOf(*formulation, "roots/*/roast-the-roots.out").role, TaskRole::OvenOut);
}

TEST(InAndOut, HoldTheOvenFromInToOut)
{
    Supper supper;
    supper.serve(recipe("Roots", {inOven("Roast the roots", 40_min, 210_degC, 230_degC)}));
    const FormulationPtr formulation = supper.formulated();
    const OvenDemandIndex index = ovenDemandIndex(*formulation, "roots/*/roast-the-roots:oven");
    const OvenDemand& demand = formulation->problem.ovenDemands[index];
    EXPECT_EQ(pointText(*formulation, demand.from), "roots/*/roast-the-roots.in:start");
    EXPECT_EQ(pointText(*formulation, demand.to), "roots/*/roast-the-roots.out:end");
    EXPECT_EQ(demand.acceptLow, 210);
    EXPECT_EQ(demand.acceptHigh, 230);
    EXPECT_EQ(formulation->ovenDemands[index].rule, Rule::Ovens);
    EXPECT_EQ(formulation->ovenDemands[index].dishName, "Roots");
}

TEST(InAndOut, TurnAtTheTimeGiven)
{
    Supper supper;
    Step roast = inOven("Roast the roots", 40_min, 220_degC);
    roast.turnAfter = 15_min;
    supper.serve(recipe("Roots", {roast}));
    const FormulationPtr formulation = supper.formulated();
    EXPECT_THAT(taskIds(*formulation),
                testing::IsSupersetOf({"roots/*/roast-the-roots.in", "roots/*/roast-the-roots",
                                       "roots/*/roast-the-roots.turn", "roots/*/roast-the-roots.2",
                                       "roots/*/roast-the-roots.out"}));
    EXPECT_EQ(taskOf(*formulation, "roots/*/roast-the-roots").duration, 15_min);
    EXPECT_EQ(taskOf(*formulation, "roots/*/roast-the-roots.turn").duration, 1_min);
    EXPECT_EQ(taskOf(*formulation, "roots/*/roast-the-roots.2").duration, 24_min);
    EXPECT_TRUE(taskOf(*formulation, "roots/*/roast-the-roots.turn").atTable);
}

TEST(InAndOut, OfMoreThanTwoMinutesAreNotDoneFromTheTable)
{
    Supper supper;
    Step roast = inOven("Roast the roots", 40_min, 220_degC);
    roast.ovenIn = 2_min;
    roast.ovenOut = 3_min;
    supper.serve(recipe("Roots", {roast}));
    const FormulationPtr formulation = supper.formulated();
    EXPECT_TRUE(taskOf(*formulation, "roots/*/roast-the-roots.in").atTable);
    EXPECT_FALSE(taskOf(*formulation, "roots/*/roast-the-roots.out").atTable);
}

Step fritters()
{
    Step fry = step("Fry the fritters", 6_min);
    fry.portionsPerBatch = Portions{4};
    fry.scaling = Scaling::PerBatch;
    return with(fry, VesselUse{"wide pan", 2_l, 1, 5_min});
}

TEST(Batches, AreTasksOfTheirOwnAsEvenAsCanBe)
{
    Supper supper;
    supper.serve(recipe("Fritters", {fritters()}), 10);
    const FormulationPtr formulation = supper.formulated();
    EXPECT_EQ(sourceOf(*formulation, "fritters/*/fry-the-fritters#1").portions, Portions{4});
    EXPECT_EQ(sourceOf(*formulation, "fritters/*/fry-the-fritters#2").portions, Portions{3});
    EXPECT_EQ(sourceOf(*formulation, "fritters/*/fry-the-fritters#3").portions, Portions{3});
    EXPECT_EQ(sourceOf(*formulation, "fritters/*/fry-the-fritters#3").batch, 3);
    EXPECT_EQ(sourceOf(*formulation, "fritters/*/fry-the-fritters#3").batches, 3);
    EXPECT_EQ(taskOf(*formulation, "fritters/*/fry-the-fritters#1").duration, 6_min);
}

TEST(Batches, AreOneWhereAllFitsAtOnce)
{
    Supper supper;
    supper.serve(recipe("Fritters", {fritters()}), 4);
    EXPECT_EQ(sourceOf(*supper.formulated(), "fritters/*/fry-the-fritters").batches, 1);
}

TEST(Batches, EmptyTheOnePanBetweenThemWithoutWashing)
{
    Supper supper;
    supper.serve(recipe("Fritters", {fritters()}), 8);
    const FormulationPtr formulation = supper.formulated();
    EXPECT_THAT(lagsBetween(*formulation, "fritters/*/fry-the-fritters#1:end",
                            "fritters/*/fry-the-fritters#2:start"),
                ElementsAre("0…"));
    EXPECT_THAT(taskIds(*formulation),
                testing::Not(testing::Contains(testing::HasSubstr(".wash"))));
    const DemandIndex held = demandIndex(*formulation, "fritters/*/fry-the-fritters#1:wide pan");
    EXPECT_EQ(pointText(*formulation, formulation->problem.demands[held].to),
              "fritters/*/fry-the-fritters#2:start");
}

/// Pancakes with and without nuts, for a guest who must not have any.
Supper pancakes()
{
    Supper supper;
    supper.addGuest("Ada");
    supper.addGuest("Fay", {Substance::Hazelnut});
    Recipe pancakes = recipe(
        "Pancakes", {with(step("Fry the pancakes", 6_min), VesselUse{"wide pan", 2_l, 1, 0_min})});
    pancakes.common.lines = {ingredient("hazelnuts", {Substance::Hazelnut})};
    pancakes.common.steps.front().lines = {LineId{"hazelnuts"}};
    Variant without;
    without.id = VariantId{"without-nuts"};
    without.name = "without nuts";
    without.dropLines = {LineId{"hazelnuts"}};
    pancakes.variants.push_back(without);
    supper.serve(pancakes).mix = {{VariantId{"plain"}, Portions{1}, {GuestId{"ada"}}},
                                  {VariantId{"without-nuts"}, Portions{1}, {GuestId{"fay"}}}};
    return supper;
}

TEST(Batches, MakeThePortionsThatMustBeClearOfSomethingFirst)
{
    const FormulationPtr formulation = pancakes().formulated();
    EXPECT_THAT(lagsBetween(*formulation, "pancakes/without-nuts/fry-the-pancakes:end",
                            "pancakes/plain/fry-the-pancakes:start"),
                ElementsAre("0…"));
    EXPECT_THAT(lagsBetween(*formulation, "pancakes/plain/fry-the-pancakes:end",
                            "pancakes/without-nuts/fry-the-pancakes:start"),
                IsEmpty());
}

TEST(Batches, OfTwoVariantsAreOneUpToTheStepWhereTheyDiffer)
{
    Supper supper = pancakes();
    Recipe& recipe = supper.recipes.at(RecipeId{"pancakes"});
    recipe.common.steps.insert(recipe.common.steps.begin(), step("Whisk the batter", 5_min));
    recipe.common.steps.back().after = {StepId{"whisk-the-batter"}};
    const FormulationPtr formulation = supper.formulated();
    const TaskSource& whisk = sourceOf(*formulation, "pancakes/*/whisk-the-batter");
    EXPECT_EQ(whisk.portions, Portions{2});
    EXPECT_EQ(whisk.variantName, "");
    EXPECT_EQ(sourceOf(*formulation, "pancakes/plain/fry-the-pancakes").variantName, "plain");
    EXPECT_THAT(lagsBetween(*formulation, "pancakes/*/whisk-the-batter:end",
                            "pancakes/without-nuts/fry-the-pancakes:start"),
                ElementsAre("0…"));
}

TEST(Ovens, AreOnlyThoseThatHaveTheFan)
{
    Supper supper;
    KitchenOven second = supper.kitchen.ovens.front();
    second.id = KitchenItemId{"old-oven"};
    second.name = "Old oven";
    second.hasFan = false;
    supper.kitchen.ovens.push_back(second);
    supper.serve(recipe("Tart", {with(step("Bake the tart", 30_min, unattended),
                                      OvenUse{1, 160_degC, 180_degC, 170_degC, OvenMode::Fan})}));
    const FormulationPtr formulation = supper.formulated();
    const OvenDemand& demand =
        formulation->problem
            .ovenDemands[ovenDemandIndex(*formulation, "tart/*/bake-the-tart:oven")];
    EXPECT_EQ(demand.mode, "fan");
    EXPECT_EQ(demand.prefer, 170);
    EXPECT_THAT(demand.ovens, testing::Optional(ElementsAre(OvenIndex{0})));
}

TEST(Ovens, WhereADurationDependsOnTheHeatTheAlternativesAreMethods)
{
    Supper supper;
    Recipe roots = recipe("Roots", {});
    MethodChoice heat{MethodChoiceId{"heat"}, "how hot the oven is", {}};
    for (const auto& [name, minutes, degrees] :
         {std::tuple{"slow", 60_min, 160_degC}, std::tuple{"fast", 45_min, 180_degC}}) {
        Method method;
        method.id = MethodId{name};
        method.name = name;
        method.cost = method.id == MethodId{"slow"} ? 0 : 2;
        method.part.steps = {inOven("Roast the roots", minutes, degrees)};
        heat.methods.push_back(method);
    }
    roots.methods = {heat};
    supper.serve(roots);
    const FormulationPtr formulation = supper.formulated();
    ASSERT_EQ(formulation->problem.choices.size(), 1U);
    const Choice& choice = formulation->problem.choices[ChoiceIndex{0}];
    EXPECT_EQ(choice.id, "roots/heat");
    EXPECT_EQ(choice.options[OptionIndex{0}].cost, 0);
    EXPECT_EQ(choice.options[OptionIndex{1}].cost, 2 * 1200);
    EXPECT_THAT(choice.options[OptionIndex{1}].tasks,
                testing::Contains(taskIndex(*formulation, "roots/fast/roast-the-roots.in")));
    EXPECT_EQ(taskOf(*formulation, "roots/slow/roast-the-roots").duration, 60_min);
    EXPECT_EQ(taskOf(*formulation, "roots/fast/roast-the-roots").duration, 45_min);
    EXPECT_EQ(formulation->choices[ChoiceIndex{0}].name, "how hot the oven is");
    EXPECT_THAT(formulation->choices[ChoiceIndex{0}].optionNames, ElementsAre("slow", "fast"));
}

// Quantiles of the PERT-beta distribution over 10, 20, 60 (α 1.8, β 4.2), by numerical integration
// of its density: 23.83, 32.51, 41.06.
TEST(Durations, FollowTheCautionThatTheUserPicks)
{
    Supper supper;
    Step braise = step("Braise the fennel", 20_min, unattended);
    braise.duration = {10_min, 20_min, 60_min};
    supper.serve(recipe("Fennel", {braise}));
    const auto plannedAt = [&](CautionLevel caution) {
        supper.occasion.preferences.caution = caution;
        return taskOf(*supper.formulated(), "fennel/*/braise-the-fennel").duration;
    };
    EXPECT_EQ(plannedAt(CautionLevel::Likely), 20_min);
    EXPECT_EQ(plannedAt(CautionLevel::Half), 24_min);
    EXPECT_EQ(plannedAt(CautionLevel::Careful), 33_min);
    EXPECT_EQ(plannedAt(CautionLevel::VeryCareful), 42_min);
}

TEST(Durations, ScaleByTheStepsOwnRule)
{
    Supper supper;
    Step peel = step("Peel the potatoes", 16_min);
    peel.scaling = Scaling::PerPortion;
    supper.serve(recipe("Potatoes", {peel, step("Heat the water", 10_min, unattended)}), 6);
    const FormulationPtr formulation = supper.formulated();
    EXPECT_EQ(taskOf(*formulation, "potatoes/*/peel-the-potatoes").duration, 12_min);
    EXPECT_EQ(taskOf(*formulation, "potatoes/*/heat-the-water").duration, 10_min);
}

} // namespace

} // namespace suppertide::test
