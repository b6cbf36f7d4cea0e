// Reduction: how long a sauce or stock takes to simmer down, by the burner and by the width of the
// pan.
#pragma once

#include "core/base/result.h"
#include "core/science/estimate.h"

namespace suppertide::science {

struct ReductionQuestion
{
    double litres = 1.0;        // at the start
    double litresLeft = 0.5;    // at the end
    double burner = 1500.0;     // W that are used
    Spread efficiency{1, 1, 1}; // part that gets into the pan; 1 if `burner` is net
    double panDiameter = 0.24;  // m, inside
    double altitude = 0.0;      // m
};

/// Minutes at a rolling boil without lid. What evaporates is the net power over the heat of
/// vaporisation, but no more than a pan of this width can give off before it boils over: 40, 60, 90
/// kW/m² (common practice). The liquid is taken as water; sugar, fat and starch slow it down.
/// Litres 0.02…60 with 2 % to 99 % left, burner 50…10 000 W, pan 8…60 cm, altitude −400…5000 m; a
/// failure outside.
[[nodiscard]] Result<Estimate> timeToReduce(const ReductionQuestion& question);

/// kg/s that a net power of `watts` turns to steam at `celsius` (50…110): P/h_fg.
[[nodiscard]] Result<double> evaporationOfPower(double watts, double celsius);

/// Still, open water below the boil.
struct OpenSurface
{
    double area = 0.05;    // m²
    double water = 90.0;   // °C
    double air = 20.0;     // °C
    double humidity = 0.6; // of the air, 0…1
};

/// kg/s from an open surface into still air: A·(p_w − p_a)·0.089/Y, kPa and kJ/kg. Water 20…99 °C,
/// never below the dew point; a failure outside. An order of magnitude: the formula was measured at
/// 20…40 °C. Source: ASHRAE Handbook, HVAC Applications, “Natatoriums”, evaporation of pools (from
/// memory).
[[nodiscard]] Result<double> evaporationOfSurface(const OpenSurface& surface);

/// Minutes to lose `litresAway` by simmering below the boil, when the surface is what limits. Range
/// ×0.6…×1.7.
[[nodiscard]] Result<Estimate> timeToReduceGently(double litresAway, const OpenSurface& surface);

} // namespace suppertide::science
