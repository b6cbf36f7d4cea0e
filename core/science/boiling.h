// Boiling: how long water or a thin soup takes to the boil on this burner, with or without a lid,
// at this altitude.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/science/estimate.h"

namespace suppertide::science {

enum class Hob
{
    Gas,
    Electric, // smooth top
    Induction,
};

/// The part of a hob's power that gets into the pot (resources/tables/hobs.tsv), 0…1.
[[nodiscard]] const Spread& efficiencyOf(Hob hob);

/// Reads a table like hobs.tsv, in which each hob stands once, in the order of Hob. A fault names
/// its line.
[[nodiscard]] Result<std::vector<Spread>> readHobs(std::string_view text);

struct BoilQuestion
{
    double litres = 1.0;
    double start = 15.0;    // °C
    double burner = 2000.0; // W, as the burner is rated
    Spread efficiency;      // 0…1
    bool hasLid = true;
    double potMass = 1.5;   // kg
    double potHeat = 500.0; // J/(kg·K): steel 500, iron 460, aluminium 900
    double altitude = 0.0;  // m
};

/// Minutes to the boil: (m·cp + pot)·ΔT over the power that gets in less what is lost on the way.
/// Lost (common practice): with lid 3, 5, 10 %; without 8, 12, 25 % of it. Litres 0.05…60, burner
/// 100…10 000 W, altitude −400…5000 m; a failure outside, or if the water already boils.
[[nodiscard]] Result<Estimate> timeToBoil(const BoilQuestion& question);

/// Seconds to warm `litres` of water (0.01…100) from `from` to `to` (0…100 °C) with `watts` (1…50
/// 000), of which `efficiency` (0.05…1) gets in: no pot, no loss. t = m·cp·ΔT/(η·P).
[[nodiscard]] Result<double> secondsToWarmWater(double litres, double from, double to, double watts,
                                                double efficiency);

} // namespace suppertide::science
