// What amounts of ingredients weigh, and how many wholes give a part.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/food/ingredient_amount.h"

namespace suppertide {
namespace {

using testing::HasSubstr;

const Ingredient& known(std::string_view name)
{
    return *findIngredient(name);
}

Grams mass(const Amount& amount, std::string_view name, IngredientPart part = IngredientPart::Whole)
{
    const auto result = massOf(amount, known(name), part);
    EXPECT_TRUE(result) << name;
    return result ? *result : Grams{};
}

std::string failure(const Amount& amount, std::string_view name)
{
    const auto result = massOf(amount, known(name));
    EXPECT_FALSE(result) << name;
    return result ? "" : result.error().forCook;
}

TEST(MassOf, GoesThroughDensityForWhatIsMeasured)
{
    EXPECT_EQ(mass({Rational{1}, Unit::Kilogram}, "plain flour"), 1000_g);
    EXPECT_EQ(mass({Rational{1}, Unit::Litre}, "plain flour"), 528_g);
    // USDA SR26 20081: a cup is 125 g; the density is kept to a milligram in a millilitre.
    EXPECT_NEAR(static_cast<double>(mass({Rational{1}, Unit::UsCup}, "plain flour").smallest()),
                125'000, 125);
    // The upper end of a range, so that enough is bought.
    EXPECT_EQ(mass({Rational{1}, Unit::Litre, Rational{2}}, "plain flour"), 1056_g);
}

TEST(MassOf, GoesThroughPiecesForWhatIsCounted)
{
    EXPECT_EQ(mass({Rational{4}, Unit::Clove}, "garlic"), 12_g);
    EXPECT_EQ(mass({Rational{2}, Unit::Piece}, "garlic clove"), 6_g);
    EXPECT_EQ(mass({Rational{3}, Unit::Piece}, "egg"), 150_g);
    EXPECT_EQ(mass({Rational{3}, Unit::Piece}, "egg", IngredientPart::Yolk), 51_g);
    EXPECT_EQ(mass({Rational{2}, Unit::Piece}, "lemon", IngredientPart::Juice), 96_g);
    EXPECT_EQ(mass({Rational{1}, Unit::Inch}, "ginger"), Grams::ofSmallest(15'240));
}

TEST(MassOf, TakesThePartForAThingOfItsOwn)
{
    // 15 ml of lemon juice at 244 g the US cup (SR26 09152).
    EXPECT_NEAR(
        static_cast<double>(
            mass({Rational{1}, Unit::Tablespoon}, "lemon", IngredientPart::Juice).smallest()),
        15'470, 20);
    EXPECT_EQ(mass({Rational{1}, Unit::UsTablespoon}, "lemon", IngredientPart::Zest),
              mass({Rational{1}, Unit::UsTablespoon}, "lemon zest"));
}

TEST(MassOf, SaysWhatDoesNotFit)
{
    EXPECT_EQ(failure({Rational{3}, Unit::Litre}, "egg"),
              "“3 l of egg” has no weight that is known: it is not measured by volume. Give the "
              "amount in grams or in pieces.");
    EXPECT_THAT(failure({Rational{2}, Unit::Piece}, "plain flour"),
                HasSubstr("nobody has said what a piece of it weighs"));
    EXPECT_THAT(failure({Rational{2}, Unit::Sprig}, "garlic"), HasSubstr("cloves, heads, pieces"));
    EXPECT_THAT(failure({Rational{0}, Unit::ToTaste}, "salt"), HasSubstr("left to the cook"));
    EXPECT_EQ(mass({Rational{2}, Unit::Pinch}, "salt"), Grams::ofSmallest(800));
}

TEST(VolumeOf, GoesThroughDensityToo)
{
    const auto water = volumeOf({Rational{1}, Unit::Kilogram}, known("water"));
    ASSERT_TRUE(water);
    EXPECT_NEAR(static_cast<double>(water->smallest()), 1e6, 2e3);
    EXPECT_EQ(*volumeOf({Rational{2}, Unit::Decilitre}, known("salmon")), 200_ml);
    EXPECT_FALSE(volumeOf({Rational{1}, Unit::Kilogram}, known("salmon")));
    EXPECT_FALSE(volumeOf({Rational{1}, Unit::Bunch}, known("milk")));
}

TEST(InUnitOf, IsExactWithinADimensionAndThroughWeightElse)
{
    EXPECT_EQ(*inUnitOf({Rational{1, 3}, Unit::Kilogram}, Unit::Gram, known("butter")),
              (Amount{Rational{1000, 3}, Unit::Gram}));
    EXPECT_EQ(*inUnitOf({Rational{15}, Unit::Gram}, Unit::Clove, known("garlic")),
              (Amount{Rational{5}, Unit::Clove}));
    const auto cups = inUnitOf({Rational{250}, Unit::Gram}, Unit::UsCup, known("plain flour"));
    ASSERT_TRUE(cups);
    EXPECT_NEAR(cups->value.toDouble(), 2, 0.003);
    EXPECT_FALSE(inUnitOf({Rational{1}, Unit::Litre}, Unit::Piece, known("egg")));
}

TEST(AsPurchased, UndoesTheYield)
{
    EXPECT_EQ(asPurchased(890_g, known("carrot")), 1000_g);
    EXPECT_EQ(edibleOf(1000_g, known("carrot")), 890_g);
    EXPECT_EQ(asPurchased(100_g, Ingredient{}), 100_g);
}

TEST(WholesFor, CountsByThePartThatIsWanted)
{
    // 8 g of zest and 96 g of juice: two lemons each, and the same two.
    const Ingredient& lemon = known("lemon");
    EXPECT_EQ(*wholesFor({Rational{8}, Unit::Gram}, lemon, IngredientPart::Zest), Rational{2});
    EXPECT_EQ(*wholesFor({Rational{96}, Unit::Gram}, lemon, IngredientPart::Juice), Rational{2});
    EXPECT_EQ(*wholesFor({Rational{3}, Unit::Piece}, lemon, IngredientPart::Juice), Rational{3});
    EXPECT_EQ(*wholesFor({Rational{99}, Unit::Gram}, known("egg"), IngredientPart::White),
              Rational{3});
    const auto none = wholesFor({Rational{10}, Unit::Gram}, known("egg"), IngredientPart::Zest);
    ASSERT_FALSE(none);
    EXPECT_EQ(none.error().forCook,
              "Nobody has said how much zest one egg has. Give the amount in pieces.");
    // A chicken's bones are a share of what is bought: 32 % of 920 g / 0.68.
    EXPECT_NEAR(
        wholesFor({Rational{433}, Unit::Gram}, known("chicken"), IngredientPart::Bones)->toDouble(),
        1, 0.001);
}

} // namespace
} // namespace suppertide
