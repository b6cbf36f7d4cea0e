// What is said of ingredients, stock and prices is found again, merged, and refused where it cannot
// be.
#include <gtest/gtest.h>

#include "core/larder/larder.h"

namespace suppertide {

namespace {

OwnIngredient own(std::string name)
{
    OwnIngredient ingredient;
    ingredient.name = std::move(name);
    return ingredient;
}

/// The sentences of all faults.
std::string saidOf(const Larder& larder)
{
    std::string text;
    for (const LarderFault& fault : faultsOf(larder)) {
        text += fault.place + ": " + fault.sentence + "\n";
    }
    return text;
}

TEST(Larder, ComparesNamesWhateverTheirCaseAndSpaces)
{
    EXPECT_EQ(ingredientKey("  Plain \t flour "), "plain flour");
    EXPECT_EQ(ingredientKey("garlic cloves"), ingredientKey("Garlic clove"));
    EXPECT_EQ(ingredientKey(" \n"), "");
}

TEST(Larder, FindsAnIngredientByItsNameOrASynonym)
{
    Larder larder;
    larder.ingredients = {own("Sea beet"), own("dulse")};
    larder.ingredients[1].synonyms = {"dillisk"};
    EXPECT_EQ(findOwn(larder, "sea  BEET"), &larder.ingredients[0]);
    EXPECT_EQ(findOwn(larder, "Dillisk"), &larder.ingredients[1]);
    EXPECT_EQ(findOwn(larder, "samphire"), nullptr);
}

TEST(Larder, GoesByTheLatestReadingOfALabel)
{
    Larder larder;
    larder.labels = {{"stock cube", {Substance::Celery}, CivilDate{2027, 3, 1}, "the old box"},
                     {"Stock cube", {}, CivilDate{2027, 5, 1}, "the new one"},
                     {"stock cube", {Substance::Wheat}, std::nullopt, "some time"}};
    ASSERT_NE(findLabel(larder, "stock cube"), nullptr);
    EXPECT_EQ(findLabel(larder, "stock cube")->note, "the new one");
    EXPECT_EQ(findLabel(larder, "mustard"), nullptr);
}

// Source: ISO 4217, list one.
TEST(Larder, WritesPricesInTheCoinsOfTheirCurrency)
{
    EXPECT_EQ(priceText(1250, "GBP"), "12.50 GBP");
    EXPECT_EQ(priceText(5, "EUR"), "0.05 EUR");
    EXPECT_EQ(priceText(-120, "EUR"), "-1.20 EUR");
    EXPECT_EQ(priceText(300, "JPY"), "300 JPY");
    EXPECT_EQ(priceText(1250, "KWD"), "1.250 KWD");
}

TEST(Larder, MergesByNameAndKeepsWhatIsNotNamed)
{
    Larder larder;
    larder.ingredients = {own("dulse"), own("sea beet")};
    larder.packs = {{"flour", {Rational{500}, Unit::Gram}, 90, "bag"}};
    Larder added;
    added.ingredients = {own("Dulse"), own("samphire")};
    added.ingredients[0].keepsDays = 30;
    added.packs = {{"flour", {Rational{500}, Unit::Gram}, 95, "bag"},
                   {"flour", {Rational{1}, Unit::Kilogram}, 160, "bag"}};
    const Larder both = merged(larder, added);
    ASSERT_EQ(both.ingredients.size(), 3U);
    EXPECT_EQ(both.ingredients[0].keepsDays, 30);
    ASSERT_EQ(both.packs.size(), 2U);
    EXPECT_EQ(both.packs[0].price, 95);
}

TEST(Larder, FindsNothingWrongWithAFullOne)
{
    Larder larder;
    larder.ingredients = {own("dulse")};
    larder.ingredients[0].litreWeighs = 25'000_g;
    larder.ingredients[0].pieceWeighs = Grams::ofSmallest(1);
    larder.ingredients[0].ediblePercent = 100;
    larder.ingredients[0].keepsDays = 3660;
    larder.ingredients[0].parts = {{IngredientPart::Leaves, {Rational{1, 2}, Unit::Gram}}};
    larder.stock = {{"salt", {Rational{0}, Unit::ToTaste}, std::nullopt, true, ""},
                    {"flour", {Rational{0}, Unit::Gram}, CivilDate{2028, 2, 29}, false, ""}};
    larder.packs = {{"flour", {Rational{1}, Unit::Gram}, 0, ""}};
    EXPECT_EQ(saidOf(larder), "");
}

TEST(Larder, SaysWhatCannotBe)
{
    Larder larder;
    larder.ingredients = {own("dulse"), own("Dulse"), own(" ")};
    larder.ingredients[0].litreWeighs = Grams::ofSmallest(25'000'001);
    larder.ingredients[0].pieceWeighs = 0_g;
    larder.ingredients[1].ediblePercent = 101;
    larder.ingredients[1].keepsDays = 3661;
    larder.ingredients[1].parts = {{IngredientPart::Juice, {Rational{0}, Unit::Millilitre}}};
    larder.stock = {{"flour", {Rational{-1}, Unit::Gram}, CivilDate{2027, 2, 29}, false, ""}};
    larder.packs = {{"flour", {Rational{0}, Unit::Gram}, -1, ""}};
    larder.currency = "£";
    EXPECT_EQ(saidOf(larder),
              "ingredient “dulse”: A litre weighs more than nothing and at most 25 kg.\n"
              "ingredient “dulse”: A piece weighs more than nothing and at most 100 kg.\n"
              "ingredient “Dulse”: “Dulse” stands in the larder twice. Keep one.\n"
              "ingredient “Dulse”: What is left to eat of it lies between 1 and 100 %.\n"
              "ingredient “Dulse”: It keeps between 0 and 3660 days.\n"
              "ingredient “Dulse”: A part of it is more than nothing: write how much one gives.\n"
              "ingredient “ ”: It names no ingredient. Give it a name.\n"
              "at home, “flour”: There cannot be less than nothing of it.\n"
              "at home, “flour”: There is no day 2027-02-29 in the calendar.\n"
              "pack of “flour”: A pack holds more than nothing. Write how much, like 500 g.\n"
              "pack of “flour”: A price lies between 0 and 1000000.00 £.\n"
              "currency: “£” is no currency. Write its three letters, like GBP.\n");
}

} // namespace

} // namespace suppertide
