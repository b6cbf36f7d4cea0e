// What menus cost where one of their dishes leaves what another needs.
#include <gmock/gmock.h>

#include "core/menus/compare.h"
#include "core/shopping/menu_price.h"
#include "tests/core/menus/courses.h"
#include "tests/core/shopping/shop_supper.h"

namespace suppertide::menus {
namespace {

using test::amount;
using test::asking;
using test::asks;
using test::offer;
using test::ShopSupper;
using testing::SizeIs;

/// Hundredths of the currency.
constexpr std::int64_t shoulderCosts = 3'600;
constexpr std::int64_t bonesCost = 240;
constexpr std::int64_t leavesCost = 150;

/// First a roast that leaves its bones, or a braise of the same meat that leaves none; then a broth
/// that may take the bones, or a salad.
ShopSupper fourMenus()
{
    ShopSupper supper;
    supper.occasion.courses.clear();
    supper.addCourse("First", {19, 30});
    Recipe roast = asking("Roast", {asks("shoulder", amount(3, Unit::Kilogram))});
    Recipe braise = asking("Braise", {asks("shoulder", amount(3, Unit::Kilogram))});
    roast.common.steps[0].leaves = {{"lamb bones", amount(900, Unit::Gram)}};
    offer(supper, roast);
    offer(supper, braise);
    supper.addCourse("Second", {20, 30});
    Recipe broth = asking("Broth", {asks("lamb bones", amount(600, Unit::Gram))});
    broth.common.lines[0].byProduct = "lamb bones";
    offer(supper, broth);
    offer(supper, asking("Salad", {asks("sorrel", amount(200, Unit::Gram))}));
    supper.sell("shoulder", amount(3, Unit::Kilogram), shoulderCosts);
    supper.sell("lamb bones", amount(600, Unit::Gram), bonesCost);
    supper.sell("sorrel", amount(200, Unit::Gram), leavesCost);
    for (const char* guest : {"Ada", "Ben", "Cay", "Dot", "Eli", "Fay", "Gus", "Hal"}) {
        supper.addGuest(guest); // as many as the recipes are for
    }
    return supper;
}

TEST(PriceOfMenus, FallsByWhatTheirOwnByProductsSave)
{
    const ShopSupper supper = fourMenus();
    CompareRequest request{supper.input(), {}, shopping::priceOfMenus(supper.larder), 0};
    request.limits.wallClock = std::chrono::minutes(5);
    const auto compared = compareMenus(request);
    ASSERT_TRUE(compared);
    ASSERT_THAT(compared->menus, SizeIs(4));
    const auto price = [&](std::size_t menu) { return compared->menus[menu].price.value_or(-1); };
    EXPECT_EQ(price(0), shoulderCosts) << "roast and broth: the bones are the roast's";
    EXPECT_EQ(price(1), shoulderCosts + leavesCost) << "roast and salad: nobody wants the bones";
    EXPECT_EQ(price(2), shoulderCosts + bonesCost) << "braise and broth: bones are bought";
    EXPECT_EQ(price(3), shoulderCosts + leavesCost) << "braise and salad";
}

/// The plan makes the broth before there are bones: what is compared is what would be done.
TEST(PriceOfMenus, DoesNotFallWhereTheBonesComeTooLate)
{
    ShopSupper supper = fourMenus();
    supper.occasion.courses[0].serving.clock = {20, 30};
    supper.occasion.courses[1].serving.clock = {19, 30};
    std::swap(supper.occasion.courses[0], supper.occasion.courses[1]);
    // The roast is carved as it is served, an hour after the broth.
    Recipe& roast = supper.recipes.at(RecipeId{"roast"});
    roast.common.waits = {
        test::waitBetween("is served hot", "Mix Roast", "", Minutes{0}, Minutes{5})};
    CompareRequest request{supper.input(), {}, shopping::priceOfMenus(supper.larder), 0};
    request.limits.wallClock = std::chrono::minutes(5);
    const auto compared = compareMenus(request);
    ASSERT_TRUE(compared);
    ASSERT_THAT(compared->menus, SizeIs(4));
    ASSERT_EQ(compared->menus[0].cookable, Cookable::Yes) << "broth, then roast";
    EXPECT_EQ(compared->menus[0].price, shoulderCosts + bonesCost);
}

} // namespace
} // namespace suppertide::menus
