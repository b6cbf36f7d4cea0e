#include "core/science/fridge_warming.h"

#include <algorithm>

#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

/// J/(kg·K) of what usually is in a fridge (common practice).
constexpr double contentsHeatCapacity = 3600.0;
constexpr double followed = 2.0 * 24.0 * 3600.0; // s
constexpr double step = 30.0;                    // s

std::optional<Failure> faultOf(const FridgeQuestion& q)
{
    return outsideRange(
        {{"The temperature of the fridge", q.fridgeTemperature, -2.0, 12.0, "°C"},
         {"The limit for the food in the fridge", q.limit, q.fridgeTemperature, 20.0, "°C"},
         {"The food in the fridge", q.contents, 1.0, 200.0, "kg"},
         {"The cooling power", q.coolingPower.least, 5.0, 500.0, "W"},
         {"The cooling power", q.coolingPower.likely, q.coolingPower.least, 500.0, "W"},
         {"The cooling power", q.coolingPower.most, q.coolingPower.likely, 500.0, "W"},
         {"What is put in", q.loadMass, 0.05, 30.0, "kg"},
         {"The specific heat of what is put in", q.loadHeatCapacity, 1000.0, 4300.0, "J/(kg·K)"},
         {"The temperature of what is put in", q.loadTemperature, q.fridgeTemperature, 100.0, "°C"},
         {"Its surface", q.loadSurface, 0.005, 2.0, "m²"},
         {"The heat transfer coefficient", q.coefficient, 2.0, 50.0, "W/(m²·K)"}});
}

struct Outcome
{
    double warmest;
    double minutesAbove;
};

/// Heun's method; the time constants are hours, so a step of half a minute is exact to far below a
/// tenth of a degree.
Outcome follow(const FridgeQuestion& q, double power)
{
    const double conductance = q.coefficient * q.loadSurface;
    const double loadHeat = q.loadMass * q.loadHeatCapacity;
    const double contentsHeat = q.contents * contentsHeatCapacity;
    double load = q.loadTemperature;
    double fridge = q.fridgeTemperature;
    Outcome outcome{fridge, 0.0};
    for (double passed = 0.0; passed < followed; passed += step) {
        const double flow = conductance * (load - fridge);
        const double loadMiddle = load - 0.5 * step * flow / loadHeat;
        const double flowMiddle = conductance * (loadMiddle - fridge);
        load -= step * flowMiddle / loadHeat;
        fridge = std::max(fridge + step * (flowMiddle - power) / contentsHeat,
                          q.fridgeTemperature); // the thermostat
        outcome.warmest = std::max(outcome.warmest, fridge);
        outcome.minutesAbove += fridge > q.limit ? step / 60.0 : 0.0;
    }
    return outcome;
}

} // namespace

Result<FridgeWarming> warmingOfFridge(const FridgeQuestion& question)
{
    if (auto fault = faultOf(question)) {
        return *fault;
    }
    const Outcome least = follow(question, question.coolingPower.most);
    const Outcome likely = follow(question, question.coolingPower.likely);
    const Outcome most = follow(question, question.coolingPower.least);
    return FridgeWarming{{least.warmest, likely.warmest, most.warmest},
                         {least.minutesAbove, likely.minutesAbove, most.minutesAbove},
                         {{"put in", question.loadMass, "kg"},
                          {"its temperature", question.loadTemperature, "°C"},
                          {"in the fridge already", question.contents, "kg"},
                          {"fridge", question.fridgeTemperature, "°C"},
                          {"cooling power to spare", question.coolingPower.likely, "W"}}};
}

} // namespace suppertide::science
