#include <gmock/gmock.h>

#include "core/plan/live_plan.h"
#include "core/plan/tool_order.h"
#include "core/propose/make_plan.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::Contains;
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

/// Raw fish, and then a salad, both in the first of so many bowls, because somebody wants it so.
Supper ceviche(Minutes washing, int bowls = 2)
{
    Supper supper;
    supper.kitchen.vessels = {
        {KitchenItemId{"bowl"}, "Bowl", "bowl", decilitres(30), centimetres(20), bowls}};
    Recipe fish = recipe("Fish", {with(step("Salt the fish", 10_min), bowl(washing))});
    fish.common.foods = {followed("fish", FoodClass::LeanFish, fish.common.steps[0])};
    Recipe salad = recipe("Salad", {with(step("Dress the leaves", 5_min), bowl(0_min))});
    salad.common.foods = {followed("leaves", FoodClass::CutProduce, salad.common.steps[0])};
    supper.serve(fish);
    supper.serve(salad);
    supper.put("fish/*/salt-the-fish", 18, 0);
    supper.put("salad/*/dress-the-leaves", 19, 0);
    if (bowls > 1) {
        supper.layout.units = {{"fish/*/salt-the-fish:bowl", "bowl-1"},
                               {"salad/*/dress-the-leaves:bowl", "bowl-1"}};
    }
    return supper;
}

std::vector<Clash> toolClashes(const Supper& supper)
{
    std::vector<Clash> clashes = supper.laidOut()->clashes;
    std::erase_if(clashes,
                  [](const Clash& clash) { return clash.kind != ClashKind::UnwashedTool; });
    return clashes;
}

/// Walnuts in the first bowl, and a guest who must not have any to eat from the second.
Supper walnutsThenLeaves(std::vector<Substance> allergies, std::vector<Diet> diets = {})
{
    Supper supper = ceviche(0_min);
    for (auto& [id, each] : supper.recipes) {
        each.common.foods.clear();
    }
    supper.recipes.at(RecipeId{"fish"}).common.lines = {ingredient("walnuts", {Substance::Walnut})};
    Guest& guest = supper.addGuest("Fay", std::move(allergies));
    guest.diets = std::move(diets);
    for (Dish& dish : supper.occasion.courses.back().dishes) {
        if (dish.recipe == RecipeId{"salad"}) {
            dish.mix.front().guests = {guest.id};
        }
    }
    return supper;
}

TEST(ToolOrder, ClashesWhereRawFoodIsFollowedByReadyFoodUnwashed)
{
    const Supper supper = ceviche(0_min);
    const auto clashes = toolClashes(supper);
    ASSERT_THAT(clashes, SizeIs(1));
    const Clash& clash = clashes[0];
    const FormulationPtr formulation = supper.formulated();
    EXPECT_EQ(clash.severity, Severity::Unsafe);
    EXPECT_THAT(clash.tasks, ElementsAre(taskIndex(*formulation, "fish/*/salt-the-fish"),
                                         taskIndex(*formulation, "salad/*/dress-the-leaves")));
    ASSERT_TRUE(clash.finding);
    EXPECT_EQ(clash.finding->rule, "board_order");
    EXPECT_EQ(clash.demand, demandIndex(*formulation, "salad/*/dress-the-leaves:bowl"));
    EXPECT_EQ(clash.dish, DishId{"salad"});
    EXPECT_THAT(clash.substances, IsEmpty());
}

TEST(ToolOrder, SaysTheRuleAndWhoPrintsIt)
{
    EXPECT_THAT(ceviche(0_min).clashes(),
                Contains("At 19:00 the bowl is used for “Dress the leaves” and not washed after "
                         "“Salt the fish”, when there was raw food in it: a board or tool is "
                         "washed between raw food and food that is eaten as it is "
                         "(foodsafety.gov, 4 Steps to Food Safety, Separate)."));
    EXPECT_THAT(walnutsThenLeaves({Substance::Walnut}).clashes(),
                Contains("At 19:00 the bowl is used for “Dress the leaves” and not washed after "
                         "“Salt the fish”, when there was walnut in it: portions that must be "
                         "free of something are made first, or with washed tools (common "
                         "practice)."));
}

TEST(ToolOrder, IsSilentWhereItIsWashed)
{
    Supper supper = ceviche(0_min);
    supper.layout.washed = {"salad/*/dress-the-leaves:bowl"};
    EXPECT_THAT(toolClashes(supper), IsEmpty());
    // Washing the fish's bowl before the fish is of no use to the salad.
    supper.layout.washed = {"fish/*/salt-the-fish:bowl"};
    EXPECT_THAT(toolClashes(supper), SizeIs(1));
}

