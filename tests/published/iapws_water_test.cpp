// IAPWS Industrial Formulation 1997, region 4 (verification values of the release), and Wagner and
// Pruß 1993.
#include <gtest/gtest.h>

#include "core/science/water.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(IapwsWater, MeetsTheVerificationValuesOfTheRelease)
{
    test::Deviation worst{"IAPWS-IF97, region 4"};
    // Half of the ninth digit, to which the release prints them.
    worst.near(saturationPressure(300.0 - 273.15).value(), 3.53658941, 5e-9, "2.6 p(300 K), kPa");
    worst.near(boilingPoint(100.0).value() + 273.15, 372.755919, 5e-7, "2.6 T(0.1 MPa), K");
}

TEST(IapwsWater, TableOfSteamIsReproduced)
{
    struct Row
    {
        double t;
        double heat;     // kJ/kg
        double pressure; // kPa
        double density;  // kg/m³
    };
    // Computed independently from the same formulations; last printed digit.
    test::Deviation heat{"IAPWS, heat of vaporisation: kJ/kg"};
    test::Deviation pressure{"IAPWS, steam pressure: kPa"};
    test::Deviation density{"IAPWS, density of water: kg/m³"};
    for (const Row& row : {Row{0.01, 2501.1, 0.612, 999.8}, Row{20, 2453.5, 2.339, 998.2},
                           Row{40, 2405.8, 7.384, 992.2}, Row{60, 2357.6, 19.946, 983.2},
                           Row{80, 2308.2, 47.415, 971.8}, Row{90, 2282.7, 70.182, 965.3},
                           Row{95, 2269.7, 84.609, 961.9}, Row{100, 2256.6, 101.418, 958.3}}) {
        SCOPED_TRACE(row.t);
        heat.near(heatOfVaporisation(row.t).value() / 1000.0, row.heat, 0.1, "2.6 h_fg");
        pressure.near(saturationPressure(row.t).value(), row.pressure, 0.001, "2.6 p_sat");
        density.near(waterDensity(row.t).value(), row.density, 0.05, "2.6 ρ");
    }
}

} // namespace
} // namespace suppertide::science
