// The list as text and as CSV.
#include <gmock/gmock.h>

#include "core/shopping/shopping_text.h"
#include "tests/core/shopping/shop_supper.h"

namespace suppertide::shopping {

namespace {

using test::amount;
using test::asking;
using test::asks;
using test::ShopSupper;
using testing::HasSubstr;
using testing::StartsWith;

ShopSupper kitchenSupper()
{
    ShopSupper supper;
    supper.know("skerry fish").keepsDays = 1;
    supper.larder.ingredients.back().section = "fish";
    supper.serve(asking("Pie, \"the best\"", {asks("skerry fish", amount(500, Unit::Gram)),
                                              asks("water", amount(1, Unit::Litre))}));
    supper.sell("skerry fish", amount(400, Unit::Gram), 1250);
    supper.larder.packs.back().name = "tray";
    return supper;
}

TEST(ShoppingText, TellsPacksCostsAndWhatForUnderEachTrip)
{
    const std::string text = textOf(kitchenSupper().list());
    EXPECT_THAT(text, HasSubstr("Friday 18 June, by 18:00: The day before\n"
                                "  fish\n"
                                "    [ ] skerry fish: 2 × tray of 400 g, 25.00 GBP\n"
                                "        500 g for Pie, \"the best\"\n"
                                "        left over: 300 g\n"));
    EXPECT_THAT(text, HasSubstr("Nothing to buy of\n    water: "));
    EXPECT_THAT(text, HasSubstr("\nCost: 25.00 GBP.\n"));
    EXPECT_THAT(text, HasSubstr("Check the label"));
}

TEST(ShoppingText, SaysAmountsInTheReadersMeasuresAndLeavesPacksAndTablesAsTheyAre)
{
    ShopSupper supper = kitchenSupper();
    ShoppingList list = supper.list();
    const std::string table = csvOf(list);
    const std::vector<ShoppingLine> lines = list.lines;
    list.measures = MeasureSystem::UsCustomary;
    const std::string text = textOf(list);
    EXPECT_THAT(text, HasSubstr("skerry fish: 2 × tray of 400 g"));
    EXPECT_THAT(text, HasSubstr("1 lb 1½ oz for Pie")); // 500 g are 17.64 oz
    EXPECT_THAT(text, HasSubstr("left over: 10½ oz"));  // 300 g are 10.58 oz
    EXPECT_EQ(csvOf(list), table);
    EXPECT_EQ(list.lines, lines);
}

TEST(ShoppingText, NeverSaysLessThanIsToBeBought)
{
    ShoppingLine line;
    line.toBuy = amount(1010, Unit::Gram); // 35.63 oz
    EXPECT_EQ(buyText(line, MeasureSystem::UsCustomary), "2 lb 4 oz");
    line.toBuy = amount(1000, Unit::Gram); // 35.27 oz: half an ounce is the step
    EXPECT_EQ(buyText(line, MeasureSystem::Imperial), "2 lb 3½ oz");
    line.toBuy = amount(1, Unit::Litre); // 4.23 cups
    EXPECT_EQ(buyText(line, MeasureSystem::UsCustomary), "1 quart + ¼ cup");
    line.toBuy = amount(1010, Unit::Millilitre); // 4.27 cups
    EXPECT_EQ(buyText(line, MeasureSystem::UsCustomary), "1 quart + ½ cup");
    line.toBuy = amount(3, Unit::Piece);
    EXPECT_EQ(buyText(line, MeasureSystem::UsCustomary), "3");
}

// RFC 4180, section 2: lines end in CR LF; a field with a comma or a quote stands in quotes, and a
// quote in it is doubled.
TEST(ShoppingText, QuotesFieldsOfCsv)
{
    const std::string csv = csvOf(kitchenSupper().list());
    EXPECT_THAT(csv, StartsWith("Trip,Day,Section,Ingredient,Needed,At home,Buy,Cost,Currency,"
                                "Bought,For,Left over\r\n"));
    EXPECT_THAT(csv, HasSubstr("The day before,2027-06-18,fish,skerry fish,500 g,,"
                               "2 × tray of 400 g,25.00,GBP,,"
                               "\"500 g for Pie, \"\"the best\"\"\",300 g\r\n"));
    EXPECT_THAT(csv, HasSubstr(",,drinks,water,1 l,1 l,,,,,"));
}

} // namespace

} // namespace suppertide::shopping
