// Rules 4, 5, 6, 7, 9 and 11: washing, spans, waits, serving, preparations, the days before.
#include <gmock/gmock.h>

#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::ElementsAre;
using testing::IsEmpty;

const Demand& demandOf(const Formulation& formulation, const std::string& id)
{
    return formulation.problem.demands[demandIndex(formulation, id)];
}

const OvenDemand& ovenDemandOf(const Formulation& formulation, const std::string& id)
{
    return formulation.problem.ovenDemands[ovenDemandIndex(formulation, id)];
}

TEST(Washing, HoldsAThingThatAnotherDishNeedsUntilItIsClean)
{
    Supper supper;
    for (const char* name : {"Soup", "Sauce"}) {
        supper.serve(recipe(name, {with(step("Blend it", 5_min), ApplianceUse{"blender", 4_min})}));
    }
    const FormulationPtr formulation = supper.formulated();
    const Task& wash = taskOf(*formulation, "soup/*/blend-it.wash");
    EXPECT_EQ(wash.duration, 4_min);
    EXPECT_EQ(wash.hands->attention, handsOn);
    EXPECT_EQ(sourceOf(*formulation, "soup/*/blend-it.wash").rule, Rule::Washing);
    EXPECT_EQ(sourceOf(*formulation, "soup/*/blend-it.wash").text, "Wash the blender");
    EXPECT_THAT(lagsBetween(*formulation, "soup/*/blend-it:end", "soup/*/blend-it.wash:start"),
                ElementsAre("0…"));
    EXPECT_EQ(pointText(*formulation, demandOf(*formulation, "soup/*/blend-it:blender").to),
              "soup/*/blend-it.wash:end");
}

TEST(Washing, IsNoTaskWhereNobodyElseWaits)
{
    Supper supper;
    supper.serve(recipe("Soup", {with(step("Blend it", 5_min), ApplianceUse{"blender", 4_min})}));
    EXPECT_THAT(taskIds(*supper.formulated()),
                testing::Not(testing::Contains("soup/*/blend-it.wash")));
}

TEST(Washing, IsNoTaskWhereThereIsOneForEachDish)
{
    Supper supper;
    supper.kitchen.appliances.push_back({KitchenItemId{"blender-2"}, "Old blender", "blender"});
    for (const char* name : {"Soup", "Sauce"}) {
        supper.serve(recipe(name, {with(step("Blend it", 5_min), ApplianceUse{"blender", 4_min})}));
    }
    EXPECT_THAT(taskIds(*supper.formulated()),
                testing::Not(testing::Contains(testing::HasSubstr(".wash"))));
}

TEST(Spans, HoldThePanFromHeatingUntilTheSauceIsPoured)
{
    Supper supper;
    Recipe steak = recipeInOrder("Steak", {step("Sear the steak", 6_min),
                                           inOven("Finish in the oven", 10_min, 180_degC),
                                           step("Pour the sauce", 3_min)});
    Span pan;
    pan.id = SpanId{"pan"};
    pan.text = "pan held from searing to the sauce";
    pan.from = {StepId{"sear-the-steak"}, StepEdge::Start};
    pan.to = {StepId{"pour-the-sauce"}, StepEdge::End};
    pan.use = VesselUse{"wide pan", 2_l, 1, 0_min};
    steak.common.spans = {pan};
    supper.serve(steak);
    const FormulationPtr formulation = supper.formulated();
    const DemandIndex held = demandIndex(*formulation, "steak/*/pan:wide pan");
    EXPECT_EQ(pointText(*formulation, formulation->problem.demands[held].from),
              "steak/*/sear-the-steak:start");
    EXPECT_EQ(pointText(*formulation, formulation->problem.demands[held].to),
              "steak/*/pour-the-sauce:end");
    EXPECT_EQ(formulation->demands[held].rule, Rule::Spans);
    EXPECT_EQ(formulation->demands[held].text, "pan held from searing to the sauce");
}

TEST(Spans, KeepAHotStartAndALowerFinishInOneOven)
{
    Supper supper;
    KitchenOven second = supper.kitchen.ovens.front();
    second.id = KitchenItemId{"second"};
    supper.kitchen.ovens.push_back(second);
    Step start = inOven("Brown the joint", 20_min, 230_degC);
    start.ovenOut = 0_min;
    Step finish = inOven("Roast the joint", 60_min, 160_degC);
    finish.ovenIn = 0_min;
    Recipe joint = recipeInOrder("Joint", {start, finish});
    Span falling;
    falling.id = SpanId{"falling"};
    falling.from = {StepId{"brown-the-joint"}, StepEdge::End};
    falling.to = {StepId{"roast-the-joint"}, StepEdge::Start};
    falling.use = OvenUse{1, 160_degC, 230_degC, {}, OvenMode::Any};
    joint.common.spans = {falling};
    supper.serve(joint);
    const FormulationPtr formulation = supper.formulated();
    const OvenDemand& between = ovenDemandOf(*formulation, "joint/*/falling:oven");
    EXPECT_EQ(between.acceptLow, 160);
    EXPECT_EQ(between.acceptHigh, 230);
    ASSERT_TRUE(between.group);
    EXPECT_EQ(ovenDemandOf(*formulation, "joint/*/brown-the-joint:oven").group, between.group);
    EXPECT_EQ(ovenDemandOf(*formulation, "joint/*/roast-the-joint:oven").group, between.group);
}

