// Areas of tins: exact geometry (π/4·d², a·b), rounded as printed.
#include <gtest/gtest.h>

#include "core/science/mould_scaling.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(PanAreas, RoundSquareAndOblong)
{
    test::Deviation worst{"geometry, tins"};
    // Half of the last digit.
    struct Row
    {
        double size;
        double area;
    };
    for (const Row& row : {Row{16, 201}, Row{18, 254}, Row{20, 314}, Row{22, 380}, Row{23, 415},
                           Row{24, 452}, Row{26, 531}, Row{28, 616}, Row{30, 707}}) {
        worst.near(areaOf(RoundTin{row.size}).value(), row.area, 0.5, "4.1 round, cm²");
    }
    for (const Row& row :
         {Row{6, 28.3}, Row{7, 38.5}, Row{8, 50.3}, Row{9, 63.6}, Row{10, 78.5}, Row{12, 113.1}}) {
        worst.near(areaOf(RoundTin{row.size}).value(), row.area, 0.05, "4.1 round, in²");
    }
    constexpr double exact = 1e-12;
    worst.near(areaOf(RectangularTin{8, 8}).value(), 64, exact, "4.1 square 8 in");
    worst.near(areaOf(RectangularTin{9, 9}).value(), 81, exact, "4.1 square 9 in");
    worst.near(areaOf(RectangularTin{9, 13}).value(), 117, exact, "4.1 9 × 13 in");
    worst.near(areaOf(RectangularTin{9, 5}).value(), 45, exact, "4.1 9 × 5 in");
    worst.near(areaOf(RectangularTin{8.5, 4.5}).value(), 38.25, exact, "4.1 8½ × 4½ in");
    worst.near(amountFactor(RoundTin{20}, RoundTin{26}).value(), 1.690, 0.0005, "4.1 20 → 26 cm");
    worst.near(amountFactor(RoundTin{8}, RoundTin{9}).value(), 1.266, 0.0005, "4.1 8 → 9 in");
    // Printed as the square against the round: 64/63.6 = 1.006, whose inverse is 0.994.
    worst.near(amountFactor(RectangularTin{8, 8}, RoundTin{9}).value(), 0.994, 0.0005,
               "4.1 8 in square ≈ 9 in round");
    worst.near(amountFactor(RectangularTin{8, 8}, RectangularTin{9, 13}).value(), 1.828, 0.0005,
               "4.1 8 in square → 9 × 13");
    // Another depth: the exponent of common practice, 1.5 to 2.
    const auto deeper = bakingTimeAtDepth(30, 0.04, 0.08).value();
    worst.near(deeper.least, 30 * 2.8284271247461903, 1e-9, "4.1 depth, exponent 1.5");
    worst.near(deeper.most, 120, 1e-9, "4.1 depth, exponent 2");
}

} // namespace
} // namespace suppertide::science
