// What cannot be, through formulate: a clear sentence, or a plan whose clashes say it.
#include <gmock/gmock.h>

#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;

Supper salad()
{
    Supper supper;
    supper.serve(recipe("Salad", {step("Dress the leaves", 5_min)}));
    return supper;
}

/// The words for the cook, or "fine".
std::string said(const Supper& supper)
{
    const auto formulation = formulate(supper.input());
    return formulation ? "fine" : formulation.error().forCook;
}

TEST(FaultyInput, StepsInACircle)
{
    Supper supper;
    supper.serve(recipe("Salad", {after(step("Dress the leaves", 5_min), {"Wash the leaves"}),
                                  after(step("Wash the leaves", 5_min), {"Dress the leaves"})}));
    EXPECT_THAT(said(supper), AllOf(HasSubstr("Salad"), HasSubstr("circle")));
}

TEST(FaultyInput, WaitsInACircle)
{
    Supper supper;
    Recipe salad =
        recipe("Salad", {step("Dress the leaves", 5_min), step("Wash the leaves", 5_min)});
    salad.common.waits = {waitBetween("drips", "Wash the leaves", "Dress the leaves", 5_min),
                          waitBetween("soaks", "Dress the leaves", "Wash the leaves", 5_min)};
    supper.serve(salad);
    EXPECT_THAT(said(supper), AllOf(HasSubstr("Salad"), HasSubstr("circle")));
}

TEST(FaultyInput, DurationsThatAreNone)
{
    for (const DurationRange& range :
         {DurationRange{-5_min, -5_min, -5_min}, DurationRange{10_min, 5_min, 20_min},
          DurationRange{1_min, 2_min, Minutes{8 * 24 * 60}}}) {
        Supper supper = salad();
        supper.recipes.at(RecipeId{"salad"}).common.steps.front().duration = range;
        EXPECT_THAT(said(supper), HasSubstr("Dress the leaves")) << range.likely.count();
    }
}

TEST(FaultyInput, AKitchenHigherThanCanBeComputed)
{
    Supper supper = salad();
    supper.kitchen.altitudeMetres = 5000;
    EXPECT_EQ(said(supper), "fine");
    for (const int altitude : {9000, 5001, -401}) {
        supper.kitchen.altitudeMetres = altitude;
        EXPECT_THAT(said(supper),
                    HasSubstr("The kitchen lies between 400 m below and 5000 m above the sea."));
    }
}

TEST(FaultyInput, AFoodOfNoMassWhoseTemperatureIsToBeComputed)
{
    Supper supper = salad();
    Recipe& leaves = supper.recipes.at(RecipeId{"salad"});
    FollowedFood food;
    food.id = FollowedFoodId{"leaves"};
    food.name = "leaves";
    food.material = "lettuce";
    food.steps = {FoodTreatment{leaves.common.steps.front().id}};
    leaves.common.foods = {food};
    EXPECT_THAT(said(supper), HasSubstr("Say how much it weighs and how thick it is"));
}

TEST(FaultyInput, AKitchenWithoutOvens)
{
    Supper supper;
    supper.kitchen.ovens.clear();
    supper.serve(recipe("Roots", {inOven("Roast the roots", 40_min, 220_degC)}));
    EXPECT_THAT(supper.clashes(), testing::Contains("The kitchen has no oven for the roots."));
}

TEST(FaultyInput, AKitchenWithoutCooks)
{
    Supper supper = salad();
    supper.kitchen.cooks.clear();
    EXPECT_THAT(supper.clashes(), testing::ElementsAre("From 19:25 to 19:30 no cook is free for "
                                                       "“Dress the leaves”."));
}

TEST(FaultyInput, AnEveningInThePast)
{
    Supper supper = salad();
    supper.occasion.courses.front().serving.date = {1987, 6, 20};
    EXPECT_THAT(supper.clashes(), IsEmpty());
}

TEST(FaultyInput, CoursesOutOfOrder)
{
    Supper supper = salad();
    supper.addCourse("Dessert", {18, 0});
    EXPECT_THAT(said(supper), AllOf(HasSubstr("Dessert"), HasSubstr("18:00"), HasSubstr("“Main”")));
}

TEST(FaultyInput, CoursesAtOneTime)
{
    Supper supper = salad();
    supper.addCourse("Dessert", {19, 30});
    EXPECT_THAT(supper.clashes(), IsEmpty());
}

TEST(FaultyInput, ADayThatIsNotInTheCalendar)
{
    Supper supper = salad();
    supper.occasion.courses.front().serving.date = {2027, 2, 29};
    EXPECT_THAT(said(supper), HasSubstr("2027-02-29"));
}

TEST(FaultyInput, AZoneThatNobodyKnows)
{
    Supper supper = salad();
    supper.occasion.zone = "Atlantis/Capital";
    EXPECT_THAT(said(supper), HasSubstr("Atlantis/Capital"));
}

TEST(FaultyInput, NobodyComes)
{
    EXPECT_THAT(salad().clashes(), IsEmpty());
    Supper nothing = salad();
    nothing.occasion.courses.front().dishes.front().mix.front().portions = Portions{0};
    EXPECT_THAT(nothing.clashes(), IsEmpty());
    nothing.occasion.courses.front().dishes.clear();
    EXPECT_THAT(nothing.clashes(), IsEmpty());
    nothing.occasion.courses.clear();
    EXPECT_THAT(said(nothing), HasSubstr("no courses"));
}

