// Chilling: how long a pot, a tray or small moulds take to get cold, and what it helps to split
// them or to stand them in ice. Whether that is quick enough is said by core/safety.
#pragma once

#include "core/base/result.h"
#include "core/science/estimate.h"
#include "core/science/food_properties.h"
#include "core/science/surroundings.h"

namespace suppertide::science {

/// Round containers of one size; a tray is wide and low.
struct ChillQuestion
{
    Composition food;
    double litres = 4.0;    // in all
    int containers = 1;     // it is split evenly
    double diameter = 0.24; // m, inside, of each; a tray: of the circle of its area
    bool isStirred =
        false;          // or thin enough to turn over by itself: the same temperature throughout
    double from = 90.0; // °C
    double to = 5.0;    // °C, in the middle
    Place place = Place::Fridge;
    double placeTemperature = 4.0; // °C
    bool isOpen = false;           // no lid, in air: what evaporates from the top cools it too
};

/// Minutes until the middle is at `to`. Stirred: Newton's law over top, bottom and sides. Not
/// stirred: conduction in a cylinder of the container's diameter and the depth that results. Walls
/// and the warming of fridge or ice are left out: see fridge_warming.h; let ice remain in an ice
/// bath. Without a lid, stirred, in air of 0…50 °C and 60 % humidity, the top evaporates as
/// evaporationOfSurface has it, ×0.6…×1.7, while it is above 20 °C: at 90 °C that is several times
/// what the air takes away. Otherwise isOpen changes nothing. Litres 0.02…60, 1…50 containers,
/// diameter 3…80 cm, −40…150 °C; a failure outside, or if `to` is not between `from` and the place.
[[nodiscard]] Result<Estimate> timeToChill(const ChillQuestion& question);

/// m, how deep the food stands in each container.
[[nodiscard]] double depthOf(const ChillQuestion& question);

/// Seconds τ of Newton's law, m·cp/(h·A): kg, J/(kg·K), W/(m²·K), m², all positive. Holds while
/// h·L/k < 0.1. Source: Incropera et al., Fundamentals of Heat and Mass Transfer, “The lumped
/// capacitance method”.
[[nodiscard]] Result<double> newtonTimeConstant(double mass, double heatCapacity,
                                                double coefficient, double area);

/// Seconds from `from` to `to` in `surroundings` with τ: τ·ln((from − s)/(to − s)). Fails unless
/// `to` lies between.
[[nodiscard]] Result<double> newtonSeconds(double from, double to, double surroundings,
                                           double timeConstant);

/// Slope per hour of a cooling food between two readings, log₁₀[(T₁ − T_f)/(T₂ − T_f)]/Δt; any one
/// unit of temperature, T_f that of the air. Fails unless T₁ ≥ T₂ > T_f and the hours are positive.
/// Source: C. Hedeen, D. Schaffner, L. Brown, J. Environmental Health (2022); G. Igo et al., J.
/// Food Protection (2021).
[[nodiscard]] Result<double> coolingSlope(double first, double second, double air, double hours);

/// The least slope per hour that keeps both stages of the Food Code's cooling rule (135 → 70 °F in
/// 2 h, 135 → 41 °F in 6 h) in air of `airFahrenheit` (−20…40 °F): the greater of the two legs'. A
/// failure outside.
[[nodiscard]] Result<double> slopeOfCoolingRule(double airFahrenheit);

} // namespace suppertide::science
