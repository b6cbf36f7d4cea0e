// Ingredient lines on the page of a recipe: amounts, rules and pasted text as a cook types them.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/larder/larder.h"
#include "ui/models/ingredient_words.h"
#include "ui/models/reading.h"
#include "ui/models/recipe_outline.h"

namespace suppertide::ui {
namespace {

LibraryState withOneRecipe()
{
    LibraryState library;
    Recipe recipe = emptyRecipe(library, "Tart");
    recipe.id = RecipeId{"tart"};
    library.recipes.emplace(recipe.id, std::make_shared<const Recipe>(recipe));
    return library;
}

TEST(FieldsOfLines, ReadAmountsInAnyUnitAndRanges)
{
    EXPECT_EQ(*readAmount("2–3 cloves"), (Amount{Rational{2}, Unit::Clove, Rational{3}}));
    EXPECT_EQ(*readAmount("2 to 3 US cups"), (Amount{Rational{2}, Unit::UsCup, Rational{3}}));
    EXPECT_EQ(*readAmount("1½ imperial pint"), (Amount{Rational(3, 2), Unit::ImperialPint}));
    EXPECT_EQ(*readAmount("8 oz"), (Amount{Rational{8}, Unit::Ounce}));
    EXPECT_FALSE(readAmount("3-2 g"));
    EXPECT_FALSE(readAmount("2 cups")); // of which country?
    EXPECT_FALSE(readAmount("2 –"));
}

TEST(FieldsOfLines, ShowAmountsAsTheyAreReadAgain)
{
    for (const Unit unit : allUnits) {
        const Amount amount{Rational{unit == Unit::ToTaste ? 0 : 2}, unit};
        const auto read = readAmount(fieldText(amount));
        ASSERT_TRUE(read) << fieldText(amount);
        EXPECT_EQ(*read, amount) << fieldText(amount);
    }
    const Amount range{Rational(1, 2), Unit::UsCup, Rational(3, 4)};
    EXPECT_EQ(*readAmount(fieldText(range)), range);
}

TEST(FieldsOfLines, ReadRulesOfScalingAsTheyAreShown)
{
    for (const LineScaling& rule :
         {LineScaling{InProportion{}}, LineScaling{SameForAny{}}, LineScaling{EachBatch{}},
          LineScaling{EachBatch{Portions{6}}}, LineScaling{ByPower{}},
          LineScaling{ByPower{Rational(3, 4)}}, LineScaling{ByMould{RoundMould{24_cm}}},
          LineScaling{ByMould{RectangularMould{20_cm, 20_cm}}},
          LineScaling{ByMould{RectangularMould{Length::ofSmallest(205), 30_cm}}}}) {
        const auto read = readLineScaling(fieldText(rule));
        ASSERT_TRUE(read) << fieldText(rule);
        EXPECT_EQ(*read, rule) << fieldText(rule);
    }
    for (const char* text : {"often", "power 2", "per batch of 0", "mould", "mould round",
                             "mould round 0.5 cm", "mould 20 cm", "square rot"}) {
        EXPECT_FALSE(readLineScaling(text)) << text;
    }
}

TEST(PastedLines, BecomeIngredientsOfTheRecipe)
{
    const LibraryState library = withOneRecipe();
    const RecipeOutline outline(RecipeId{"tart"});
    const auto edit = outline.set(library, "recipe", "paste",
                                  std::string("2 cups flour, sifted\n1 stick butter\n"));
    ASSERT_TRUE(edit);
    const auto& lines = edit->next.recipes.at(RecipeId{"tart"})->common.lines;
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_EQ(lines[0].amount, (Amount{Rational{2}, Unit::UsCup}));
    EXPECT_EQ(lines[0].note, "sifted");
    EXPECT_EQ(lines[1].ingredient, "butter");
    // The field is empty again, and what was there before is left alone.
    const auto fields = outline.fields(edit->next, "recipe");
    const auto paste = std::ranges::find(fields, "paste", &Field::key);
    ASSERT_NE(paste, fields.end());
    EXPECT_EQ(std::get<std::string>(paste->value), "");
    EXPECT_FALSE(outline.set(library, "recipe", "paste", std::string("For the sauce:\n")));
}

TEST(UsdaFigures, AreOfferedForWhatIsNotKnownAndKeptAsOnesOwn)
{
    const LibraryState library = withOneRecipe();
    const RecipeOutline outline(RecipeId{"tart"});
    const auto pasted =
        outline.set(library, "recipe", "paste", std::string("2 cups salsify\n1 leek\n"));
    ASSERT_TRUE(pasted);
    EXPECT_TRUE(
        std::ranges::none_of(outline.commands(pasted->next, "line:leek"),
                             [](const RowCommand& each) { return each.key.starts_with("usda:"); }));
    const auto commands = outline.commands(pasted->next, "line:salsify");
    const auto offered = std::ranges::find_if(
        commands, [](const RowCommand& each) { return each.key.starts_with("usda:"); });
    ASSERT_NE(offered, commands.end());
    const auto edit = outline.run(pasted->next, "line:salsify", offered->key);
    ASSERT_TRUE(edit);
    const OwnIngredient* own = findOwn(larderOf(edit->next), "salsify");
    ASSERT_NE(own, nullptr);
    EXPECT_TRUE(own->litreWeighs);
    EXPECT_FALSE(own->contains);
    EXPECT_TRUE(
        ingredientFacts(edit->next, "salsify", {Rational{1}, Unit::UsCup}, IngredientPart::Whole)
            .contains(QStringLiteral("check the label; this weighs")));
}

TEST(IngredientFactsOnThePage, SayWhatIsKnownAndWhatIsNot)
{
    const LibraryState library;
    EXPECT_EQ(ingredientFacts(library, "All-purpose flour", {Rational{1}, Unit::Litre},
                              IngredientPart::Whole),
              QStringLiteral("Known as plain flour: baking; contains wheat; this weighs 530 g."));
    EXPECT_TRUE(ingredientFacts(library, "egg", {Rational{3}, Unit::Litre}, IngredientPart::Whole)
                    .contains(QStringLiteral("not measured by volume")));
    EXPECT_TRUE(
        ingredientFacts(library, "moon dust", {Rational{1}, Unit::Gram}, IngredientPart::Whole)
            .startsWith(QStringLiteral("Not in the table")));
    EXPECT_TRUE(
        ingredientFacts(library, "pesto", {Rational{0}, Unit::ToTaste}, IngredientPart::Whole)
            .contains(QStringLiteral("check the label (it may contain")));
}

} // namespace
} // namespace suppertide::ui
