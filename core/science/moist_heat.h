// Moist heat: how hot it is around a food in a closed pot and in a water bath, both in an oven:
// never hotter than water boils, however hot the oven. Used for braises and custards.
#pragma once

#include "core/base/result.h"
#include "core/science/core_temperature.h"

namespace suppertide::science {

struct ClosedPot
{
    double oven = 150.0;  // °C
    Spread air;           // W/(m²·K), of the oven to the pot
    double start = 10.0;  // °C, of the food
    double boils = 100.0; // °C, water at this altitude
};

/// Where a food is that lies in its own steam and juice.
struct MoistPlace
{
    double temperature = 100.0; // °C
    Spread coefficient;         // W/(m²·K), at the food's surface
};

/// In an oven above the boiling point the food sees steam and juice at the boiling point; what gets
/// to it is what the oven gives the pot, h·(oven − T), written as a coefficient for (boils − T).
/// Likely: for a surface halfway between start and boiling; least: at the start; most: three
/// quarters of the way, at most as boiling water has it. In a cooler oven the pot gets as warm as
/// that. A model of our own; its error is that of the coefficient, which counts for little in a
/// thick piece. Oven 30…350 °C, start −5…95, boils 80…105 °C; a failure outside, or if the food is
/// as warm as what is around it.
[[nodiscard]] Result<MoistPlace> inClosedPot(const ClosedPot& pot);

/// °C of the water around moulds in an oven of that temperature: where what evaporates takes away
/// what the oven gives (moist_surface.h), at most what boils. The part of the surface that
/// evaporates, 0.12, 0.21, 0.32, is fitted to the 83 to 87 °C that H. McGee, On Food and Cooking,
/// gives for a bath in an oven of 175 °C (from memory). Oven 90…300 °C, boils 80…105 °C; a failure
/// outside.
[[nodiscard]] Result<Spread> waterBathInOven(double oven, double boils);

/// Minutes until the middle of a food in such a bath is at the target, the bath being hot when it
/// goes in; `question` without surroundings. Least and most: in the hottest and the coolest bath;
/// where the coolest does not reach the target, twice the likely.
[[nodiscard]] Result<Estimate> timeToCoreInBath(CoreQuestion question, const Spread& bath);

} // namespace suppertide::science
