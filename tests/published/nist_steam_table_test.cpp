// NIST steam tables: heat of vaporisation, and mean specific heats from the printed enthalpies.
#include <gtest/gtest.h>

#include "core/science/water.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(NistSteamTable, HeatOfVaporisationAgreesWithinTwoTenths)
{
    test::Deviation worst{"NIST steam table, heat of vaporisation: kJ/kg"};
    // Clapeyron's equation on two fitted formulations: stated error 0.2 kJ/kg, and half a printed
    // digit.
    worst.near(heatOfVaporisation(20).value() / 1000.0, 2453.5, 0.25, "2.6 h_fg 20 °C");
    worst.near(heatOfVaporisation(40).value() / 1000.0, 2406.0, 0.25, "2.6 h_fg 40 °C");
    worst.near(heatOfVaporisation(50).value() / 1000.0, 2382.0, 0.25, "2.6 h_fg 50 °C");
}

TEST(NistSteamTable, MeanSpecificHeatsAgreeToTheLastDigit)
{
    test::Deviation worst{"NIST steam table, mean cp of water: kJ/(kg·K)"};
    const auto mean = [](double from, double to) {
        return heatToWarmWater(from, to).value() / 1000.0 / (to - from);
    };
    worst.near(mean(10, 20), 4.189, 0.001, "2.6 cp 10–20");
    worst.near(mean(20, 30), 4.182, 0.001, "2.6 cp 20–30");
    worst.near(mean(30, 40), 4.180, 0.001, "2.6 cp 30–40");
    worst.near(mean(40, 50), 4.181, 0.001, "2.6 cp 40–50");
    worst.near(waterHeatCapacity(100).value() / 1000.0, 4.22, 0.005, "2.6 cp 100");
}

} // namespace
} // namespace suppertide::science
