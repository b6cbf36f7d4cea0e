// Heat balances of pots: t = m·cp·ΔT/(η·P) and evaporation at the boil (textbook formulas, computed
// independently with cp 4.186 and ρ 0.999), and the ASHRAE formula of pools for open surfaces.
#include <gtest/gtest.h>

#include <numbers>

#include "core/science/boiling.h"
#include "core/science/chilling.h"
#include "core/science/reduction.h"
#include "core/science/water.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(PotsAndBurners, TimesToTheBoilOfPlainWater)
{
    // Ours takes density and specific heat by temperature: up to 0.3 % off a constant 4.186 and
    // 0.999.
    constexpr double properties = 0.003;
    test::Deviation worst{"heat balance, time to the boil: s"};
    worst.nearShare(secondsToWarmWater(1, 20, 100, 2000, 0.85).value(), 197, properties, "2.7 1 L");
    worst.nearShare(secondsToWarmWater(4, 15, 100, 2200, 0.85).value(), 760, properties,
                    "2.7 4 L induction");
    worst.nearShare(secondsToWarmWater(4, 15, 100, 1800, 0.74).value(), 1067, properties,
                    "2.7 4 L electric");
    worst.nearShare(secondsToWarmWater(6, 15, 100, 3000, 0.32).value(), 2222, properties,
                    "2.7 6 L gas");
    const double boils = boilingPointAtAltitude(1500).value();
    worst.near(boils, 95.0, 0.05, "2.7 altitude, boils at");
    worst.nearShare(secondsToWarmWater(4, 15, boils, 2200, 0.85).value(), 716, properties,
                    "2.7 altitude");
}

TEST(PotsAndBurners, WhatAPowerBoilsAway)
{
    test::Deviation worst{"heat balance, evaporation at the boil"};
    worst.near(3600.0 * evaporationOfPower(1000, 100).value(), 1.595, 0.0005,
               "2.7 kg/h a kW at 100 °C");
    worst.near(3600.0 * evaporationOfPower(1000, 95).value(), 1.586, 0.0005,
               "2.7 kg/h a kW at 95 °C");
    const ReductionQuestion stock{
        .litres = 2.0, .litresLeft = 1.2, .burner = 900, .panDiameter = 0.24};
    worst.near(timeToReduce(stock).value().likely, 32.0, 0.05, "2.7 2.0 → 1.2 L, min");
    const ReductionQuestion half{.litres = 1.5,
                                 .litresLeft = 1.0,
                                 .burner = 1500,
                                 .efficiency = {0.74, 0.74, 0.74},
                                 .panDiameter = 0.28};
    worst.near(timeToReduce(half).value().likely, 16.2, 0.05, "2.7 0.5 L, min");
}

TEST(PotsAndBurners, AnOpenPotBelowTheBoilByTheFormulaOfPools)
{
    test::Deviation worst{"ASHRAE pool formula: kg/h"};
    const OpenSurface pot{std::numbers::pi / 4.0 * 0.25 * 0.25, 90, 20, 0.6};
    worst.near(3600.0 * evaporationOfSurface(pot).value(), 0.47, 0.005, "2.7 25 cm pot at 90 °C");
}

TEST(PotsAndBurners, APotCoolsByNewtonsLaw)
{
    test::Deviation worst{"Newton cooling of a pot"};
    const double tau = newtonTimeConstant(4.0, 4186.0, 12.0, 0.12).value();
    worst.near(tau / 3600.0, 3.23, 0.005, "2.7 τ, h");
    worst.near(newtonSeconds(95, 60, 20, tau).value() / 60.0, 122, 0.5, "2.7 95 → 60 °C, min");
}

} // namespace
} // namespace suppertide::science
