// R. P. Singh, D. R. Heldman, Introduction to Food Engineering: freezing by Plank's formula;
// specific heat by Heldman and Singh 1981.
#include <gtest/gtest.h>

#include "core/science/food_properties.h"
#include "core/science/freezing.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(SinghHeldman, FreezingTimesAreThoseOfTheExamples)
{
    test::Deviation worst{"Singh & Heldman, freezing examples: h"};
    const PlankQuestion sphere{
        plankFactors(Shape::Sphere), 0.07, 1000.0, 250e3, 1.2, 50.0, -1.25, -40.0};
    worst.near(plankSeconds(sphere).value() / 3600.0, 0.72, 0.005, "2.3 freeze sphere");
    worst.near(plankSeconds(sphere).value(), 2603.0, 1.0, "2.3 freeze sphere, s, computed");
    const PlankQuestion block{{0.3, 0.085}, 0.25, 1050.0, 248.25e3, 1.108, 30.0, -1.75, -30.0};
    worst.near(plankSeconds(block).value() / 3600.0, 18.7, 0.05, "2.3 freeze block");
    const PlankQuestion steak{
        plankFactors(Shape::Slab), 0.05, 970.0, 0.73 * 333.2e3, 1.1, 5.0, -1.75, -30.0};
    worst.near(plankSeconds(steak).value() / 3600.0, 12.26, 0.005, "2.3 freeze steak, computed");
}

TEST(SinghHeldman, BlockFactorsAreThoseReadFromTheChart)
{
    test::Deviation worst{"Singh & Heldman, chart of P and R"};
    const auto factors = plankFactorsOfBlock(0.6 / 0.25, 1.0 / 0.25).value();
    worst.near(factors.p, 0.3, 0.0005, "2.3 freeze block, P");
    worst.near(factors.r, 0.085, 0.0005, "2.3 freeze block, R: last digit of the reading");
}

TEST(SinghHeldman, SpecificHeatFromPartsIsThatOfTheExample)
{
    test::Deviation worst{"Heldman & Singh 1981, specific heat: kJ/(kg·K)"};
    const Composition parts{0.25, 0.20, 0.10, 0.40, 0.0, 0.05};
    const double cp = heatCapacityOfParts(parts).value() / 1000.0;
    worst.near(cp, 2.14, 0.005, "2.3 cp, printed");
    worst.near(cp, 2.1355, 0.00005, "2.3 cp, computed");
}

} // namespace
} // namespace suppertide::science