/// A mousse that is chilled between whipping and plating.
Supper mousse(const std::vector<KeepOption>& keep)
{
    Supper supper;
    Recipe mousse =
        recipeInOrder("Mousse", {step("Whip the mousse", 10_min), step("Plate the mousse", 5_min)});
    Wait wait = waitBetween("chills", "Whip the mousse", "Plate the mousse", 240_min, 2880_min);
    wait.keep = keep;
    mousse.common.waits = {wait};
    supper.serve(mousse);
    return supper;
}

TEST(Waits, OnTheCounterAreOneLagWithLeastAndMost)
{
    const FormulationPtr formulation = mousse({KeepOption{}}).formulated();
    const LagIndex lag =
        lagIndex(*formulation, "mousse/*/whip-the-mousse:end", "mousse/*/plate-the-mousse:start");
    EXPECT_EQ(formulation->problem.lags[lag].min, 240_min);
    EXPECT_EQ(formulation->problem.lags[lag].max, 2880_min);
    EXPECT_EQ(formulation->lags[lag].rule, Rule::Waits);
    EXPECT_EQ(formulation->lags[lag].text, "chills");
    EXPECT_EQ(formulation->lags[lag].place, KeepPlace::Counter);
    EXPECT_EQ(formulation->lags[lag].dish, DishId{"mousse"});
    EXPECT_TRUE(formulation->problem.demands.empty());
}

TEST(Waits, InTheFridgeTakeLitresByThePortions)
{
    Supper supper = mousse({inFridge(6_l, Scaling::PerPortion)});
    supper.occasion.courses.front().dishes.front().mix.front().portions = Portions{6};
    const FormulationPtr formulation = supper.formulated();
    const DemandIndex held = demandIndex(*formulation, "mousse/*/chills:fridge");
    EXPECT_EQ(formulation->problem.demands[held].amount, 45); // tenths: 6 l × 6/8
    EXPECT_EQ(pointText(*formulation, formulation->problem.demands[held].from),
              "mousse/*/whip-the-mousse:end");
    EXPECT_EQ(pointText(*formulation, formulation->problem.demands[held].to),
              "mousse/*/plate-the-mousse:start");
    EXPECT_TRUE(formulation->demands[held].isKeep);
    const CountIndex fridge = *formulation->problem.demands[held].count;
    EXPECT_EQ(formulation->problem.counts[fridge].capacity, 400);
    EXPECT_EQ(formulation->counts[fridge].perUnit, 10);
}

TEST(Waits, AreAsShortAsTheirPlaceAllows)
{
    KeepOption day = inFridge(6_l);
    day.most = 1440_min;
    const FormulationPtr formulation = mousse({day}).formulated();
    EXPECT_THAT(lagsBetween(*formulation, "mousse/*/whip-the-mousse:end",
                            "mousse/*/plate-the-mousse:start"),
                ElementsAre("240…1440"));
}

// Hot food is held at 63 °C or above: The Food Safety and Hygiene (England) Regulations 2013,
// Schedule 4; and two degrees, for no oven is that even.
TEST(Waits, KeptWarmTakeAShelfAboveTheHoldingLimit)
{
    const FormulationPtr formulation = mousse({keptWarm()}).formulated();
    const OvenDemand& warm = ovenDemandOf(*formulation, "mousse/*/chills:oven");
    EXPECT_EQ(warm.acceptLow, 65);
    EXPECT_EQ(warm.acceptHigh, 90);
    EXPECT_EQ(warm.shelves, 1);
}

TEST(Waits, KeptWarmMayTakeABurnerOrAFlask)
{
    const FormulationPtr onBurner = mousse({keptWarm(WarmBy::Burner)}).formulated();
    EXPECT_TRUE(demandOf(*onBurner, "mousse/*/chills:burner").pool);
    Supper supper = mousse({keptWarm(WarmBy::Flask)});
    supper.kitchen.vessels.push_back({KitchenItemId{"flask"}, "Flask", "flask", 2_l, 10_cm, 1});
    const FormulationPtr inFlask = supper.formulated();
    EXPECT_TRUE(demandOf(*inFlask, "mousse/*/chills:flask").pool);
    EXPECT_TRUE(inFlask->problem.ovenDemands.empty());
}

