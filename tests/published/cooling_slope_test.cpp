// C. Hedeen, D. Schaffner, L. Brown, J. Environmental Health (2022); M. Igo et al., J. Food
// Protection (2021): the slope of cooling food; depth.
#include <gtest/gtest.h>

#include "core/science/chilling.h"
#include "core/science/dinner_foods.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(CoolingSlope, OneSlopeDecidesBothLegsOfTheRule)
{
    test::Deviation worst{"Hedeen et al. 2022, cooling slope: 1/h"};
    worst.near(coolingSlope(135, 70, 37, 2).value(), 0.236, 0.0005, "2.8 first leg");
    worst.near(coolingSlope(135, 41, 37, 6).value(), 0.232, 0.0005, "2.8 whole way");
    worst.near(slopeOfCoolingRule(37).value(), 0.23, 0.01, "2.8 one slope");
    worst.near(coolingSlope(120, 95, 37, 0.75).value(), 0.208, 0.0005, "2.8 two readings, fails");
    worst.near(coolingSlope(120, 90, 37, 0.75).value(), 0.260, 0.0005, "2.8 two readings, passes");
    EXPECT_LT(coolingSlope(120, 95, 37, 0.75).value(), slopeOfCoolingRule(37).value());
    EXPECT_GT(coolingSlope(120, 90, 37, 0.75).value(), slopeOfCoolingRule(37).value());
}

TEST(CoolingSlope, ThreeInchesDeepInATradeFridgeFailsTheRule)
{
    // 2.8 depth: 7.6 cm or more is likely to fail. Wide tray of thick food at 37 °F (2.8 °C).
    const auto food = findDinnerFood("white_sauce").value();
    const auto hours = [&](double depth, double to) {
        constexpr double diameter = 0.5;
        const double litres = 3.141592653589793 / 4.0 * diameter * diameter * depth * 1000.0;
        return timeToChill({.food = food.composition,
                            .litres = litres,
                            .diameter = diameter,
                            .from = 57.2,
                            .to = to,
                            .place = Place::Fridge,
                            .placeTemperature = 2.8})
                   .value()
                   .likely /
               60.0;
    };
    EXPECT_GT(hours(0.076, 21.1), 2.0);
    EXPECT_GT(hours(0.076, 5.0), 6.0);
    EXPECT_LT(hours(0.02, 21.1), 2.0);
    EXPECT_LT(hours(0.02, 5.0), 6.0);
}

} // namespace
} // namespace suppertide::science
