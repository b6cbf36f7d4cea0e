// Quantities against the ratios of the trade. All ratios and their ranges are common practice.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

auto within(double low, double high)
{
    return testing::AllOf(testing::Ge(low), testing::Le(high));
}

double yolksPerLitre(std::string_view id)
{
    const ResolvedRecipe custard = usual(id);
    return massOf(custard, {"yolks"}) / 17 / (massOf(custard, {"milk", "cream"}) / 1000);
}

// Poured 6 to 10 yolks to the litre, baked or set 8 to 12.
TEST(TradeRatios, OfCustardsAreSoManyYolksToTheLitre)
{
    EXPECT_THAT(yolksPerLitre("vanilla-custard"), within(6, 10));
    EXPECT_THAT(yolksPerLitre("burnt-top-custard"), within(8, 12));
    EXPECT_THAT(yolksPerLitre("savoury-custard"), within(8, 12));
}

// To be turned out: 0.8 to 1.2 % of all that it sets.
TEST(TradeRatios, OfGelatineIsAboutOnePercent)
{
    const ResolvedRecipe cream = usual("buttermilk-set-cream");
    const double set = massOf(cream, {"cold-water", "cream", "sugar", "buttermilk"});
    EXPECT_THAT(massOf(cream, {"gelatine"}) / set, within(0.008, 0.012));
    EXPECT_THAT(set / 8, within(100, 125)); // 110 g a portion
}

// Agar sets at 0.3 to 0.6 %.
TEST(TradeRatios, OfAgarIsLessThanHalfAPercent)
{
    const ResolvedRecipe cream = resolved("buttermilk-set-cream", "agar");
    const double set = massOf(cream, {"cold-water", "cream", "sugar", "buttermilk"});
    EXPECT_THAT(massOf(cream, {"gelatine"}) / set, within(0.003, 0.006));
}

// Sugar to white 2:1 by weight, within a tenth.
TEST(TradeRatios, OfMeringueIsTwoToOne)
{
    const ResolvedRecipe meringue = usual("rhubarb-pavlova");
    EXPECT_THAT(massOf(meringue, {"sugar"}) / massOf(meringue, {"whites"}), within(1.8, 2.2));
}

// Flour to fat to water 3:2:1 by weight, exactly.
TEST(TradeRatios, OfShortcrustAreThreeToTwoToOne)
{
    const ResolvedRecipe wheat = usual("tartlet-cases");
    EXPECT_DOUBLE_EQ(massOf(wheat, {"flour"}), massOf(wheat, {"water"}) * 3);
    EXPECT_DOUBLE_EQ(massOf(wheat, {"butter"}), massOf(wheat, {"water"}) * 2);
    const ResolvedRecipe free = usual("tartlet-cases-gluten-free");
    EXPECT_DOUBLE_EQ(massOf(free, {"rice-flour", "cornflour"}), massOf(free, {"water"}) * 3);
    EXPECT_DOUBLE_EQ(massOf(free, {"butter"}), massOf(free, {"water"}) * 2);
}

TEST(TradeRatios, OfCrumbleAreThreeToTwoToOne)
{
    const ResolvedRecipe crumble = usual("apple-crumble");
    EXPECT_DOUBLE_EQ(massOf(crumble, {"flour", "oats"}), massOf(crumble, {"sugar"}) * 3);
    EXPECT_DOUBLE_EQ(massOf(crumble, {"butter"}), massOf(crumble, {"sugar"}) * 2);
}

TEST(TradeRatios, OfDressingIsThreeOfOilToOneOfVinegar)
{
    const ResolvedRecipe dressing = usual("mustard-dressing");
    EXPECT_DOUBLE_EQ(massOf(dressing, {"oil"}), massOf(dressing, {"vinegar"}) * 3);
}

// Liquid 75 to 85 % of the flour; bicarbonate 1 to 1.5 %.
TEST(TradeRatios, OfSodaBreadGiveASoftDoughThatRises)
{
    const ResolvedRecipe bread = usual("soda-bread");
    const double flour = massOf(bread, {"flour", "white-flour"});
    EXPECT_THAT(massOf(bread, {"buttermilk"}) / flour, within(0.75, 0.85));
    EXPECT_THAT(massOf(bread, {"soda"}) / flour, within(0.010, 0.015));
}

