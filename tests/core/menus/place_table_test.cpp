// Who gets what, shown and changed by hand.
#include <gmock/gmock.h>

#include "core/menus/place_table.h"
#include "core/plan/making.h"
#include "tests/core/menus/courses.h"

namespace suppertide::menus {
namespace {

using test::sharedOut;
using test::Supper;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

TEST(PlaceTable, HasAColumnForTheMainAndOneForEachSide)
{
    const PlaceTable table = placesOf(sharedOut().input());
    ASSERT_THAT(table.columns, SizeIs(2));
    EXPECT_THAT(table.columns[0].dishes, ElementsAre(DishId{"lamb"}, DishId{"squash"}));
    EXPECT_TRUE(table.columns[0].isMain);
    EXPECT_FALSE(table.columns[1].isMain);
    EXPECT_EQ(table.cells[0][0]->dish, DishId{"lamb"});
    EXPECT_EQ(table.cells[1][0]->dish, DishId{"squash"});
    EXPECT_TRUE(table.cells[2][0]->suitability.suits());
    EXPECT_FALSE(table.cells[2][1]) << "cream is not for Bea";
}

TEST(PlaceTable, OffersEachVariantWithWhatSpeaksAgainstIt)
{
    const PlanInput input = sharedOut().input();
    const PlaceTable table = placesOf(input);
    const auto options = optionsFor(input, table.columns[0], table.guests[2]);
    ASSERT_THAT(options, SizeIs(3));
    EXPECT_THAT(options[0].suitability.unsuitable, ElementsAre(Substance::Meat));
    EXPECT_THAT(options[1].suitability.unsuitable, ElementsAre(Substance::Milk));
    EXPECT_TRUE(options[2].suitability.suits());
}

TEST(PlaceTable, ChangedByHandMovesOnePortionAndNobodyElse)
{
    const Supper supper = sharedOut();
    PlanInput input = supper.input();
    const PlaceTable before = placesOf(input);
    const Occasion changed = withHelping(input, before.columns[0], before.guests[0],
                                         std::pair{DishId{"squash"}, VariantId{"cheese"}});
    input.occasion = std::make_shared<const Occasion>(changed);
    const PlaceTable after = placesOf(input);
    EXPECT_EQ(after.cells[0][0]->variant, VariantId{"cheese"});
    EXPECT_EQ(after.cells[1], before.cells[1]);
    EXPECT_EQ(after.cells[2], before.cells[2]);
    EXPECT_THAT(changed.courses.back().dishes[0].mix, IsEmpty()) << "nobody eats lamb now";
    EXPECT_EQ(portionsOf(changed.courses.back().dishes[1]), Portions{3});
}

TEST(PlaceTable, ChangedToNothingTakesThePortionAway)
{
    const Supper supper = sharedOut();
    const PlanInput input = supper.input();
    const PlaceTable before = placesOf(input);
    const Occasion changed = withHelping(input, before.columns[1], before.guests[0], std::nullopt);
    EXPECT_EQ(portionsOf(changed.courses.back().dishes[2]), Portions{1});
    EXPECT_EQ(portionsOf(changed.courses.back().dishes[0]), Portions{1});
}

/// What the cook has said of an ingredient counts, whatever the table says of it.
TEST(PlaceTable, BelievesWhatTheCookSaysOfAnIngredient)
{
    Supper supper = sharedOut();
    const Recipe& lamb = supper.recipes.at(RecipeId{"lamb"});
    Recipe crumbed = lamb;
    IngredientLine crumb = test::ingredient("rice", {});
    crumb.id = LineId{"rice"};
    crumb.contains.reset();
    crumbed.common.lines.push_back(crumb);
    supper.recipes.at(RecipeId{"lamb"}) = crumbed;
    supper.occasion.guests[0].allergies = {Substance::Hazelnut};
    PlanInput input = supper.input();
    const PlaceTable before = placesOf(input);
    EXPECT_TRUE(before.cells[0][0]->suitability.suits());

    Ingredient own;
    own.name = "rice";
    own.contains = {Substance::Hazelnut};
    input.ingredients = IngredientBook(std::vector{own});
    const CourseOffer offered = offerOf(input, input.occasion->courses.back());
    EXPECT_THAT(placesOf(input).cells[0][0]->suitability.unsuitable,
                ElementsAre(Substance::Hazelnut));
    EXPECT_THAT(optionsFor(input, before.columns[0], before.guests[0])[0].suitability.unsuitable,
                ElementsAre(Substance::Hazelnut));
    const CourseMix mix = mixOf(input, offered, AlternativeId{"lamb"});
    const auto plate = std::ranges::find(mix.plates, GuestId{"ada"}, &Plate::guest);
    ASSERT_NE(plate, mix.plates.end());
    EXPECT_EQ(plate->dish, DishId{"squash"});
}

} // namespace
} // namespace suppertide::menus
