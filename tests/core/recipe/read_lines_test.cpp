// Lines of recipes from pasted text.
#include <gtest/gtest.h>

#include "core/recipe/read_lines.h"

namespace suppertide {
namespace {

TEST(ReadLines, BecomeLinesOfARecipeWithAllThatWasWritten)
{
    const auto lines = linesFrom("For the tart:\n250 g plain flour, sifted, plus more for dusting\n"
                                 "1 tin (400 g) tomatoes\nSalt\n2 egg yolks\n",
                                 MeasureSystem::Metric, {LineId{"salt"}});
    ASSERT_EQ(lines.size(), 4U);
    EXPECT_EQ(lines[0].id, LineId{"plain-flour"});
    EXPECT_EQ(lines[0].ingredient, "plain flour");
    EXPECT_EQ(lines[0].note, "sifted, plus more for dusting");
    EXPECT_EQ(lines[1].amount, (Amount{Rational{1}, Unit::Tin}));
    EXPECT_EQ(lines[1].also, (Amount{Rational{400}, Unit::Gram}));
    EXPECT_EQ(lines[2].amount.unit, Unit::ToTaste);
    EXPECT_EQ(lines[2].id, LineId{"salt-2"});
    EXPECT_EQ(lines[3].part, IngredientPart::Yolk);
    // What they contain is left to the table, not said to be nothing.
    for (const IngredientLine& line : lines) {
        EXPECT_FALSE(line.contains);
    }
}

TEST(ReadLines, TellWhoseCupsTheyMean)
{
    EXPECT_EQ(systemOf("2 cups flour\n1 tsp salt"), MeasureSystem::UsCustomary);
    EXPECT_EQ(systemOf("8 oz. cheese"), MeasureSystem::UsCustomary);
    EXPECT_EQ(systemOf("1 cup (250 ml) milk"), MeasureSystem::Metric);
    EXPECT_EQ(systemOf("250g flour\n1 cup milk"), MeasureSystem::Metric);
    EXPECT_EQ(systemOf("2 tbsp oil"), MeasureSystem::Metric);
    EXPECT_EQ(systemOf(""), MeasureSystem::Metric);
}

} // namespace
} // namespace suppertide
