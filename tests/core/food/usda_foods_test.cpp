// The USDA's table as a look-up.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/food/usda_foods.h"

namespace suppertide {
namespace {

std::vector<std::string> namesOf(const std::vector<UsdaFood>& foods)
{
    std::vector<std::string> names;
    std::ranges::transform(foods, std::back_inserter(names), &UsdaFood::name);
    return names;
}

TEST(UsdaFoods, AreAllThere)
{
    EXPECT_EQ(usdaFoodCount(), 8463U);
}

TEST(UsdaFoods, AreReadWithTheirFigures)
{
    const auto carrot = findUsdaFood("11124");
    ASSERT_TRUE(carrot);
    EXPECT_EQ(carrot->name, "Carrots, raw");
    EXPECT_EQ(carrot->group, "Vegetables and Vegetable Products");
    EXPECT_EQ(carrot->refuse, 11);
    EXPECT_EQ(carrot->refuseWhat, "Crown, tops and scrapings");
    ASSERT_FALSE(carrot->weights.empty());
    EXPECT_EQ(carrot->weights.front().measure, "cup chopped");
    EXPECT_EQ(carrot->weights.front().mass, 128_g);
    EXPECT_FALSE(findUsdaFood("99999"));
    EXPECT_FALSE(findUsdaFood(""));
}

TEST(UsdaFoods, HaveNoMoreInThemThanTheyWeigh)
{
    for (const UsdaFood& food : lookUpFoods("a", 9000)) {
        const double sum = food.water.value_or(0) + food.protein.value_or(0) +
                           food.fat.value_or(0) + food.carbohydrate.value_or(0) +
                           food.ash.value_or(0);
        EXPECT_LE(sum, 110) << food.name; // wine's alcohol is in none of them; rounding
    }
}

TEST(UsdaFoods, AreFoundByBeginningsOfWordsInAnyOrder)
{
    EXPECT_EQ(namesOf(lookUpFoods("carrots raw", 1)), std::vector<std::string>{"Carrots, raw"});
    EXPECT_EQ(namesOf(lookUpFoods("RAW carr", 1)).size(), 1U);
    EXPECT_THAT(namesOf(lookUpFoods("raw carr")), testing::Contains("Carrots, raw"));
    EXPECT_EQ(lookUpFoods("egg whole raw", 1).front().number, "01123");
    EXPECT_TRUE(lookUpFoods("").empty());
    EXPECT_TRUE(lookUpFoods("xyzzy").empty());
    EXPECT_TRUE(lookUpFoods("arrots").empty());
    EXPECT_EQ(lookUpFoods("raw", 7).size(), 7U);
}

TEST(UsdaFoods, PutPlainFoodsFirst)
{
    EXPECT_EQ(lookUpFoods("leek").front().number, "11246");
    EXPECT_EQ(lookUpFoods("honey").front().number, "19296");
    for (const UsdaFood& food : lookUpFoods("cod", 5)) {
        EXPECT_THAT(food.name,
                    testing::AnyOf(testing::HasSubstr("Cod"), testing::HasSubstr("cod")));
    }
}

TEST(UsdaFoods, BecomeIngredientsOfOnesOwn)
{
    const Ingredient leek = ingredientFrom(*findUsdaFood("11246"));
    EXPECT_EQ(leek.ediblePerThousand, 440);
    ASSERT_TRUE(leek.density);
    EXPECT_NEAR(leek.density->milligramsPerMillilitre, 89 / 0.2365882365, 1);
    EXPECT_TRUE(leek.checkLabel); // the table says nothing of allergens
    EXPECT_TRUE(leek.contains.empty());
    EXPECT_THAT(leek.sources.density, testing::HasSubstr("SR26 11246"));
}

} // namespace
} // namespace suppertide
