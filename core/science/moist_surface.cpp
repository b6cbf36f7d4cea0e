#include "core/science/moist_surface.h"

#include <algorithm>

#include "core/science/bracketed_root.h"
#include "core/science/valid_range.h"
#include "core/science/water.h"

namespace suppertide::science {

namespace {

constexpr double steamOfAir = 1.5;         // kPa
constexpr double convectivePart = 0.5;     // of the coefficient
constexpr double molarRatio = 0.622;       // water to air
constexpr double airHeatCapacity = 1007.0; // J/(kg·K)
constexpr double airPressure = 101.325;    // kPa
constexpr double lewisFactor = 0.91;       // Le^(2/3) of steam in air, Le 0.87

/// W/m² into a surface of `celsius`.
double heatFlow(const Exchange& dry, double wetness, double celsius)
{
    const double steam = saturationPressure(celsius).value() - steamOfAir;
    const double perKilopascal = molarRatio * heatOfVaporisation(celsius).value() /
                                 (airHeatCapacity * airPressure * lewisFactor);
    return dry.coefficient *
           (dry.temperature - celsius - wetness * convectivePart * perKilopascal * steam);
}

} // namespace

Result<Exchange> withEvaporation(const Exchange& dry, double wetness)
{
    if (auto fault = outsideRange(
            {{"The part of the surface that is wet", wetness, 0.0, 1.0, ""},
             {"The temperature of the surroundings", dry.temperature, -60.0, 400.0, "°C"},
             {"The heat transfer coefficient", dry.coefficient, 0.0, 1e5, "W/(m²·K)"}})) {
        return *fault;
    }
    constexpr double leastWetness = 0.01;
    constexpr double coolPlace = 60.0; // °C
    if (wetness < leastWetness || dry.temperature < coolPlace || dry.coefficient == 0.0) {
        return dry;
    }
    constexpr double low = 20.0; // °C
    const double high = std::min(dry.temperature, 199.0);
    const double balance = bracketedRoot(
        [&](double celsius) { return heatFlow(dry, wetness, celsius); }, low, high, 1e-6);
    const double warming = std::min(50.0, balance - 1.0);
    return Exchange{balance, heatFlow(dry, wetness, warming) / (balance - warming)};
}

} // namespace suppertide::science