TEST(FaultyInput, FiveHundredComeAndFiveHundredAndOneDoNot)
{
    Supper supper;
    Step fry = step("Fry the fritters", 1_min, unattended);
    fry.portionsPerBatch = Portions{4};
    supper.serve(recipe("Fritters", {with(fry, VesselUse{"wide pan", 2_l, 1, 0_min})}), 500);
    for (int i = 1; i <= 500; ++i) {
        supper.addGuest("Guest " + std::to_string(i));
    }
    EXPECT_EQ(sourceOf(*supper.formulated(), "fritters/*/fry-the-fritters#125").portions,
              Portions{4});
    EXPECT_THAT(supper.clashes(), IsEmpty());
    supper.addGuest("One more");
    EXPECT_THAT(said(supper), HasSubstr("501 guests"));
}

TEST(FaultyInput, BatchesOfNextToNothing)
{
    Supper supper = salad();
    supper.recipes.at(RecipeId{"salad"}).common.steps.front().portionsPerBatch =
        Rational{1} / Rational{1000};
    EXPECT_THAT(said(supper), AllOf(HasSubstr("Salad"), HasSubstr("batch")));
}

TEST(FaultyInput, PreparationsThatUseEachOther)
{
    Supper supper;
    const auto preparation = [](const char* name, const char* other) {
        Recipe made = recipe(name, {step("Stir it", 5_min)});
        made.kind = RecipeKind::Preparation;
        made.yields = Amount{Rational{500}, Unit::Gram};
        IngredientLine line = ingredient(other, {});
        line.preparation = RecipeId{other};
        made.common.lines = {line};
        return made;
    };
    supper.addRecipe(preparation("stock", "base"));
    supper.addRecipe(preparation("base", "stock"));
    Recipe soup = recipe("Soup", {step("Warm the soup", 10_min)});
    IngredientLine line = ingredient("stock", {});
    line.preparation = RecipeId{"stock"};
    soup.common.lines = {line};
    supper.serve(soup);
    EXPECT_THAT(said(supper), AllOf(HasSubstr("stock"), HasSubstr("circle")));
}

TEST(FaultyInput, APreparationThatIsNotInTheLibrary)
{
    Supper supper = salad();
    IngredientLine line = ingredient("dressing", {});
    line.preparation = RecipeId{"dressing"};
    supper.recipes.at(RecipeId{"salad"}).common.lines = {line};
    EXPECT_NO_THROW(static_cast<void>(said(supper)));
}

TEST(FaultyInput, LayoutsFromAnotherCentury)
{
    Supper supper = salad();
    const Instant longAgo = supper.instant(12) - Minutes{100LL * 365 * 24 * 60};
    supper.layout.starts["salad/*/dress-the-leaves"] = longAgo;
    EXPECT_THAT(supper.clashes(), testing::Not(IsEmpty()));
    supper.layout.pinned.insert("salad/*/dress-the-leaves");
    EXPECT_THAT(supper.clashes(), testing::Not(IsEmpty()));
    supper.layout.starts["salad/*/dress-the-leaves"] =
        supper.instant(12) + Minutes{100LL * 365 * 24 * 60};
    EXPECT_THAT(supper.clashes(), testing::Not(IsEmpty()));
}

TEST(FaultyInput, JobsAndTripsFarAway)
{
    Supper supper = salad();
    const CivilDate longAgo{2007, 1, 1};
    const CivilDate farOff{2047, 1, 1};
    supper.occasion.houseJobs = {
        {HouseJobId{"table"},
         "Lay the table",
         20_min,
         handsOn,
         {longAgo, {}},
         {longAgo, {1, 0}},
         {}},
        {HouseJobId{"tidy"}, "Tidy up", 20_min, handsOn, {farOff, {}}, {farOff, {1, 0}}, {}}};
    ShoppingTrip trip;
    trip.id = HouseJobId{"market"};
    trip.name = "Market";
    trip.earliest = {longAgo, {9, 0}};
    trip.latest = {longAgo, {12, 0}};
    supper.occasion.trips = {trip};
    EXPECT_THAT(supper.clashes(), testing::Not(IsEmpty()));
}

TEST(FaultyInput, NamesOfEveryKind)
{
    for (const char* name : {"Ann's “best” \"stew\"", "🍲🔥 hot pot", "מרק עדשים", "شوربة",
                             "\xE2\x80\xAEreversed", "Crème\tbrûlée {} {0} %s", ""}) {
        Supper supper;
        Recipe stew = recipe(name, {step("Stir", 5_min)});
        stew.id = RecipeId{"stew"};
        supper.serve(stew);
        Recipe other = recipe("Other", {step("Stir", 5_min)});
        supper.serve(other);
        if (*name == '\0') {
            EXPECT_THAT(said(supper), HasSubstr("name"));
            continue;
        }
        supper.recipes.at(RecipeId{"stew"}).common.steps.front().text = name;
        EXPECT_THAT(supper.clashes(), testing::ElementsAre(HasSubstr(name)));
    }
}

} // namespace

} // namespace suppertide::test