// Water 60 to 65 % of the flour, dried yeast 0.8 to 1.2 %, salt 1.6 to 2 %.
TEST(TradeRatios, OfFlatbreadsAreThoseOfABreadDough)
{
    const ResolvedRecipe bread = usual("pan-flatbreads");
    const double flour = massOf(bread, {"flour"});
    EXPECT_THAT(massOf(bread, {"water"}) / flour, within(0.60, 0.65));
    EXPECT_THAT(massOf(bread, {"yeast"}) / flour, within(0.008, 0.012));
    EXPECT_THAT(massOf(bread, {"salt"}) / flour, within(0.016, 0.020));
}

// Two to three parts of water to one of bones; half to two thirds of it is left.
TEST(TradeRatios, OfStockAreThreeOfWaterToOneOfBones)
{
    const ResolvedRecipe stock = usual("lamb-stock");
    const double water = massOf(stock, {"water"});
    EXPECT_THAT(water / massOf(stock, {"bones"}), within(2, 3));
    const Amount left = *recipe("lamb-stock").yields;
    ASSERT_EQ(left.unit, Unit::Litre);
    EXPECT_THAT(left.value.toDouble() * 1000 / water, within(0.5, 0.67));
}

// Soups, gratins 0.4 to 0.8 % of the whole; meat rubbed before 0.8 to 1.2 %; fish for half an hour
// 1 to 2 %, most of which is wiped off; water for boiling 0.8 to 1.2 %.
TEST(TradeRatios, OfSaltAreWhatSeasons)
{
    for (const std::string_view soup :
         {"chilled-beetroot-soup", "pea-and-mint-soup", "roast-tomato-soup", "potato-gratin"}) {
        const ResolvedRecipe whole = usual(soup);
        const double share = massOf(whole, {"salt"}) / massOf(whole);
        EXPECT_GE(share, 0.004) << soup;
        EXPECT_LE(share, 0.008) << soup;
    }
    const ResolvedRecipe lamb = usual("braised-shoulder");
    EXPECT_THAT(massOf(lamb, {"salt"}) / massOf(lamb, {"shoulder"}), within(0.008, 0.012));
    const ResolvedRecipe chicken = usual("roast-chicken");
    EXPECT_THAT(massOf(chicken, {"salt"}) / massOf(chicken, {"chicken"}), within(0.008, 0.012));
    const ResolvedRecipe fish = usual("slow-salmon");
    EXPECT_THAT(massOf(fish, {"salt"}) / massOf(fish, {"salmon"}), within(0.010, 0.020));
    const ResolvedRecipe potatoes = usual("new-potatoes");
    EXPECT_THAT(massOf(potatoes, {"salt"}) / massOf(potatoes, {"water"}), within(0.008, 0.012));
}

double gramsAPortion(std::string_view id, std::initializer_list<std::string_view> lines)
{
    return massOf(usual(id), lines) / recipe(id).portions.toDouble();
}

// Soup 180 to 260 ml before other courses; meat on the bone 250 to 400 g, fish 150 to 200 g;
// potatoes 140 to 200 g, other vegetables 110 to 170 g before peeling, leaves 30 to 40 g.
TEST(TradeRatios, OfPortionsAreWhatAGuestEats)
{
    EXPECT_THAT(gramsAPortion("chilled-beetroot-soup", {}), within(180, 260));
    EXPECT_THAT(gramsAPortion("pea-and-mint-soup", {}), within(180, 260));
    EXPECT_THAT(gramsAPortion("braised-shoulder", {"shoulder"}), within(250, 400));
    EXPECT_THAT(gramsAPortion("roast-chicken", {"chicken"}), within(250, 400));
    EXPECT_THAT(gramsAPortion("slow-salmon", {"salmon"}), within(150, 200));
    EXPECT_THAT(gramsAPortion("potato-gratin", {"potatoes"}), within(140, 200));
    EXPECT_THAT(gramsAPortion("new-potatoes", {"potatoes"}), within(140, 200));
    EXPECT_THAT(gramsAPortion("roast-roots", {"carrots", "parsnips", "beetroot"}),
                within(110, 170));
    EXPECT_THAT(gramsAPortion("braised-fennel", {"fennel"}), within(110, 170));
    EXPECT_THAT(gramsAPortion("green-leaves", {"leaves"}), within(30, 40));
}

} // namespace
} // namespace suppertide::demo