TEST(ToolOrder, WashesTheOnlyOneThatThereIs)
{
    const Supper supper = ceviche(8_min, 1);
    EXPECT_THAT(toolClashes(supper), IsEmpty());
    EXPECT_EQ(taskOf(*supper.formulated(), "fish/*/salt-the-fish.wash").duration, 8_min);
    // Where the recipe gives no minutes for it, nobody is made to.
    EXPECT_THAT(toolClashes(ceviche(0_min, 1)), SizeIs(1));
}

/// Where the salad must come after the fish, the planner washes the bowl, and what it has decided
/// stays with the plan that is taken.
TEST(ToolOrder, IsWashedByThePlannerWhereTheOrderIsGiven)
{
    Supper supper = ceviche(0_min, 1);
    supper.pin("fish/*/salt-the-fish", 18, 0);
    supper.pin("salad/*/dress-the-leaves", 19, 0);
    PlanRequest request{supper.input(), {}, 0};
    request.limits.steps = 20'000;
    request.limits.wallClock = std::chrono::seconds(60);
    const auto outcome = makePlan(request);
    ASSERT_TRUE(outcome) << outcome.error().forCook;
    const auto* found = std::get_if<PlanFound>(&*outcome);
    ASSERT_NE(found, nullptr);
    EXPECT_THAT(found->plan->clashes,
                testing::Each(testing::Field(&Clash::kind, testing::Ne(ClashKind::UnwashedTool))));
    supper.layout = layoutOf(*found->plan->formulation, found->plan->schedule, supper.layout);
    EXPECT_THAT(supper.layout.washed, ElementsAre("salad/*/dress-the-leaves:bowl"));
    EXPECT_THAT(toolClashes(supper), IsEmpty());
}

// The edge: the ready food a minute before the raw is gone, and after it has come.
TEST(ToolOrder, IsSilentWhereTheReadyFoodCameFirst)
{
    Supper supper = ceviche(0_min);
    supper.put("salad/*/dress-the-leaves", 17, 55);
    EXPECT_THAT(toolClashes(supper), IsEmpty()); // it ends as the fish begins
    supper.put("fish/*/salt-the-fish", 17, 45);
    EXPECT_THAT(toolClashes(supper), SizeIs(1)); // it begins as the fish ends
}

TEST(ToolOrder, GivesEachAThingOfItsOwnWhereThereAreEnough)
{
    Supper supper = ceviche(0_min);
    supper.layout.units.clear();
    EXPECT_THAT(toolClashes(supper), IsEmpty());
    const FormulationPtr formulation = supper.formulated();
    const auto unitsOf = [&](const std::string& id) {
        return *formulation->problem.demands[demandIndex(*formulation, id)].units;
    };
    ASSERT_THAT(unitsOf("fish/*/salt-the-fish:bowl"), SizeIs(1));
    EXPECT_NE(unitsOf("fish/*/salt-the-fish:bowl"), unitsOf("salad/*/dress-the-leaves:bowl"));
    // Where nothing must be kept apart, any will do.
    for (auto& [id, each] : supper.recipes) {
        each.common.foods.clear();
    }
    const FormulationPtr clean = supper.formulated();
    EXPECT_EQ(clean->problem.demands[demandIndex(*clean, "fish/*/salt-the-fish:bowl")].units,
              std::nullopt);
}

TEST(ToolOrder, WashesWhereTheOtherOneIsTooSmall)
{
    Supper supper = ceviche(4_min, 1);
    supper.kitchen.vessels.push_back(
        {KitchenItemId{"cup"}, "Cup", "bowl", decilitres(3), centimetres(8), 1});
    EXPECT_THAT(toolClashes(supper), IsEmpty());
    EXPECT_TRUE(supper.formulated()->taskById.contains("fish/*/salt-the-fish.wash"));
}

// Two steps of one dish: of those nobody knows whether the cook washes in between.
TEST(ToolOrder, ClashesWithinOneDish)
{
    Supper supper;
    supper.kitchen.vessels = {
        {KitchenItemId{"bowl"}, "Bowl", "bowl", decilitres(30), centimetres(20), 1}};
    Recipe dish = recipe("Ceviche", {with(step("Salt the fish", 10_min), bowl(0_min)),
                                     with(step("Dress the leaves", 5_min), bowl(0_min))});
    dish.common.foods = {followed("fish", FoodClass::LeanFish, dish.common.steps[0]),
                         followed("leaves", FoodClass::CutProduce, dish.common.steps[1])};
    supper.serve(dish);
    supper.put("ceviche/*/salt-the-fish", 18, 0);
    supper.put("ceviche/*/dress-the-leaves", 19, 0);
    EXPECT_THAT(toolClashes(supper), SizeIs(1));
    supper.layout.washed = {"ceviche/*/dress-the-leaves:bowl"};
    EXPECT_THAT(toolClashes(supper), IsEmpty());
}

