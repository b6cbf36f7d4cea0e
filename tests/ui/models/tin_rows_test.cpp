// Other tins on the page of a recipe: what is read there is what the menu page would make of them.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/plan/other_tins.h"
#include "tests/support/demo_evening.h"
#include "ui/models/mould_fields.h"
#include "ui/models/recipe_outline.h"
#include "ui/models/tin_rows.h"

namespace suppertide::ui {
namespace {

using namespace Qt::StringLiterals;

const RecipeId pavlova{"rhubarb-pavlova"};

/// The demo with its pavlova in a tin of 28 cm.
LibraryState withTin()
{
    LibraryState library = test::demoLibrary();
    Recipe recipe = *library.recipes.at(pavlova);
    recipe.common.lines.front().scaling = ByMould{RoundMould{28_cm}};
    return withRecipe(library, recipe);
}

TEST(TinRows, AreOnlyThereForARecipeThatGoesByATin)
{
    EXPECT_TRUE(tinRows(test::demoLibrary(), *test::demoLibrary().recipes.at(pavlova)).empty());
    LibraryState closed = withTin();
    EXPECT_FALSE(tinRows(closed, *closed.recipes.at(pavlova)).empty());
    closed.open.reset();
    EXPECT_TRUE(tinRows(closed, *closed.recipes.at(pavlova)).empty()) << "no kitchen is open";
}

TEST(TinRows, SayAmountsAndTimesInTheWordsOfTheMenuPage)
{
    const LibraryState library = withTin();
    const Recipe& recipe = *library.recipes.at(pavlova);
    const auto tins = otherTins(recipe, *openKitchen(library));
    const auto rows = RecipeOutline(pavlova).rows(library);
    const auto row = [&](const std::string& id) {
        const auto there =
            std::find_if(rows.begin(), rows.end(), [&](const auto& each) { return each.id == id; });
        return there == rows.end() ? OutlineRow{} : *there;
    };
    ASSERT_EQ(tins.size(), 2U) << "the gratin dish and the small roasting tin";
    EXPECT_EQ(row("tins").kind, RowKind::Heading);
    EXPECT_EQ(row("tin:gratin-dish").title, u"Gratin dish"_s);
    EXPECT_EQ(row("tin:gratin-dish").detail, u"round 32 cm"_s);
    const std::string deep = "tin:gratin-dish/tin-filled:deep";
    EXPECT_EQ(row(deep).title, menu::filledAsDeep());
    // (32/28)² = 64/49, of eight.
    EXPECT_EQ(row(deep + "/tin-line:serves").detail, u"10¼"_s);
    const OutlineRow line = row(deep + "/tin-line:0");
    EXPECT_EQ(line.title.toStdString(), recipe.common.lines.front().ingredient);
    ASSERT_TRUE(line.amount);
    EXPECT_EQ(line.amount->value, recipe.common.lines.front().amount.value * Rational(64, 49));
    const OutlineRow step = row("tin:small-tins/tin-filled:same/tin-step:0");
    EXPECT_EQ(row("tin:small-tins/tin-filled:same").title, menu::filledWithTheSame());
    EXPECT_FALSE(step.title.isEmpty());
    EXPECT_TRUE(step.detail.contains(u" to "_s)) << step.detail.toStdString();
}

TEST(TinRows, AreReadAndNotChanged)
{
    const LibraryState library = withTin();
    const RecipeOutline outline(pavlova);
    int seen = 0;
    for (const OutlineRow& row : outline.rows(library)) {
        if (row.id.rfind("tin", 0) == 0) {
            ++seen;
            EXPECT_TRUE(outline.fields(library, row.id).empty()) << row.id;
            EXPECT_TRUE(outline.commands(library, row.id).empty()) << row.id;
            EXPECT_FALSE(outline.run(library, row.id, "remove")) << row.id;
        }
    }
    EXPECT_GE(seen, 10);
}

} // namespace
} // namespace suppertide::ui
