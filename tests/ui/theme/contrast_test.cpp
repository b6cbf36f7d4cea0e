// The palette against the figures that the design promises (look.md §7), computed anew.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "ui/theme/palette.h"

namespace suppertide::ui {
namespace {

/// WCAG 2.2 (W3C Recommendation, 5 October 2023), "relative luminance" and "contrast ratio".
double relativeLuminance(const QColor& colour)
{
    const auto linear = [](double channel) {
        return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
           0.0722 * linear(colour.blueF());
}

double contrast(const QColor& a, const QColor& b)
{
    const double first = relativeLuminance(a);
    const double second = relativeLuminance(b);
    return (std::max(first, second) + 0.05) / (std::min(first, second) + 0.05);
}

double leastContrast(const std::vector<QColor>& marks, const std::vector<QColor>& grounds)
{
    double least = 21;
    for (const QColor& mark : marks) {
        for (const QColor& ground : grounds) {
            least = std::min(least, contrast(mark, ground));
        }
    }
    return least;
}

double leastContrast(const std::vector<Fill>& fills)
{
    double least = 21;
    for (const Fill& fill : fills) {
        least = std::min(least, contrast(fill.colour, fill.textOn));
    }
    return least;
}

std::vector<Fill> rolesOf(const Palette& palette)
{
    const Roles& r = palette.role;
    return {r.impossible, r.unsafe, r.undesirable, r.ok, r.selected, r.now, r.pinned};
}

std::vector<Fill> dishesOf(const Palette& palette)
{
    std::vector<Fill> fills;
    for (const DishFill& dish : palette.dishes) {
        fills.push_back(dish.fill);
    }
    return fills;
}

std::vector<QColor> coloursOf(const std::vector<Fill>& fills)
{
    std::vector<QColor> colours;
    for (const Fill& fill : fills) {
        colours.push_back(fill.colour);
    }
    return colours;
}

/// The least ratios of look.md §7, row by row; both the figure promised and the need are checked.
struct Promise
{
    Appearance appearance;
    double ink, ink2, ink2OnAreas, roleWords, textOnDish, textOnRole, heatLine, coldLine, dish,
        dishOnPanel, pattern, roleShapes, line, lineOnAreas;
};

constexpr Promise promises[]{
    {Appearance::Light, 10.54, 6.49, 6.07, 4.66, 4.69, 5.72, 4.70, 5.20, 3.12, 3.26, 3.76, 4.47,
     3.48, 3.25},
    {Appearance::Dark, 10.86, 6.96, 6.23, 4.89, 4.51, 6.38, 5.73, 6.06, 3.10, 3.46, 4.24, 4.38,
     4.21, 3.77},
};

class Contrast : public testing::TestWithParam<Promise>
{
protected:
    static constexpr double rounding = 0.0051; // the table has two decimals
    static constexpr double needOfText = 4.5;  // WCAG 2.2, 1.4.3, level AA
    static constexpr double needOfShape = 3;   // WCAG 2.2, 1.4.11, level AA

    const Palette& palette_ = paletteFor(GetParam().appearance);
    const Neutrals& n_ = palette_.neutral;
    const std::vector<QColor> plain_{n_.paper, n_.lane, n_.panel, n_.card};
    const std::vector<QColor> areas_{n_.heat, n_.cold, n_.allowed, n_.pleatA, n_.hands};
};

TEST_P(Contrast, OfInkIsEnoughOnEveryGround)
{
    std::vector<QColor> grounds = plain_;
    grounds.insert(grounds.end(), areas_.begin(), areas_.end());
    grounds.push_back(n_.pleatB);
    EXPECT_NEAR(leastContrast({n_.ink}, grounds), GetParam().ink, rounding);
    EXPECT_NEAR(leastContrast({n_.ink2}, plain_), GetParam().ink2, rounding);
    EXPECT_NEAR(leastContrast({n_.ink2}, areas_), GetParam().ink2OnAreas, rounding);
    EXPECT_GE(leastContrast({n_.ink2}, grounds), needOfText);
}

TEST_P(Contrast, OfWordsInColourIsEnough)
{
    const auto roles = rolesOf(palette_);
    EXPECT_NEAR(leastContrast(coloursOf(roles), plain_), GetParam().roleWords, rounding);
    EXPECT_NEAR(leastContrast({n_.heatLine}, {n_.heat, n_.lane}), GetParam().heatLine, rounding);
    EXPECT_NEAR(leastContrast({n_.coldLine}, {n_.cold, n_.lane}), GetParam().coldLine, rounding);
    EXPECT_GE(leastContrast(coloursOf(roles), plain_), needOfText);
}

TEST_P(Contrast, OfTextOnAFillIsEnough)
{
    const double onDish = leastContrast(dishesOf(palette_));
    const double onRole = leastContrast(rolesOf(palette_));
    EXPECT_NEAR(onDish, GetParam().textOnDish, rounding);
    EXPECT_NEAR(onRole, GetParam().textOnRole, rounding);
    EXPECT_GE(std::min(onDish, onRole), needOfText);
}

TEST_P(Contrast, OfShapesIsEnough)
{
    const auto dishes = coloursOf(dishesOf(palette_));
    const auto roles = coloursOf(rolesOf(palette_));
    const double dish =
        leastContrast(dishes, {n_.paper, n_.lane, n_.card, n_.heat, n_.cold, n_.allowed});
    EXPECT_NEAR(dish, GetParam().dish, rounding);
    EXPECT_NEAR(leastContrast(dishes, {n_.panel}), GetParam().dishOnPanel, rounding);
    EXPECT_NEAR(leastContrast(dishes, {n_.paper}), GetParam().pattern, rounding);
    std::vector<QColor> grounds = plain_;
    grounds.insert(grounds.end(), {n_.heat, n_.cold, n_.allowed});
    EXPECT_NEAR(leastContrast(roles, grounds), GetParam().roleShapes, rounding);
    EXPECT_NEAR(leastContrast({n_.line}, plain_), GetParam().line, rounding);
    EXPECT_NEAR(leastContrast({n_.line}, {n_.heat, n_.cold, n_.pleatA}), GetParam().lineOnAreas,
                rounding);
    EXPECT_GE(std::min(dish, leastContrast({n_.line}, plain_)), needOfShape);
}

INSTANTIATE_TEST_SUITE_P(Palettes, Contrast, testing::ValuesIn(promises));

TEST(ContrastRatio, IsTwentyOneForBlackOnWhiteAndOneForLikeOnLike)
{
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21, 1e-9);
    EXPECT_DOUBLE_EQ(contrast(Qt::red, Qt::red), 1);
}

} // namespace
} // namespace suppertide::ui
