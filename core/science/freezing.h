// Freezing and thawing times: Plank's formula for freezing, the solver of conduction for thawing.
// Orders of magnitude for a home: a home freezer is far from Plank's premises.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/science/core_temperature.h"
#include "core/science/estimate.h"
#include "core/science/shape.h"
#include "core/science/surroundings.h"

namespace suppertide::science {

/// P and R of Plank's formula; the size is the thickness of a slab or block, or the diameter.
struct PlankFactors
{
    double p = 0.0;
    double r = 0.0;
};

/// Slab ½, ⅛; cylinder ¼, 1⁄16; sphere 1⁄6, 1⁄24.
[[nodiscard]] PlankFactors plankFactors(Shape shape);

/// Of a block whose second and third length are β₁ and β₂ (1…20) times the shortest; a failure
/// outside. The formula behind the chart of P and R. Source: R. Plank (1941); A. J. Ede, The
/// calculation of the freezing and thawing of foodstuffs, Modern Refrigeration 52 (1949), 52–55
/// (from memory).
[[nodiscard]] Result<PlankFactors> plankFactorsOfBlock(double beta1, double beta2);

/// All in the units named; the conductivity is that of the frozen food.
struct PlankQuestion
{
    PlankFactors factors;
    double size = 0.0;          // m: thickness, or diameter
    double density = 0.0;       // kg/m³
    double heat = 0.0;          // J/kg, to be taken out: latent, or amended
    double conductivity = 0.0;  // W/(m·K), frozen
    double coefficient = 0.0;   // W/(m²·K), wrapping included
    double freezingPoint = 0.0; // °C
    double surroundings = 0.0;  // °C, colder
};

/// Seconds, t = ρ·H/(T_F − T_∞)·(P·a/h + R·a²/k). Fails if a measure is not positive or the
/// surroundings are not colder than the freezing point. Premises: at the freezing point from the
/// start, heat of melting only, a moving front. Source: R. Plank, Z. ges. Kälte-Industrie 20
/// (1913); as in Encyclopaedia of Food Sciences, freezing.
[[nodiscard]] Result<double> plankSeconds(const PlankQuestion& question);

/// J/kg from `start` to a mean of `end` with `latent` J/kg at the freezing point: for Plank's
/// formula with cooling before and after. cp in J/(kg·K). Requires start ≥ freezing point ≥ end.
[[nodiscard]] Result<double> amendedHeat(double start, double freezingPoint, double end,
                                         double latent, double unfrozenCp, double frozenCp);

/// One layer of wrapping: m and W/(m·K).
struct Layer
{
    double thickness = 0.0;
    double conductivity = 0.0;
};

/// W/(m²·K) of a surface of coefficient h under layers: 1/(1/h + Σ d/k). Fails if a measure is not
/// positive.
[[nodiscard]] Result<double> coefficientUnder(const std::vector<Layer>& layers, double coefficient);

/// Minutes until no part of a food that is frozen through at `start` (−40…−2 °C) is colder than its
/// freezing point, in a place warmer than that. By the solver with the heat of melting. How thawing
/// may be done safely is said by core/safety.
[[nodiscard]] Result<Estimate> thawingTime(const Composition& food, double freezesAt,
                                           const BodyShape& shape, double start, Place place);

} // namespace suppertide::science