TEST(ToolOrder, TakesAToolInWhichRawFoodGetsHotForAsHotAsTheFood)
{
    Supper supper = ceviche(0_min);
    Recipe& fish = supper.recipes.at(RecipeId{"fish"});
    fish.common.foods[0].steps[0].treatment = Treatment::Heat;
    EXPECT_THAT(toolClashes(supper), IsEmpty());
}

TEST(ToolOrder, NamesWhatIsLeftForPortionsThatMustBeFreeOfIt)
{
    EXPECT_THAT(toolClashes(walnutsThenLeaves({})), IsEmpty());
    const auto clashes = toolClashes(walnutsThenLeaves({Substance::Walnut}));
    ASSERT_THAT(clashes, SizeIs(1));
    EXPECT_EQ(clashes[0].finding->rule, "allergen_order");
    EXPECT_EQ(clashes[0].severity, Severity::Unsafe);
    EXPECT_THAT(clashes[0].substances, ElementsAre(Substance::Walnut));
}

TEST(ToolOrder, IsUndesirableForADietThatIsNotKeptForHealth)
{
    Supper supper = walnutsThenLeaves({}, {Diet::Vegan});
    supper.recipes.at(RecipeId{"fish"}).common.lines = {ingredient("butter", {Substance::Milk})};
    const auto clashes = toolClashes(supper);
    ASSERT_THAT(clashes, SizeIs(1));
    EXPECT_EQ(clashes[0].severity, Severity::Undesirable);
}

TEST(ToolOrder, IsTheSameWhileAStepIsDragged)
{
    const Supper supper = ceviche(0_min);
    const PlanPtr plan = supper.laidOut();
    LivePlan live(plan, supper.input());
    const TaskIndex salad = taskIndex(*plan->formulation, "salad/*/dress-the-leaves");
    const PlanCalendar& calendar = plan->formulation->calendar;
    for (int minute = 0; minute < 120; minute += 5) {
        Supper moved = supper;
        moved.put("salad/*/dress-the-leaves", 17 + minute / 60, minute % 60);
        EXPECT_EQ(live.move(salad, calendar.planTime(moved.instant(17 + minute / 60, minute % 60))),
                  moved.laidOut()->clashes)
            << minute;
    }
}

// --- washing because the layout says so

TEST(WashedBefore, IsATaskOfHandsThatHoldsTheThing)
{
    Supper supper = ceviche(0_min);
    supper.layout.washed = {"salad/*/dress-the-leaves:bowl"};
    const FormulationPtr formulation = supper.formulated();
    const Task& wash = taskOf(*formulation, "salad/*/dress-the-leaves.bowl.wash-before");
    EXPECT_EQ(wash.duration, 5_min); // where no recipe says more
    ASSERT_TRUE(wash.hands);
    EXPECT_EQ(wash.hands->attention, handsOn);
    const Demand& held =
        formulation->problem.demands[demandIndex(*formulation, "salad/*/dress-the-leaves:bowl")];
    EXPECT_EQ(pointText(*formulation, held.from),
              "salad/*/dress-the-leaves.bowl.wash-before:start");
    EXPECT_EQ(pointText(*formulation, held.to), "salad/*/dress-the-leaves:end");
    EXPECT_THAT(lagsBetween(*formulation, "salad/*/dress-the-leaves.bowl.wash-before:end",
                            "salad/*/dress-the-leaves:start"),
                ElementsAre("0…"));
    EXPECT_EQ(sourceOf(*formulation, "salad/*/dress-the-leaves.bowl.wash-before").text,
              "Wash the bowl first");
}

TEST(WashedBefore, IsLaidOutJustBeforeTheStep)
{
    Supper supper = ceviche(0_min);
    supper.layout.washed = {"salad/*/dress-the-leaves:bowl"};
    const PlanPtr plan = supper.laidOut();
    EXPECT_EQ(startText(*plan, "salad/*/dress-the-leaves.bowl.wash-before"), "18:55");
    EXPECT_THAT(toolClashes(supper), IsEmpty());
}

TEST(WashedBefore, LastsAsLongAsTheLongestWashingOfThatThing)
{
    Supper supper = ceviche(9_min);
    supper.layout.washed = {"salad/*/dress-the-leaves:bowl"};
    EXPECT_EQ(taskOf(*supper.formulated(), "salad/*/dress-the-leaves.bowl.wash-before").duration,
              9_min);
}

TEST(WashedBefore, OfAUseThatIsNotThereIsForgotten)
{
    Supper supper = ceviche(0_min);
    const FormulationPtr before = supper.formulated();
    supper.layout.washed = {"pudding/*/whisk:bowl", "salad/*/dress-the-leaves:pan"};
    EXPECT_EQ(*supper.formulated(), *before);
}

} // namespace

} // namespace suppertide::test
