// What is to be bought: summed, shared, rounded up, traced, and nothing lost.
#include <gmock/gmock.h>

#include "core/shopping/shopping_text.h"
#include "tests/core/shopping/shop_supper.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::shopping {

namespace {

using test::amount;
using test::asking;
using test::asks;
using test::ShopSupper;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr auto zest = IngredientPart::Zest;
constexpr auto juice = IngredientPart::Juice;
constexpr auto yolk = IngredientPart::Yolk;
constexpr auto white = IngredientPart::White;

TEST(ShoppingList, AddsUpWhatSeveralDishesNeedAndTracesIt)
{
    ShopSupper supper;
    supper.serve(asking("Soup", {asks("onion", amount(150, Unit::Gram))}), 4);
    supper.serve(asking("Tart", {asks("Onion", amount(1, Unit::Kilogram))}), 8);
    const ShoppingLine onion = supper.line("onion");
    EXPECT_EQ(onion.needed, amount(1075, Unit::Gram));
    EXPECT_EQ(onion.toBuy, amount(1080, Unit::Gram));
    ASSERT_EQ(onion.needs.size(), 2U);
    EXPECT_EQ(needText(onion.needs[0], onion), "75 g for Soup");
    EXPECT_EQ(needText(onion.needs[1], onion), "1 kg for Tart");
}

TEST(ShoppingList, CallsAThingAsItsRecipesDoWhileTheyAgree)
{
    ShopSupper supper;
    supper.know("skerry apple").synonyms = {"rock apple"};
    supper.serve(asking("Tart", {asks("rock apple", amount(800, Unit::Gram))}));
    EXPECT_EQ(supper.line("rock apple").ingredient, "rock apple");
    supper.serve(asking("Sauce", {asks("skerry apples", amount(200, Unit::Gram))}));
    const ShoppingLine apple = supper.line("rock apple");
    EXPECT_EQ(apple.ingredient, "skerry apple");
    EXPECT_EQ(apple.needed, amount(1000, Unit::Gram));
    EXPECT_EQ(needText(apple.needs[0], apple), "800 g (rock apple) for Tart");
    EXPECT_EQ(needText(apple.needs[1], apple), "200 g for Sauce");
}

TEST(ShoppingList, TakesZestAndJuiceFromTheSameLemons)
{
    ShopSupper supper;
    supper.knowFruitAndEggs();
    supper.serve(asking("Cream", {asks("yuzel", amount(2, Unit::Piece), zest)}));
    supper.serve(asking("Slaw", {asks("yuzel", amount(1, Unit::Piece), juice)}));
    supper.serve(asking("Curd", {asks("yuzel", amount(90, Unit::Millilitre), juice)}));
    const ShoppingLine lemon = supper.line("yuzel");
    EXPECT_EQ(lemon.needed, amount(3, Unit::Piece)); // the juice of three, the zest of two
    EXPECT_EQ(lemon.toBuy, amount(3, Unit::Piece));
    EXPECT_THAT(lemon.partsLeft, ElementsAre("zest of 1 × yuzel"));
    EXPECT_EQ(lemon.leftOver.value, Rational{0});
}

TEST(ShoppingList, TakesJuiceThatALineNamesByItselfFromTheSameFruit)
{
    ShopSupper supper;
    supper.knowFruitAndEggs();
    supper.serve(asking("Cream", {asks("yuzel", amount(2, Unit::Piece), zest)}));
    supper.serve(asking("Slaw", {asks("yuzel juice", amount(45, Unit::Millilitre)),
                                 asks("gull egg yolks", amount(3, Unit::Piece))}));
    EXPECT_EQ(supper.list().lines.size(), 2U);
    EXPECT_EQ(supper.line("yuzel").needed, amount(2, Unit::Piece));
    EXPECT_EQ(supper.line("gull egg").needed, amount(3, Unit::Piece));
    EXPECT_THAT(supper.line("gull egg").partsLeft, ElementsAre("white of 3 × gull egg"));
}

TEST(ShoppingList, AddsWholeLemonsToThoseThatAreOpened)
{
    ShopSupper supper;
    supper.serve(asking("Fish", {asks("yuzel", amount(2, Unit::Piece)),
                                 asks("yuzel", amount(1, Unit::Piece), zest)}));
    EXPECT_EQ(supper.line("yuzel").needed, amount(3, Unit::Piece));
}

TEST(ShoppingList, BuysEggsOnceForTheirYolksAndWhites)
{
    ShopSupper supper;
    supper.knowFruitAndEggs();
    supper.serve(asking("Meringue", {asks("gull egg", amount(6, Unit::Piece), white)}));
    supper.serve(asking("Custard", {asks("gull egg", amount(9, Unit::Piece), yolk)}));
    supper.serve(asking("Salad", {asks("gull egg", amount(4, Unit::Piece))}));
    const ShoppingLine egg = supper.line("gull egg");
    EXPECT_EQ(egg.needed, amount(13, Unit::Piece));
    EXPECT_THAT(egg.partsLeft, ElementsAre("white of 3 × gull egg"));
}

/// A meringue that leaves its yolks, and a custard that may take them.
ShopSupper meringueAndCustard()
{
    ShopSupper supper;
    Recipe meringue = asking("Meringue", {asks("gull egg", amount(6, Unit::Piece), white)});
    meringue.common.steps[0].leaves = {{"gull egg yolks", amount(6, Unit::Piece)}};
    Recipe custard = asking("Custard", {asks("gull egg", amount(4, Unit::Piece), yolk)});
    custard.common.lines[0].byProduct = "gull egg yolks";
    supper.serve(std::move(meringue));
    supper.serve(std::move(custard));
    return supper;
}

TEST(ShoppingList, BuysNoEggsForYolksThatAnotherDishLeaves)
{
    EXPECT_EQ(meringueAndCustard().line("gull egg").needed, amount(6, Unit::Piece));
}

TEST(ShoppingList, BuysEggsApartIfThePlanDoesNotTakeTheYolks)
{
    ShopSupper supper = meringueAndCustard();
    const LineId line = supper.recipes.at(RecipeId{"custard"}).common.lines[0].id;
    supper.layout.options = {{"custard/*/mix-custard/" + line.text(), "own"}};
    EXPECT_EQ(supper.line("gull egg").needed, amount(10, Unit::Piece));
}

TEST(ShoppingList, BuysNeitherWhitesNorYolksTwiceWhereEachDishOffersThemToTheOther)
{
    ShopSupper supper;
    Recipe meringue = asking("Meringue", {asks("gull egg", amount(6, Unit::Piece), white)});
    meringue.common.lines[0].byProduct = "gull egg whites";
    meringue.common.steps[0].leaves = {{"gull egg yolks", amount(6, Unit::Piece)}};
    Recipe custard = asking("Custard", {asks("gull egg", amount(6, Unit::Piece), yolk)});
    custard.common.lines[0].byProduct = "gull egg yolks";
    custard.common.steps[0].leaves = {{"gull egg whites", amount(6, Unit::Piece)}};
    supper.serve(std::move(meringue));
    supper.serve(std::move(custard));
    EXPECT_EQ(supper.line("gull egg").needed, amount(6, Unit::Piece));
}

TEST(ShoppingList, LeavesOffBonesThatAnotherDishLeavesAndTellsOfTheRest)
{
    ShopSupper supper;
    Recipe roast = asking("Roast", {asks("shoulder", amount(3, Unit::Kilogram))});
    roast.common.steps[0].leaves = {{"lamb bones", amount(900, Unit::Gram)}};
    Recipe stock = asking("Stock", {asks("lamb bones", amount(600, Unit::Gram))});
    stock.common.lines[0].byProduct = "lamb bones";
    supper.serve(std::move(roast));
    supper.serve(std::move(stock));
    const ShoppingLine bones = supper.line("lamb bones");
    EXPECT_EQ(bones.toBuy.value, Rational{0});
    EXPECT_FALSE(bones.trip);
    EXPECT_THAT(bones.notes, ElementsAre("600 g for “Stock” comes from “Roast”."));
    ASSERT_EQ(supper.list().spare.size(), 1U);
    EXPECT_EQ(supper.list().spare[0].amount, amount(300, Unit::Gram));
}

TEST(ShoppingList, BuysForOneBatchOfAPreparationThatServesTwoDishes)
{
    ShopSupper supper;
    Recipe dressing = asking("Dressing", {asks("oil", amount(240, Unit::Millilitre))});
    dressing.kind = RecipeKind::Preparation;
    dressing.yields = amount(400, Unit::Millilitre);
    supper.addRecipe(std::move(dressing));
    for (const auto& [name, millilitres] : {std::pair{"Leaves", 100}, std::pair{"Beans", 300}}) {
        Recipe dish = asking(name, {asks("dressing", amount(millilitres, Unit::Millilitre))});
        dish.common.lines[0].preparation = RecipeId{"dressing"};
        supper.serve(std::move(dish));
    }
    const ShoppingLine oil = supper.line("oil");
    EXPECT_EQ(oil.needed, amount(240, Unit::Millilitre));
    ASSERT_EQ(oil.needs.size(), 1U);
    EXPECT_EQ(needText(oil.needs[0], oil), "240 ml for Dressing (Leaves, Beans)");
}

TEST(ShoppingList, BuysMoreOfWhatIsPartlyThrownAway)
{
    ShopSupper supper;
    supper.know("marsh stalk").ediblePercent = 80;
    supper.serve(
        asking("Fool", {asks("marsh stalk", amount(800, Unit::Gram), IngredientPart::Stalks),
                        asks("marsh stalk", amount(100, Unit::Gram))}));
    EXPECT_EQ(supper.line("marsh stalk").needed, amount(1100, Unit::Gram));
    ShopSupper peeled;
    peeled.know("celeriac").ediblePercent = 50;
    IngredientLine line = asks("celeriac", amount(300, Unit::Gram));
    line.note = "peeled weight";
    peeled.serve(asking("Slaw", {line}));
    EXPECT_EQ(peeled.line("celeriac").needed, amount(600, Unit::Gram));
}

TEST(ShoppingList, TakesOffWhatIsAtHomeUnlessItIsTooOld)
{
    ShopSupper supper;
    supper.serve(asking("Bread", {asks("flour", amount(500, Unit::Gram))}));
    supper.have("Flour", amount(120, Unit::Gram));
    EXPECT_EQ(supper.line("flour").fromHome, amount(120, Unit::Gram));
    EXPECT_EQ(supper.line("flour").toBuy, amount(380, Unit::Gram));
    supper.larder.stock[0].useBy = CivilDate{2027, 6, 19};
    EXPECT_EQ(supper.line("flour").toBuy, amount(380, Unit::Gram));
    supper.larder.stock[0].useBy = CivilDate{2027, 6, 18};
    EXPECT_EQ(supper.line("flour").toBuy, amount(500, Unit::Gram));
    EXPECT_THAT(supper.line("flour").notes,
                ElementsAre("At home there is 120 g of it, but it is to be used by Friday 18 "
                            "June."));
}

TEST(ShoppingList, BuysNothingOfWhatIsAlwaysThere)
{
    ShopSupper supper;
    supper.serve(asking(
        "Bread", {asks("salt", amount(9, Unit::Gram)), asks("water", amount(1, Unit::Litre))}));
    supper.larder.stock = {{"salt", {}, std::nullopt, true, ""}};
    for (const ShoppingLine& line : supper.list().lines) {
        EXPECT_FALSE(line.trip) << line.ingredient;
        EXPECT_EQ(line.toBuy.value, Rational{0});
    }
    EXPECT_EQ(supper.list().unpriced, 0U);
}

TEST(ShoppingList, RoundsUpToPacksOverTheSumAndSaysWhatItCosts)
{
    ShopSupper supper;
    supper.serve(asking("Cake", {asks("sugar", amount(400, Unit::Gram))}));
    supper.serve(asking("Fool", {asks("sugar", amount(150, Unit::Gram))}));
    supper.sell("sugar", amount(500, Unit::Gram), 95);
    const ShoppingLine sugar = supper.line("sugar");
    EXPECT_EQ(sugar.toBuy, amount(1000, Unit::Gram));
    EXPECT_EQ(sugar.cost, 190);
    EXPECT_EQ(sugar.leftOver, amount(450, Unit::Gram));
    EXPECT_EQ(buyText(sugar), "2 × 500 g");
    EXPECT_EQ(supper.list().cost, 190);
}

TEST(ShoppingList, SellsLooseThingsAtTheirPriceForWhatIsBought)
{
    ShopSupper supper;
    supper.serve(asking("Fish", {asks("salmon", amount(1501, Unit::Gram))}));
    supper.sell("salmon", amount(1, Unit::Kilogram), 2200);
    supper.larder.packs.back().isLoose = true;
    EXPECT_EQ(supper.line("salmon").toBuy, amount(1510, Unit::Gram));
    EXPECT_EQ(supper.line("salmon").cost, 3322);
}

TEST(ShoppingList, MeasuresInGramsWhatIsSoldByThePiece)
{
    ShopSupper supper;
    supper.know("onion").pieceWeighs = 150_g;
    supper.serve(asking("Soup", {asks("onion", amount(400, Unit::Gram))}));
    supper.sell("onion", amount(1, Unit::Piece), 30);
    EXPECT_EQ(supper.line("onion").cost, 90);
    EXPECT_EQ(supper.line("onion").leftOver, amount(50, Unit::Gram));
}

TEST(ShoppingList, KeepsApartWhatCannotBeAdded)
{
    ShopSupper supper;
    supper.serve(asking("Cake", {asks("carobel", amount(2, Unit::Tablespoon))}));
    supper.serve(asking("Drink", {asks("carobel", amount(50, Unit::Gram))}));
    EXPECT_EQ(supper.line("carobel").needed, amount(30, Unit::Millilitre));
    const ShoppingLine apart = supper.line("carobel (g)");
    EXPECT_EQ(apart.needed, amount(50, Unit::Gram));
    EXPECT_THAT(apart.notes, ElementsAre("Nobody has said how 50 g of it compares with 30 ml, so "
                                         "it stands apart."));
    supper.know("carobel").litreWeighs = 500_g;
    EXPECT_EQ(supper.line("carobel").needed, amount(130, Unit::Millilitre));
    EXPECT_EQ(supper.list().lines.size(), 1U);
}

TEST(ShoppingList, KeepsWhatHasNoAmount)
{
    ShopSupper supper;
    supper.serve(asking("Gratin", {asks("nutmeg", {Rational{1}, Unit::Pinch}),
                                   asks("parsley", {Rational{0}, Unit::ToTaste})}));
    EXPECT_EQ(buyText(supper.line("nutmeg")), "some");
    EXPECT_TRUE(supper.line("parsley").trip);
    supper.have("nutmeg", amount(1, Unit::Piece));
    EXPECT_FALSE(supper.line("nutmeg").trip);
    EXPECT_THAT(supper.line("nutmeg").notes, IsEmpty());
}

TEST(ShoppingList, QuestionsLitresOfEggsAndTakesThemAllTheSame)
{
    ShopSupper supper;
    supper.knowFruitAndEggs();
    supper.larder.ingredients.back().litreWeighs = 1000_g;
    supper.serve(asking("Salad", {asks("gull egg", amount(4, Unit::Piece))}));
    supper.serve(asking("Cake", {asks("gull egg", amount(3, Unit::Litre))}));
    const ShoppingLine egg = supper.line("gull egg");
    EXPECT_EQ(egg.toBuy, amount(56, Unit::Piece)); // 4 and 3000 g / 58 g
    EXPECT_THAT(egg.notes,
                ElementsAre("“Cake” asks for 3 l of gull egg, which is counted: it was taken "
                            "as 52. See whether the recipe means that."));
}

TEST(ShoppingList, SaysWhatIsMissingToBuyKilogramsOfWhatIsSoldByThePiece)
{
    ShopSupper supper;
    supper.serve(asking("Tart", {asks("skerry quince", amount(2, Unit::Kilogram))}));
    supper.sell("skerry quince", amount(1, Unit::Piece), 60);
    const ShoppingLine quince = supper.line("skerry quince");
    EXPECT_EQ(quince.toBuy, amount(2000, Unit::Gram));
    EXPECT_THAT(quince.notes, ElementsAre(HasSubstr("It is sold by 1, and nobody has said what one "
                                                    "weighs: ask for 2 kg in the shop")));
    EXPECT_FALSE(quince.isInTable);
}

TEST(ShoppingList, SaysWhatItCouldNotCount)
{
    ShopSupper supper;
    supper.serve(asking(
        "Soup", {asks("onion", amount(-150, Unit::Gram)), asks(" ", amount(1, Unit::Piece))}));
    supper.serve(asking("Tart", {asks("plum", amount(150, Unit::Gram))}), 0);
    supper.serve(asking("Pie", {asks("plum", amount(150, Unit::Gram))}), -2);
    supper.serve(asking("Jam", {asks("plum", amount(150, Unit::Gram))}));
    supper.occasion.courses[0].dishes.back().mix[0].variant = VariantId{"sour"};
    supper.serve(asking("Crumble", {asks("plum", amount(150, Unit::Gram))}));
    supper.recipes.erase(RecipeId{"crumble"});
    const ShoppingList list = supper.list();
    EXPECT_THAT(list.lines, IsEmpty());
    EXPECT_THAT(list.sentences,
                testing::UnorderedElementsAre(
                    HasSubstr("“Tart” has 0 portions"), HasSubstr("“Pie” has -2 portions"),
                    HasSubstr("“Jam” has no variant “sour”"),
                    HasSubstr("recipe “crumble” of a dish is not in the library"),
                    HasSubstr("“Soup” asks for"), HasSubstr("names no ingredient")));
    EXPECT_THAT(textOf(list), HasSubstr("There is nothing to buy"));
}

TEST(ShoppingList, ShowsATickUntilMoreIsWanted)
{
    ShopSupper supper;
    supper.serve(asking("Soup", {asks("onion", amount(150, Unit::Gram))}), 8);
    supper.bought = withTicked({}, supper.line("onion"), true);
    EXPECT_TRUE(supper.line("onion").isBought);
    MixEntry& mix = supper.occasion.courses[0].dishes[0].mix[0];
    mix.portions = Portions{4};
    EXPECT_TRUE(supper.line("onion").isBought);
    mix.portions = Portions{16};
    EXPECT_FALSE(supper.line("onion").isBought);
    EXPECT_EQ(supper.line("onion").boughtBefore, amount(150, Unit::Gram));
    EXPECT_TRUE(withTicked(supper.bought, supper.line("onion"), false).empty());
}

TEST(ShoppingList, NamesDishesThatCouldUseWhatIsLeft)
{
    ShopSupper supper;
    supper.serve(asking("Soup", {asks("cream", amount(100, Unit::Millilitre))}));
    supper.sell("cream", amount(300, Unit::Millilitre));
    for (const char* name : {"Trifle", "Soup", "Posset", "Caramel", "Anglaise"}) {
        Recipe other = asking(name, {asks("Cream", amount(100, Unit::Millilitre))});
        const RecipeId id = other.id;
        supper.repertoire[id] = std::make_shared<const Recipe>(std::move(other));
    }
    EXPECT_THAT(supper.line("cream").uses, ElementsAre("Anglaise", "Caramel", "Posset"));
}

// ---- properties

TEST(ShoppingListProperty, TotalsEqualTheSumOfTheRecipesNeedsForAnyMix)
{
    test::forEachSeed(200, [](test::Random& random) {
        ShopSupper supper;
        std::map<std::string, Rational> expected;
        const auto dishes = static_cast<int>(random.between(1, 5));
        for (int d = 0; d < dishes; ++d) {
            std::vector<IngredientLine> lines;
            std::map<std::string, Rational> asked;
            for (const char* name : {"flour", "butter", "sugar", "plum"}) {
                if (random.oneIn(2)) {
                    const Rational grams{random.between(1, 900), random.between(1, 8)};
                    lines.push_back(asks(name, {grams, Unit::Gram}));
                    asked[name] = grams;
                }
            }
            Recipe recipe = asking("Dish " + std::to_string(d), std::move(lines));
            recipe.portions = Portions{random.between(1, 12)};
            const Rational factor =
                Portions{random.between(0, 20), random.between(1, 4)} / recipe.portions;
            Dish& dish = supper.serve(recipe);
            dish.mix[0].portions = factor * recipe.portions;
            for (const auto& [name, grams] : asked) {
                if (factor > Rational{0}) {
                    Rational& sum = expected[factsOf(name, {}).key];
                    sum = sum + grams * factor;
                }
            }
        }
        const ShoppingList list = supper.list();
        ASSERT_EQ(list.lines.size(), expected.size());
        for (const ShoppingLine& line : list.lines) {
            // Fractions finer than a hundred-thousandth are rounded up to a milligram.
            const Rational over = line.needed.value - expected.at(line.key);
            EXPECT_GE(over, Rational{0});
            EXPECT_LE(over, Rational(1, 100)) << line.key;
            EXPECT_GE(line.toBuy.value, line.needed.value);
        }
    });
}

TEST(ShoppingListProperty, PartsNeverExceedTheWholesThatAreBought)
{
    test::forEachSeed(200, [](test::Random& random) {
        ShopSupper supper;
        supper.knowFruitAndEggs();
        std::map<IngredientPart, Rational> used;
        Rational whole;
        for (int d = 0; d < 4; ++d) {
            const Rational count{random.between(1, 30), random.between(1, 3)};
            const IngredientPart part = random.oneIn(4)   ? IngredientPart::Whole
                                        : random.oneIn(2) ? yolk
                                                          : white;
            supper.serve(asking("Dish " + std::to_string(d),
                                {asks("gull egg", {count, Unit::Piece}, part)}));
            Rational& sum = part == IngredientPart::Whole ? whole : used[part];
            sum = sum + count;
        }
        const ShoppingLine egg = supper.line("gull egg");
        for (const auto& [part, count] : used) {
            EXPECT_LE(count, egg.toBuy.value - whole);
        }
        EXPECT_EQ(egg.needed.value, whole + std::max(used[yolk], used[white]));
        EXPECT_LT(egg.toBuy.value - egg.needed.value, Rational{1});
    });
}

TEST(ShoppingListProperty, ScalingByAAndThenByBIsScalingByAB)
{
    test::forEachSeed(100, [](test::Random& random) {
        const Rational a{random.between(1, 6), random.between(1, 4)};
        const Rational b{random.between(1, 6), random.between(1, 4)};
        const auto neededAt = [&random, seed = random.seed()](const Portions& portions) {
            test::Random same(seed);
            static_cast<void>(random);
            ShopSupper supper;
            Dish& dish = supper.serve(
                asking("Soup", {asks("onion", {Rational{same.between(1, 900)}, Unit::Gram})}));
            dish.mix[0].portions = portions;
            return supper.line("onion").needed.value;
        };
        EXPECT_EQ(neededAt(Portions{8} * a) * b, neededAt(Portions{8} * a * b));
    });
}

} // namespace

} // namespace suppertide::shopping
