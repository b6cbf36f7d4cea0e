// Ingredient lines on the page of a recipe: amounts, rules and pasted text as a cook types them.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/larder/larder.h"
#include "ui/models/ingredient_words.h"
#include "ui/models/pasted_lines.h"
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

TEST(PastedLines, GoIntoAMethodAndAVariantToo)
{
    LibraryState library = withOneRecipe();
    Recipe recipe = *library.recipes.at(RecipeId{"tart"});
    recipe.common.lines.push_back({});
    recipe.common.lines.back().id = LineId{"leek"};
    recipe.methods = {{MethodChoiceId{"how"}, "how", {{MethodId{"pan"}, "in a pan", 0, {}}}}};
    library.recipes.insert_or_assign(recipe.id, std::make_shared<const Recipe>(recipe));
    const RecipeOutline outline(recipe.id);
    const auto method =
        outline.set(library, "choice:how/method:pan", "paste", std::string("1 leek\n"));
    ASSERT_TRUE(method) << method.error().forCook;
    const auto& inMethod = method->next.recipes.at(recipe.id)->methods[0].methods[0].part.lines;
    ASSERT_EQ(inMethod.size(), 1U);
    EXPECT_EQ(inMethod[0].id, LineId{"leek-2"}); // “leek” is taken by the common part
    const auto variant = outline.set(library, "variant:plain", "paste", std::string("2 eggs\n"));
    ASSERT_TRUE(variant);
    EXPECT_EQ(variant->next.recipes.at(recipe.id)->variants[0].adds.lines.size(), 1U);
}

TEST(PastedLines, AreShownAsTheyWillBeTaken)
{
    const std::string text = "For the crust:\n2 cups flour, sifted\n\n  1 stick butter\n";
    const std::vector<std::string> written = linesIn(text);
    EXPECT_EQ(written, (std::vector<std::string>{"For the crust:", "2 cups flour, sifted",
                                                 "1 stick butter"}));
    const PastedLine heading = pastedLine(written[0], MeasureSystem::UsCustomary);
    EXPECT_FALSE(heading.isTaken());
    const PastedLine flour = pastedLine(written[1], MeasureSystem::UsCustomary);
    EXPECT_EQ(flour.read, "2 US cups · flour · sifted");
    const QString preview = previewHtml({heading, flour});
    EXPECT_TRUE(preview.contains(QStringLiteral("For the crust:"))) << "nothing is lost";
    EXPECT_TRUE(preview.contains(QStringLiteral("not read")));
    // As many are promised as are taken.
    const LibraryState library = withOneRecipe();
    const auto edit = RecipeOutline(RecipeId{"tart"}).set(library, "recipe", "paste", text);
    ASSERT_TRUE(edit);
    const auto promised = std::ranges::count_if(written, [](const std::string& line) {
        return pastedLine(line, MeasureSystem::UsCustomary).isTaken();
    });
    EXPECT_EQ(std::ssize(edit->next.recipes.at(RecipeId{"tart"})->common.lines), promised);
}

TEST(StepFields, SayWhatAVesselIsFilledWith)
{
    LibraryState library = withOneRecipe();
    const RecipeOutline outline(RecipeId{"tart"});
    const auto enter = [&](const char* field, const FieldValue& value) {
        const auto edit = outline.set(library, "step:make", field, value);
        ASSERT_TRUE(edit) << edit.error().forCook;
        library = edit->next;
    };
    const auto use = [&] {
        return library.recipes.at(RecipeId{"tart"})->common.steps.front().uses.front();
    };
    enter("appliance", std::string("blender"));
    enter("appliance-filled", std::string("2.4 l"));
    enter("appliance-full", std::int64_t{66});
    EXPECT_EQ(use(), (Use{ApplianceUse{"blender", Minutes{0}, Filling{decilitres(24), 66}}}));
    EXPECT_FALSE(outline.set(library, "step:make", "appliance-filled", std::string("much")));
    enter("appliance-filled", std::string(" "));
    EXPECT_EQ(use(), (Use{ApplianceUse{"blender", Minutes{0}, std::nullopt}}));
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
