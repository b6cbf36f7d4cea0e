// Amounts as a kitchen measures them: what is shown, read back, is what is stored within the stated
// rounding.
#include <gtest/gtest.h>

#include <map>
#include <sstream>

#include "core/quantity/kitchen_text.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {
namespace {

using enum MeasureSystem;

std::string us(const Amount& amount)
{
    return kitchenText(amount, UsCustomary);
}

std::string imperial(const Amount& amount)
{
    return kitchenText(amount, Imperial);
}

std::string metric(const Amount& amount)
{
    return kitchenText(amount, Metric);
}

TEST(KitchenText, MetricIsWhatScaleAndJugShow)
{
    EXPECT_EQ(metric({Rational{233}, Unit::Gram}), "235 g");
    EXPECT_EQ(metric({Rational{5, 2}, Unit::Gram}), "2.5 g");
    EXPECT_EQ(metric({Rational{1, 10}, Unit::Gram}), "0.5 g");
    EXPECT_EQ(metric({Rational{12, 10}, Unit::Kilogram}), "1.2 kg");
    EXPECT_EQ(metric({Rational{1}, Unit::UsCup}), "235 ml");
    EXPECT_EQ(metric({Rational{1}, Unit::Pound}), "455 g");
    EXPECT_EQ(metric({Rational{1}, Unit::UsTablespoon}), "1 tbsp");
    EXPECT_EQ(metric({Rational{4, 3}, Unit::Tablespoon}), "1 tbsp + 1 tsp");
    EXPECT_EQ(metric({Rational{7, 8}, Unit::Teaspoon}), "¾ tsp + ⅛ tsp");
    EXPECT_EQ(metric({Rational{1}, Unit::Inch}), "2.5 cm");
}

TEST(KitchenText, UsCustomaryIsCupsAndSpoons)
{
    EXPECT_EQ(us({Rational{1, 3}, Unit::UsCup}), "⅓ cup");
    EXPECT_EQ(us({Rational{4, 3}, Unit::UsCup}), "1⅓ cups");
    EXPECT_EQ(us({Rational{4}, Unit::UsTeaspoon}), "1 tbsp + 1 tsp");
    EXPECT_EQ(us({Rational{1, 8}, Unit::UsTeaspoon}), "⅛ tsp");
    EXPECT_EQ(us({Rational{3, 8}, Unit::UsTeaspoon}), "¼ tsp + ⅛ tsp");
    EXPECT_EQ(us({Rational{5, 8}, Unit::UsTeaspoon}), "½ tsp + ⅛ tsp");
    EXPECT_EQ(us({Rational{3, 4}, Unit::UsTeaspoon}), "¾ tsp");
    EXPECT_EQ(us({Rational{15, 16}, Unit::UsTeaspoon}), "1 tsp");
    EXPECT_EQ(us({Rational{80}, Unit::Millilitre}), "⅓ cup");
    EXPECT_EQ(us({Rational{5}, Unit::UsTablespoon}), "¼ cup + 1 tbsp");
    EXPECT_EQ(us({Rational{1}, Unit::Litre}), "1 quart + ¼ cup");
    EXPECT_EQ(us({Rational{510}, Unit::Gram}), "1 lb 2 oz");
    EXPECT_EQ(us({Rational{100}, Unit::Gram}), "3½ oz");
    EXPECT_EQ(us({Rational{5}, Unit::Centimetre}), "2 inches");
}

TEST(KitchenText, ImperialIsPintsAndOunces)
{
    EXPECT_EQ(imperial({Rational{568}, Unit::Millilitre}), "1 pint");
    EXPECT_EQ(imperial({Rational{1}, Unit::Litre}), "1 pint 15 fl oz");
    EXPECT_EQ(imperial({Rational{1}, Unit::UsCup}), "8½ fl oz");
    EXPECT_EQ(imperial({Rational{2}, Unit::Tablespoon}), "2 tbsp");
    EXPECT_EQ(imperial({Rational{2}, Unit::Kilogram}), "4 lb 6½ oz");
}

TEST(KitchenText, CountsStayWhatTheyAre)
{
    EXPECT_EQ(us({Rational{3}, Unit::Clove}), "3 cloves");
    EXPECT_EQ(metric({Rational{1}, Unit::Pinch}), "a pinch");
    EXPECT_EQ(metric({Rational{1, 16}, Unit::Piece}), "¼");
    EXPECT_EQ(imperial({Rational{0}, Unit::ToTaste}), "to taste");
}

TEST(KitchenText, ShowsBothEndsOfARange)
{
    EXPECT_EQ(us({Rational{2}, Unit::UsCup, Rational{3}}), "2–3 cups");
    EXPECT_EQ(metric({Rational{900}, Unit::Gram, Rational{1200}}), "900 g – 1.2 kg");
    EXPECT_EQ(metric({Rational{2}, Unit::Clove, Rational{3}}), "2–3 cloves");
    EXPECT_EQ(us({
                  Rational{2},
                  Unit::UsTablespoon,
                  Rational{10},
              }),
              "2 tbsp – ½ cup + 2 tbsp");
    EXPECT_EQ(metric({Rational{1000}, Unit::Gram, Rational{1003}}), "1 kg");
}

/// Reads what is shown with nothing of the program's own: figures, glyphs, and the size of each
/// measure in grams or millilitres to 10 digits (NIST Handbook 44, Appendix C; Weights and
/// Measures Act 1985).
double readBack(std::string text, MeasureSystem system)
{
    static const std::map<std::string, std::string> glyphs{
        {"¼", ".25"},  {"½", ".5"},   {"¾", ".75"},  {"⅓", ".333333333333"}, {"⅔", ".666666666667"},
        {"⅛", ".125"}, {"⅜", ".375"}, {"⅝", ".625"}, {"⅞", ".875"}};
    for (const auto& [glyph, digits] : glyphs) {
        for (auto at = text.find(glyph); at != std::string::npos; at = text.find(glyph)) {
            text.replace(at, glyph.size(), digits);
        }
    }
    const bool isUs = system == UsCustomary;
    const std::map<std::string, double> sizes{{"g", 1},
                                              {"kg", 1000},
                                              {"ml", 1},
                                              {"l", 1000},
                                              {"tsp", isUs ? 4.92892159375 : 5},
                                              {"tbsp", isUs ? 14.78676478125 : 15},
                                              {"cup", 236.5882365},
                                              {"cups", 236.5882365},
                                              {"quart", 946.352946},
                                              {"quarts", 946.352946},
                                              {"fl", 28.4130625},
                                              {"pint", 568.26125},
                                              {"pints", 568.26125},
                                              {"oz", 28.349523125},
                                              {"lb", 453.59237}};
    std::istringstream words(text);
    double sum = 0;
    std::string figure;
    while (words >> figure) {
        if (figure == "+") {
            continue;
        }
        std::string unit;
        words >> unit;
        EXPECT_TRUE(sizes.contains(unit)) << text;
        sum += std::stod(figure) * sizes.at(unit);
        if (unit == "fl") {
            words >> unit;
        }
    }
    return sum;
}

TEST(KitchenText, ReadBackIsWithinTheStatedRounding)
{
    test::forEachSeed(4000, [](test::Random& random) {
        constexpr std::array units{
            Unit::Gram,         Unit::Kilogram,     Unit::Millilitre, Unit::Litre,  Unit::Teaspoon,
            Unit::Tablespoon,   Unit::UsCup,        Unit::UsTeaspoon, Unit::Ounce,  Unit::Pound,
            Unit::ImperialPint, Unit::UsFluidOunce, Unit::MetricCup,  Unit::UsQuart};
        const Unit unit = units.at(static_cast<std::size_t>(random.between(0, 13)));
        const Amount amount{Rational{random.between(1, 3000), random.between(1, 700)}, unit};
        for (const MeasureSystem system : allMeasureSystems) {
            const std::string text = kitchenText(amount, system);
            const double stored = amount.value.toDouble() * sizeOf(unit).toDouble();
            const double step = measuredOut(amount, system).step.toDouble();
            const double off = std::abs(readBack(text, system) - stored);
            EXPECT_LE(off, (stored < step ? step : step / 2) * (1 + 1e-6))
                << amount.value.text() << " " << symbolOf(unit) << " shown as " << text;
            // Common practice: an eighth more or less of anything that is measured in a spoon or
            // more is not noticed, of raising agents neither. Most is a sixteenth of a teaspoon in
            // half of one, half a tablespoon in four.
            if (stored > 2.5) {
                EXPECT_LE(off, stored * 0.1251) << stored << " shown as " << text;
            }
            EXPECT_EQ(kitchenText(amount, system), text);
        }
    });
}

TEST(KitchenText, IsTheSameForTheSameAmountInAnyUnitOfItsKind)
{
    test::forEachSeed(300, [](test::Random& random) {
        const Amount cups{Rational{random.between(1, 200), random.between(1, 24)}, Unit::UsCup};
        EXPECT_EQ(us(cups), us(*inUnit(cups, Unit::UsFluidOunce)));
        EXPECT_EQ(imperial(cups), imperial(*inUnit(cups, Unit::UsPint)));
    });
}

TEST(KitchenText, IsShownForWhatScalingHasMadeLong)
{
    Amount amount{Rational{1}, Unit::UsCup};
    for (const int portions : {7, 11, 13, 17, 19, 23}) {
        amount = scaled(amount, Rational{portions, portions - 2});
    }
    EXPECT_FALSE(us(amount).empty());
    EXPECT_FALSE(metric(amount).empty());
}

TEST(MeasureSystems, HaveNames)
{
    for (const MeasureSystem system : allMeasureSystems) {
        EXPECT_EQ(findMeasureSystem(nameOf(system)), system);
    }
    EXPECT_EQ(findMeasureSystem("babylonian"), std::nullopt);
}

} // namespace
} // namespace suppertide
