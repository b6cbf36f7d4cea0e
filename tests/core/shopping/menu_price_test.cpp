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

TEST(MenuPrice, IsOfTheEveningThatIsAskedFor)
{
    ShopSupper supper = cakeAndFool();
    supper.sell("sugar", amount(500, Unit::Gram), 95);
    const auto price = shopping::priceOfMenus(supper.larder);
    PlanInput input = supper.input();
    EXPECT_EQ(price(input), 190);
    Occasion occasion = *input.occasion;
    for (Course& course : occasion.courses) {
        for (Dish& dish : course.dishes) {
            if (dish.recipe.text().find("fool") != std::string::npos) {
                dish.mix.clear();
            }
        }
    }
    input.occasion = std::make_shared<const Occasion>(occasion);
    EXPECT_EQ(price(input), 95);
}

TEST(MenuPrice, IsUnknownWhereNothingHasOne)
{
    ShopSupper supper = cakeAndFool();
    const auto price = shopping::priceOfMenus(supper.larder);
    EXPECT_EQ(price(supper.input()), std::nullopt);
}

/// What is ticked has been paid for, and would be for any menu.
TEST(MenuPrice, CountsWhatIsTicked)
{
    ShopSupper supper = cakeAndFool();
    supper.sell("sugar", amount(500, Unit::Gram), 95);
    supper.bought = shopping::withTicked({}, supper.line("sugar"), true);
    const auto price = shopping::priceOfMenus(supper.larder);
    EXPECT_EQ(price(supper.input()), 190);
}

} // namespace

} // namespace suppertide