TEST(Waits, WithSeveralPlacesAreAChoice)
{
    KeepOption counter;
    counter.most = 300_min;
    const FormulationPtr formulation = mousse({counter, inFridge(6_l)}).formulated();
    ASSERT_EQ(formulation->problem.choices.size(), 1U);
    EXPECT_EQ(formulation->choices[ChoiceIndex{0}].kind, ChoiceKind::KeepPlace);
    EXPECT_EQ(formulation->choices[ChoiceIndex{0}].name, "chills");
    EXPECT_THAT(formulation->choices[ChoiceIndex{0}].optionNames, ElementsAre("counter", "fridge"));
    EXPECT_THAT(lagsBetween(*formulation, "mousse/*/whip-the-mousse:end",
                            "mousse/*/plate-the-mousse:start"),
                ElementsAre("240…2880"));
    EXPECT_THAT(
        lagsBetween(*formulation, "mousse/*/whip-the-mousse:end", "mousse/*/chills@counter:start"),
        ElementsAre("240…300"));
    EXPECT_THAT(
        lagsBetween(*formulation, "mousse/*/whip-the-mousse:end", "mousse/*/chills@fridge:start"),
        ElementsAre("240…2880"));
}

TEST(Waits, AreDearerTheFresherTheUserLikesIt)
{
    KeepOption counter;
    counter.lossPerHour = 2;
    Supper supper = mousse({counter});
    const auto lossAt = [&](int calm) {
        supper.occasion.preferences.calm = calm;
        const FormulationPtr formulation = supper.formulated();
        return formulation->problem
            .lags[lagIndex(*formulation, "mousse/*/whip-the-mousse:end",
                           "mousse/*/plate-the-mousse:start")]
            .loss;
    };
    // Two points an hour of 1200 cost units each: 40 a minute.
    EXPECT_EQ(lossAt(50), 40);
    EXPECT_EQ(lossAt(0), 80);
    EXPECT_GT(lossAt(100), 0);
}

TEST(Serving, IsAnEventAtItsTime)
{
    Supper supper;
    supper.serve(recipe("Salad", {step("Dress the leaves", 5_min)}));
    const FormulationPtr formulation = supper.formulated();
    const Task& served = taskOf(*formulation, "serve/main");
    EXPECT_EQ(served.duration, 0_min);
    EXPECT_EQ(served.window.start, served.window.end);
    EXPECT_EQ(toIso(formulation->calendar.civil(served.window.start)), "2027-06-19T19:30");
    EXPECT_THAT(lagsBetween(*formulation, "salad/*/dress-the-leaves:end", "serve/main:start"),
                ElementsAre("0…"));
}

TEST(Serving, MayBeUpToHalfAnHourLateAtACostIfNotPinned)
{
    Supper supper;
    supper.serve(recipe("Salad", {step("Dress the leaves", 5_min)}));
    supper.occasion.courses.front().isServingPinned = false;
    const FormulationPtr formulation = supper.formulated();
    const Interval window = taskOf(*formulation, "serve/main").window;
    EXPECT_EQ(window.length(), 30_min);
    const LagIndex late = lagIndex(*formulation, "target/main:start", "serve/main:start");
    EXPECT_EQ(formulation->problem.lags[late].min, 0_min);
    EXPECT_EQ(formulation->problem.lags[late].loss, 5 * 1200);
}

TEST(Serving, SeatsTheHostsAndNobodyElse)
{
    Supper supper;
    supper.addCook("Jory");
    supper.serve(recipe("Salad", {step("Dress the leaves", 5_min)}));
    supper.occasion.courses.front().atTable = 40_min;
    const FormulationPtr formulation = supper.formulated();
    const TaskIndex served = taskIndex(*formulation, "serve/main");
    EXPECT_THAT(formulation->problem.cooks[CookIndex{0}].tableAfter,
                ElementsAre(TableAfter{served, 40_min}));
    EXPECT_THAT(formulation->problem.cooks[CookIndex{1}].tableAfter, IsEmpty());
}

TEST(Serving, LeavesTimeToEatBetweenCourses)
{
    Supper supper;
    supper.serve(recipe("Soup", {step("Ladle the soup", 5_min)}));
    supper.addCourse("Dessert", {20, 15});
    supper.serve(recipe("Posset", {step("Bring the posset", 5_min)}));
    const FormulationPtr formulation = supper.formulated();
    EXPECT_THAT(lagsBetween(*formulation, "serve/main:start", "serve/dessert:start"),
                ElementsAre("25…"));
}

