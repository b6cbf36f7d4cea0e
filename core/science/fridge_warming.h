// Fridge warming: what happens to the food in a fridge when something warm is put in.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/science/estimate.h"

namespace suppertide::science {

struct FridgeQuestion
{
    double fridgeTemperature = 4.0;         // °C, as set
    double contents = 15.0;                 // kg of food that is in it already
    Spread coolingPower{30.0, 60.0, 100.0}; // W beyond what keeps it cold (common practice)
    double loadMass = 2.0;                  // kg that are put in
    double loadHeatCapacity = 3800.0;       // J/(kg·K)
    double loadTemperature = 60.0;          // °C
    double loadSurface = 0.1;               // m²
    double coefficient = 8.0;               // W/(m²·K) at its surface
    double limit = 5.0;                     // °C that the other food should not exceed
};

struct FridgeWarming
{
    Spread warmest;      // °C of the food that was in it
    Spread minutesAbove; // above the limit
    std::vector<Figure> because;
};

/// Two well-mixed masses: the load cools by Newton's law into the contents, and the compressor
/// takes away what it can. Followed for two days. The food next to the load gets warmer than the
/// mean that is computed. Least: the most cooling power, and so on. Fridge −2…12 °C and below the
/// limit, contents 1…200 kg, power 5…500 W, load 0.05…30 kg of fridge temperature…100 °C, surface
/// 0.005…2 m², coefficient 2…50; a failure outside.
[[nodiscard]] Result<FridgeWarming> warmingOfFridge(const FridgeQuestion& question);

} // namespace suppertide::science
