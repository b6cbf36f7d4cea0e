#include <gtest/gtest.h>

#include "core/shopping/menu_price.h"
#include "tests/core/shopping/shop_supper.h"

namespace suppertide {

namespace {

using test::amount;
using test::asking;
using test::asks;
using test::ShopSupper;

ShopSupper cakeAndFool()
{
    ShopSupper supper;
    supper.serve(asking("Cake", {asks("sugar", amount(400, Unit::Gram))}));
    supper.serve(asking("Fool", {asks("sugar", amount(150, Unit::Gram))}));
    return supper;
}

TEST(MenuPrice, IsOfTheOccasionThatIsAskedFor)
{
    ShopSupper supper = cakeAndFool();
    supper.sell("sugar", amount(500, Unit::Gram), 95);
    const auto price = shopping::priceOfMenus({supper.input(), supper.larder, {}, nullptr, {}});
    Occasion occasion = *supper.input().occasion;
    EXPECT_EQ(price(occasion), 190);
    for (Course& course : occasion.courses) {
        for (Dish& dish : course.dishes) {
            if (dish.recipe.text().find("fool") != std::string::npos) {
                dish.mix.clear();
            }
        }
    }
    EXPECT_EQ(price(occasion), 95);
}

TEST(MenuPrice, IsUnknownWhereNothingHasOne)
{
    ShopSupper supper = cakeAndFool();
    const auto price = shopping::priceOfMenus({supper.input(), supper.larder, {}, nullptr, {}});
    EXPECT_EQ(price(*supper.input().occasion), std::nullopt);
}

/// What is ticked has been paid for, and would be for any menu.
TEST(MenuPrice, CountsWhatIsTicked)
{
    ShopSupper supper = cakeAndFool();
    supper.sell("sugar", amount(500, Unit::Gram), 95);
    supper.bought = shopping::withTicked({}, supper.line("sugar"), true);
    const auto price =
        shopping::priceOfMenus({supper.input(), supper.larder, supper.bought, nullptr, {}});
    EXPECT_EQ(price(*supper.input().occasion), 190);
}

} // namespace

} // namespace suppertide
