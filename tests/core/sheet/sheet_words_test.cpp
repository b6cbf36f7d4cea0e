#include <gtest/gtest.h>

#include "core/sheet/sheet_words.h"

namespace suppertide {
namespace {

ScaledLine line(const std::string& ingredient, Rational value, Unit unit,
                IngredientPart part = IngredientPart::Whole, const std::string& note = {})
{
    return {LineId{"line"}, ingredient, part, {value, unit}, note};
}

TEST(AmountLine, SaysAmountThingAndNote)
{
    EXPECT_EQ(amountLine(line("double cream", Rational{500}, Unit::Millilitre)),
              "500 ml double cream");
    EXPECT_EQ(amountLine(line("nutmeg", Rational{1}, Unit::Pinch)), "a pinch of nutmeg");
    EXPECT_EQ(amountLine(line("salt", Rational{0}, Unit::ToTaste)), "salt to taste");
    EXPECT_EQ(amountLine(line("egg", Rational{3}, Unit::Piece)), "3 × egg");
    EXPECT_EQ(
        amountLine(line("butter", Rational{25}, Unit::Gram, IngredientPart::Whole, "cold, diced")),
        "25 g butter (cold, diced)");
}

TEST(AmountLine, IsInTheMeasuresOfWhoReadsIt)
{
    ReadingStyle us;
    us.measures = MeasureSystem::UsCustomary;
    EXPECT_EQ(amountLine(line("double cream", Rational{500}, Unit::Millilitre), us),
              "2 cups + 2 tbsp double cream");
    EXPECT_EQ(amountLine(line("butter", Rational{25}, Unit::Gram), us), "25 g butter");
    EXPECT_EQ(amountLine(line("lamb", Rational{2600}, Unit::Gram), us), "5 lb 12 oz lamb");
    EXPECT_EQ(amountLine(line("egg", Rational{3}, Unit::Piece), us), "3 × egg");
    EXPECT_EQ(amountLine(line("salt", Rational{0}, Unit::ToTaste), us), "salt to taste");
}

TEST(AmountLine, SaysWhichPartOfAWhole)
{
    EXPECT_EQ(amountLine(line("egg", Rational{6}, Unit::Piece, IngredientPart::White)),
              "6 × egg white");
    EXPECT_EQ(amountLine(line("lemon", Rational(3, 4), Unit::Piece, IngredientPart::Zest)),
              "zest of ¾ lemon");
    EXPECT_EQ(amountLine(line("lemon", Rational{1}, Unit::Teaspoon, IngredientPart::Juice)),
              "1 tsp lemon juice");
    EXPECT_EQ(amountLine(line("vanilla pod", Rational(1, 4), Unit::Piece, IngredientPart::Seeds)),
              "seeds of ¼ vanilla pod");
    EXPECT_EQ(amountLine(line("rhubarb", Rational{480}, Unit::Gram, IngredientPart::Stalks,
                              "leaves binned")),
              "480 g rhubarb stalks (leaves binned)");
}

TEST(AmountLine, SaysNoPartTwice)
{
    EXPECT_EQ(amountLine(line("lamb bones", Rational{370}, Unit::Gram, IngredientPart::Bones)),
              "370 g lamb bones");
    EXPECT_EQ(amountLine(line("bay leaf", Rational{1}, Unit::Piece, IngredientPart::Leaves)),
              "1 × bay leaf");
    EXPECT_EQ(
        amountLine(line("mixed salad leaves", Rational{140}, Unit::Gram, IngredientPart::Leaves)),
        "140 g mixed salad leaves");
}

TEST(TemperaturesInWords, StayAsTheyAreForWhoReadsCelsius)
{
    EXPECT_EQ(inStyle("below 8 °C", {}), "below 8 °C");
}

TEST(TemperaturesInWords, BecomeFahrenheit)
{
    // 8 °C = 46.4 °F, 82 °C = 179.6 °F, 85 °C = 185 °F (°F = °C × 1.8 + 32: NIST SP 811 (2008),
    // B.8); above boiling the nearest 5 °F that a knob shows.
    const ReadingStyle american{true, false};
    EXPECT_EQ(inStyle("below 8 °C before the fridge", american), "below 46 °F before the fridge");
    EXPECT_EQ(inStyle("82 °C, it coats the spoon; above 85 °C it curdles", american),
              "180 °F, it coats the spoon; above 185 °F it curdles");
    EXPECT_EQ(inStyle("at 160–180 °C", american), "at 320–355 °F");
    EXPECT_EQ(inStyle("between 60 and 63 °C", american), "between 140 and 145 °F");
    EXPECT_EQ(inStyle("from −18 to 4 °C", american), "from 0 to 39 °F");
}

TEST(TemperaturesInWords, LeaveWhatIsNoTemperatureAlone)
{
    const ReadingStyle american{true, false};
    EXPECT_EQ(inStyle("", american), "");
    EXPECT_EQ(inStyle("2 mm, 45 min", american), "2 mm, 45 min");
    EXPECT_EQ(inStyle("as many °C as it takes", american), "as many °C as it takes");
    EXPECT_EQ(inStyle("exactly 62.5 °C", american), "exactly 62.5 °C");
}

} // namespace
} // namespace suppertide
