// Dishes and roles must be told apart by eyes of all kinds: colour differences by CIEDE2000,
// seen through the simulation of colour vision deficiencies, against the figures of look.md §7.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

#include "ui/theme/palette.h"

namespace suppertide::ui {
namespace {

using Triple = std::array<double, 3>;
using Matrix = std::array<Triple, 3>;

Triple times(const Matrix& m, const Triple& v)
{
    Triple result{};
    for (std::size_t i = 0; i < 3; ++i) {
        result.at(i) = m.at(i)[0] * v[0] + m.at(i)[1] * v[1] + m.at(i)[2] * v[2];
    }
    return result;
}

/// Linear sRGB (IEC 61966-2-1).
Triple linearOf(const QColor& colour)
{
    const auto linear = [](double c) {
        return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    return {linear(colour.redF()), linear(colour.greenF()), linear(colour.blueF())};
}

/// CIELAB under D65, by the matrix of IEC 61966-2-1.
Triple labOf(const Triple& linear)
{
    constexpr Matrix toXyz{{{0.4124564, 0.3575761, 0.1804375},
                            {0.2126729, 0.7151522, 0.0721750},
                            {0.0193339, 0.1191920, 0.9503041}}};
    constexpr Triple white{0.95047, 1.0, 1.08883};
    const auto f = [](double t) {
        constexpr double delta = 6.0 / 29;
        return t > delta * delta * delta ? std::cbrt(t) : t / (3 * delta * delta) + 4.0 / 29;
    };
    const Triple xyz = times(toXyz, linear);
    const double x = f(xyz[0] / white[0]);
    const double y = f(xyz[1] / white[1]);
    const double z = f(xyz[2] / white[2]);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

double degrees(double radians)
{
    return radians * 180 / std::numbers::pi;
}

double radians(double degrees)
{
    return degrees * std::numbers::pi / 180;
}

double hueOf(double a, double b)
{
    if (a == 0 && b == 0) {
        return 0;
    }
    const double hue = degrees(std::atan2(b, a));
    return hue < 0 ? hue + 360 : hue;
}

/// Sharma, Wu and Dalal (2005), "The CIEDE2000 color-difference formula: implementation notes,
/// supplementary test data, and mathematical observations", eqs. 2 to 22.
double ciede2000(const Triple& lab1, const Triple& lab2)
{
    const double meanChroma = (std::hypot(lab1[1], lab1[2]) + std::hypot(lab2[1], lab2[2])) / 2;
    const double c7 = std::pow(meanChroma, 7);
    const double g = 0.5 * (1 - std::sqrt(c7 / (c7 + std::pow(25.0, 7))));
    const double a1 = (1 + g) * lab1[1];
    const double a2 = (1 + g) * lab2[1];
    const double chroma1 = std::hypot(a1, lab1[2]);
    const double chroma2 = std::hypot(a2, lab2[2]);
    const double hue1 = hueOf(a1, lab1[2]);
    const double hue2 = hueOf(a2, lab2[2]);
    const bool isGrey = chroma1 * chroma2 == 0;

    double hueStep = isGrey ? 0 : hue2 - hue1;
    hueStep += hueStep > 180 ? -360 : hueStep < -180 ? 360 : 0;
    const double dL = lab2[0] - lab1[0];
    const double dC = chroma2 - chroma1;
    const double dH = 2 * std::sqrt(chroma1 * chroma2) * std::sin(radians(hueStep / 2));

    double hue = hue1 + hue2;
    if (!isGrey) {
        if (std::abs(hue1 - hue2) > 180) {
            hue += hue < 360 ? 360 : -360;
        }
        hue /= 2;
    }
    const double lightness = (lab1[0] + lab2[0]) / 2;
    const double chroma = (chroma1 + chroma2) / 2;
    const double t = 1 - 0.17 * std::cos(radians(hue - 30)) + 0.24 * std::cos(radians(2 * hue)) +
                     0.32 * std::cos(radians(3 * hue + 6)) - 0.20 * std::cos(radians(4 * hue - 63));
    const double turn = 30 * std::exp(-std::pow((hue - 275) / 25, 2));
    const double m7 = std::pow(chroma, 7);
    const double rotation =
        -std::sin(radians(2 * turn)) * 2 * std::sqrt(m7 / (m7 + std::pow(25.0, 7)));
    const double off50 = (lightness - 50) * (lightness - 50);
    const double l = dL / (1 + 0.015 * off50 / std::sqrt(20 + off50));
    const double c = dC / (1 + 0.045 * chroma);
    const double h = dH / (1 + 0.015 * chroma * t);
    return std::sqrt(l * l + c * c + h * h + rotation * c * h);
}

// Sharma, Wu and Dalal (2005), table 1, pairs 1, 7, 17, 25 and 34.
TEST(ColourDifference, IsThatOfThePublishedPairs)
{
    struct Pair
    {
        Triple a, b;
        double difference;
    };
    const Pair pairs[]{{{50, 2.6772, -79.7751}, {50, 0, -82.7485}, 2.0425},
                       {{50, 0, 0}, {50, -1, 2}, 2.3669},
                       {{50, 2.5, 0}, {73, 25, -18}, 27.1492},
                       {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
                       {{2.0776, 0.0795, -1.1350}, {0.9033, -0.0636, -0.5514}, 0.9082}};
    for (const Pair& pair : pairs) {
        EXPECT_NEAR(ciede2000(pair.a, pair.b), pair.difference, 5e-5);
        EXPECT_NEAR(ciede2000(pair.b, pair.a), pair.difference, 5e-5);
    }
}

// Machado, Oliveira and Fernandes (2009), "A Physiologically-based Model for Simulation of Color
// Vision Deficiency", table of matrices, severity 1.0.
constexpr Matrix protanopia{{{0.152286, 1.052583, -0.204868},
                             {0.114503, 0.786281, 0.099216},
                             {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix deuteranopia{{{0.367322, 0.860646, -0.227968},
                               {0.280085, 0.672501, 0.047413},
                               {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix tritanopia{{{1.255528, -0.076749, -0.178779},
                             {-0.078411, 0.930809, 0.147602},
                             {0.004733, 0.691367, 0.303900}}};

Triple seenBy(const std::optional<Matrix>& eyes, const QColor& colour)
{
    Triple linear = linearOf(colour);
    if (eyes) {
        linear = times(*eyes, linear);
        for (double& channel : linear) {
            channel = std::clamp(channel, 0.0, 1.0);
        }
    }
    return labOf(linear);
}

double leastDifference(const std::vector<QColor>& colours, const std::optional<Matrix>& eyes)
{
    double least = 1000;
    for (std::size_t i = 0; i < colours.size(); ++i) {
        for (std::size_t j = i + 1; j < colours.size(); ++j) {
            least = std::min(least, ciede2000(seenBy(eyes, colours[i]), seenBy(eyes, colours[j])));
        }
    }
    return least;
}

struct Promise
{
    Appearance appearance;
    std::array<double, 4> dishes; // normal, protan, deutan, tritan
    std::array<double, 4> roles;
};

class Difference : public testing::TestWithParam<Promise>
{
protected:
    static constexpr double rounding = 0.051; // the table has one decimal
    static constexpr double need = 10;

    static void expectPromised(const std::vector<QColor>& colours,
                               const std::array<double, 4>& promised)
    {
        const std::array<std::optional<Matrix>, 4> eyes{std::nullopt, protanopia, deuteranopia,
                                                        tritanopia};
        for (std::size_t i = 0; i < eyes.size(); ++i) {
            const double least = leastDifference(colours, eyes.at(i));
            EXPECT_NEAR(least, promised.at(i), rounding) << "eyes " << i;
            EXPECT_GE(least, need);
        }
    }
    const Palette& palette_ = paletteFor(GetParam().appearance);
};

TEST_P(Difference, BetweenAnyTwoDishesIsPlainToAllEyes)
{
    std::vector<QColor> hues;
    for (const DishFill& dish : palette_.dishes) {
        hues.push_back(dish.fill.colour);
    }
    expectPromised(hues, GetParam().dishes);
}

TEST_P(Difference, BetweenAnyTwoRolesIsPlainToAllEyes)
{
    const Roles& r = palette_.role;
    expectPromised({r.impossible.colour, r.unsafe.colour, r.undesirable.colour, r.ok.colour,
                    r.selected.colour},
                   GetParam().roles);
}

INSTANTIATE_TEST_SUITE_P(
    Palettes, Difference,
    testing::Values(Promise{Appearance::Light, {21.8, 14.9, 14.2, 14.6}, {26.2, 10.8, 10.5, 10.6}},
                    Promise{Appearance::Dark, {18.7, 15.9, 15.2, 15.2}, {22.1, 13.9, 15.0, 11.5}}));

} // namespace
} // namespace suppertide::ui
