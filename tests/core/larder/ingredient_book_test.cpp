// The table with what the cook says in its place.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/food/ingredient_amount.h"
#include "core/larder/ingredient_book.h"

namespace suppertide {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

OwnIngredient own(const std::string& name)
{
    OwnIngredient result;
    result.name = name;
    return result;
}

TEST(IngredientBookOfALarder, IsTheTableWhereNothingIsSaid)
{
    const IngredientBook book = ingredientBook(Larder{});
    EXPECT_EQ(book.find("plain flour"), findIngredient("plain flour"));
}

TEST(IngredientBookOfALarder, ReplacesOnlyWhatIsSaid)
{
    Larder larder;
    larder.ingredients = {own("plain flour")};
    larder.ingredients[0].litreWeighs = grams(600);
    const IngredientBook book = ingredientBook(larder);
    const Ingredient& flour = *book.find("Plain Flours");
    EXPECT_EQ(flour.density->milligramsPerMillilitre, 600);
    EXPECT_EQ(flour.sources.density, "the cook");
    EXPECT_THAT(flour.contains, ElementsAre(Substance::Wheat));
    EXPECT_EQ(flour.section, StoreSection::Baking);
    // The table's other names still find the table's.
    EXPECT_EQ(book.find("all-purpose flour"), findIngredient("all-purpose flour"));
}

TEST(IngredientBookOfALarder, NeverTakesWhatIsNotSaidForNothing)
{
    Larder larder;
    larder.ingredients = {own("moon dust"), own("star dust")};
    larder.ingredients[1].contains = std::vector<Substance>{};
    larder.ingredients[1].synonyms = {"glitter"};
    const IngredientBook book = ingredientBook(larder);
    EXPECT_TRUE(book.find("moon dust")->checkLabel);
    EXPECT_FALSE(book.find("glitter")->checkLabel);
    EXPECT_THAT(book.find("glitter")->contains, IsEmpty());
}

TEST(IngredientBookOfALarder, BelievesTheLatestLabel)
{
    Larder larder;
    larder.labels = {{"pesto", {Substance::Milk}, CivilDate{2027, 1, 2}, ""},
                     {"pesto", {Substance::Milk, Substance::Cashew}, CivilDate{2027, 5, 2}, ""}};
    const IngredientBook book = ingredientBook(larder);
    const Ingredient& pesto = *book.find("pesto");
    EXPECT_FALSE(pesto.checkLabel);
    EXPECT_THAT(pesto.contains, ElementsAre(Substance::Milk, Substance::Cashew));
    EXPECT_THAT(pesto.mayContain, IsEmpty());
    EXPECT_TRUE(findIngredient("pesto")->checkLabel);
}

TEST(IngredientBookOfALarder, WeighsPiecesAsBought)
{
    Larder larder;
    larder.ingredients = {own("avocado")};
    larder.ingredients[0].pieceWeighs = grams(300);
    larder.ingredients[0].ediblePercent = 50;
    larder.ingredients[0].parts = {{IngredientPart::Meat, {Rational{140}, Unit::Gram}}};
    const IngredientBook book = ingredientBook(larder);
    const Ingredient& avocado = *book.find("avocado");
    EXPECT_EQ(*massOf({Rational{2}, Unit::Piece}, avocado), grams(300));
    EXPECT_EQ(asPurchased(*massOf({Rational{2}, Unit::Piece}, avocado), avocado), grams(600));
    EXPECT_EQ(*massOf({Rational{1}, Unit::Piece}, avocado, IngredientPart::Meat), grams(140));
}

} // namespace
} // namespace suppertide
