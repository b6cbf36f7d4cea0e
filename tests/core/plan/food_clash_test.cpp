// Clashes at a guest's place, from the occasion to the sentence, each with its absence.
#include <gmock/gmock.h>

#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// Soup with hazelnuts, and a variant without.
Recipe soup()
{
    Recipe soup = recipe("Pea soup", {step("Simmer the peas", 10_min, unattended)});
    soup.common.lines = {ingredient("peas", {}), ingredient("hazelnuts", {Substance::Hazelnut})};
    Variant without;
    without.id = VariantId{"without-nuts"};
    without.name = "without nuts";
    without.dropLines = {LineId{"hazelnuts"}};
    soup.variants.push_back(without);
    return soup;
}

TEST(AllergenClash, NamesTheGuestTheDishAndWhatIsInIt)
{
    Supper supper;
    supper.addGuest("Ada");
    supper.addGuest("Fay", {Substance::Hazelnut});
    Dish& dish = supper.serve(soup(), 2);
    EXPECT_THAT(supper.clashes(), ElementsAre("Fay is given the pea soup, which contains hazelnut: "
                                              "Fay avoids that."));
    EXPECT_EQ(supper.laidOut()->clashes.front().severity, Severity::Unsafe);
    dish.mix = {{VariantId{"plain"}, Portions{1}, {}},
                {VariantId{"without-nuts"}, Portions{1}, {}}};
    EXPECT_THAT(supper.clashes(), IsEmpty());
}

TEST(AllergenClash, FollowsWhatTheMixSaysOfWhoGetsWhat)
{
    Supper supper;
    supper.addGuest("Ada");
    supper.addGuest("Fay", {Substance::Hazelnut});
    Dish& dish = supper.serve(soup(), 2);
    dish.mix = {{VariantId{"plain"}, Portions{1}, {GuestId{"fay"}}},
                {VariantId{"without-nuts"}, Portions{1}, {GuestId{"ada"}}}};
    EXPECT_THAT(supper.clashes(), ElementsAre("Fay is given the pea soup, which contains hazelnut: "
                                              "Fay avoids that."));
    std::swap(dish.mix[0].guests, dish.mix[1].guests);
    EXPECT_THAT(supper.clashes(), IsEmpty());
}

TEST(AllergenClash, IsOnlyAWishWhereADietIsNotForHealth)
{
    Supper supper;
    supper.addGuest("Cal").diets = {Diet::Vegetarian};
    Recipe broth = recipe("Broth", {step("Skim the broth", 10_min)});
    broth.common.lines = {ingredient("shin", {Substance::Meat})};
    supper.serve(broth, 1);
    EXPECT_THAT(supper.clashes(),
                ElementsAre("Cal is given the broth, which contains meat: Cal avoids that."));
    EXPECT_EQ(supper.laidOut()->clashes.front().severity, Severity::Undesirable);
    supper.occasion.guests.front().diets = {Diet::Coeliac};
    EXPECT_THAT(supper.clashes(), IsEmpty());
}

TEST(AllergenClash, SeesWhatComesInThroughAPreparation)
{
    Supper supper;
    supper.addGuest("Fay", {Substance::Hazelnut});
    Recipe oil = recipe("Nut oil", {step("Warm the oil", 10_min)});
    oil.kind = RecipeKind::Preparation;
    oil.yields = Amount{Rational{100}, Unit::Gram};
    oil.common.lines = {ingredient("hazelnuts", {Substance::Hazelnut})};
    supper.addRecipe(oil);
    Recipe salad = recipe("Salad", {step("Dress the leaves", 5_min)});
    IngredientLine line = ingredient("nut oil", {});
    line.preparation = oil.id;
    salad.common.lines = {line};
    supper.serve(salad, 1);
    EXPECT_THAT(supper.clashes(), ElementsAre("Fay is given the salad, which contains hazelnut: "
                                              "Fay avoids that."));
    supper.occasion.guests.front().allergies = {Substance::Walnut};
    EXPECT_THAT(supper.clashes(), IsEmpty());
}

TEST(AllergenClash, DoesNotTakeUnknownContentsForNothing)
{
    Supper supper;
    supper.addGuest("Fay", {Substance::Hazelnut});
    Recipe cake = recipe("Cake", {step("Slice the cake", 5_min)});
    IngredientLine bought = ingredient("bought sponge", {});
    bought.contains.reset();
    cake.common.lines = {bought};
    supper.serve(cake, 1);
    EXPECT_THAT(supper.clashes(), ElementsAre("Nobody has said what “bought sponge” in the cake "
                                              "contains, and Fay avoids hazelnut."));
    EXPECT_EQ(supper.laidOut()->clashes.front().severity, Severity::Unsafe);
    supper.occasion.guests.front().allergies.clear();
    EXPECT_THAT(supper.clashes(), IsEmpty());
}

TEST(GuestLeftOut, NamesTheGuestAndTheCourse)
{
    Supper supper;
    supper.addGuest("Ada");
    supper.addGuest("Cal");
    Dish& dish = supper.serve(soup(), 1);
    EXPECT_THAT(supper.clashes(), ElementsAre("Cal gets nothing in the main that suits."));
    dish.mix.front().portions = Portions{2};
    EXPECT_THAT(supper.clashes(), IsEmpty());
}

} // namespace

} // namespace suppertide::test