/// A stock that makes 1000 ml for 8, and two dishes that want 300 and 200 ml of it.
Supper twoUsers()
{
    Supper supper;
    Recipe stock = recipe("Stock", {step("Boil the stock", 60_min, unattended)});
    stock.kind = RecipeKind::Preparation;
    stock.yields = Amount{Rational{1000}, Unit::Millilitre};
    Wait wait = waitBetween("keeps", "Boil the stock", "", 0_min, 2880_min);
    wait.keep = {inFridge(2_l)};
    stock.common.waits = {wait};
    supper.addRecipe(stock);
    for (const auto& [name, amount] : {std::pair{"Soup", 300}, std::pair{"Sauce", 200}}) {
        Step use = step("Warm the stock", 10_min);
        use.lines = {LineId{"stock"}};
        Recipe user = recipe(name, {use});
        IngredientLine line = ingredient("stock", {});
        line.amount = {Rational{amount}, Unit::Millilitre};
        line.preparation = stock.id;
        user.common.lines = {line};
        supper.serve(user);
    }
    return supper;
}

TEST(Preparations, AreMadeOnceForAllThatUseThem)
{
    const FormulationPtr formulation = twoUsers().formulated();
    const TaskSource& boil = sourceOf(*formulation, "stock/*/boil-the-stock");
    EXPECT_EQ(boil.portions, Portions{4}); // 500 of 1000 ml
    EXPECT_EQ(std::ranges::count(taskIds(*formulation), "stock/*/boil-the-stock"), 1);
    EXPECT_THAT(
        lagsBetween(*formulation, "stock/*/boil-the-stock:end", "soup/*/warm-the-stock:start"),
        ElementsAre("0…2880"));
    EXPECT_THAT(
        lagsBetween(*formulation, "stock/*/boil-the-stock:end", "sauce/*/warm-the-stock:start"),
        ElementsAre("0…2880"));
}

TEST(Preparations, AreNotMadeIfNobodyUsesThem)
{
    Supper supper = twoUsers();
    for (Dish& dish : supper.occasion.courses.front().dishes) {
        dish.mix.front().portions = Portions{0};
    }
    supper.serve(recipe("Salad", {step("Dress the leaves", 5_min)}));
    EXPECT_THAT(taskIds(*supper.formulated()),
                testing::Not(testing::Contains("stock/*/boil-the-stock")));
}

/// A meringue that leaves eight yolks and a custard that wants six.
Supper yolks(int wanted)
{
    Supper supper;
    Step part = step("Part the eggs", 10_min);
    part.leaves = {{"yolks", {Rational{8}, Unit::Piece}}};
    supper.serve(recipe("Meringue", {part}));
    Step whisk = step("Whisk the yolks", 5_min);
    whisk.lines = {LineId{"yolks"}};
    Recipe custard = recipe("Custard", {whisk});
    IngredientLine line = ingredient("yolks", {});
    line.amount = {Rational{wanted}, Unit::Piece};
    line.byProduct = "yolks";
    custard.common.lines = {line};
    supper.serve(custard);
    return supper;
}

TEST(ByProducts, TieTheStepThatLeavesThemToTheOneThatWantsThem)
{
    const FormulationPtr formulation = yolks(8).formulated();
    ASSERT_EQ(formulation->problem.choices.size(), 1U);
    const ChoiceSource& choice = formulation->choices[ChoiceIndex{0}];
    EXPECT_EQ(choice.kind, ChoiceKind::ByProduct);
    EXPECT_THAT(choice.optionNames, ElementsAre("from Meringue", "bought"));
    const std::string taken = "custard/*/whisk-the-yolks/yolks@use:start";
    EXPECT_THAT(lagsBetween(*formulation, "meringue/*/part-the-eggs:end", taken),
                ElementsAre("0…0"));
    EXPECT_THAT(lagsBetween(*formulation, taken, "custard/*/whisk-the-yolks:start"),
                ElementsAre("0…2880"));
}

TEST(ByProducts, AreNotCountedUponWhereTheyDoNotSuffice)
{
    EXPECT_TRUE(yolks(9).formulated()->problem.choices.empty());
}

TEST(BeforeTheDay, ReachesBackAsFarAsTheLongestWaits)
{
    Supper supper;
    Recipe ham = recipe("Ham", {step("Salt the ham", 20_min), step("Slice the ham", 10_min)});
    ham.common.steps.back().after = {StepId{"salt-the-ham"}};
    ham.common.waits = {
        waitBetween("cures in the fridge", "Salt the ham", "Slice the ham", 4320_min, 5760_min)};
    supper.serve(ham);
    const FormulationPtr formulation = supper.formulated();
    // Three days and a day to spare before a supper on the nineteenth.
    EXPECT_EQ(toIso(formulation->calendar.civil(planTime(0))), "2027-06-15T00:00");
    EXPECT_THAT(supper.clashes(), IsEmpty());
    EXPECT_EQ(startText(*supper.laidOut(), "ham/*/slice-the-ham"), "19:20");
}

} // namespace

} // namespace suppertide::test
