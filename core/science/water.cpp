#include "core/science/water.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

constexpr double zeroCelsius = 273.15; // K

/// IAPWS-IF97, Table 34.
constexpr std::array<double, 11> n{0.0,
                                   0.11670521452767e4,
                                   -0.72421316703206e6,
                                   -0.17073846940092e2,
                                   0.12020824702470e5,
                                   -0.32325550322333e7,
                                   0.14915108613530e2,
                                   -0.48232657361591e4,
                                   0.40511340542057e6,
                                   -0.23855557567849,
                                   0.65017534844798e3};

/// MPa at K.
double steamPressure(double kelvin)
{
    const double theta = kelvin + n[9] / (kelvin - n[10]);
    const double a = theta * theta + n[1] * theta + n[2];
    const double b = n[3] * theta * theta + n[4] * theta + n[5];
    const double c = n[6] * theta * theta + n[7] * theta + n[8];
    return std::pow(2.0 * c / (-b + std::sqrt(b * b - 4.0 * a * c)), 4.0);
}

/// K at MPa.
double steamTemperature(double megapascals)
{
    const double beta = std::pow(megapascals, 0.25);
    const double e = beta * beta + n[3] * beta + n[6];
    const double f = n[1] * beta * beta + n[4] * beta + n[7];
    const double g = n[2] * beta * beta + n[5] * beta + n[8];
    const double d = 2.0 * g / (-f - std::sqrt(f * f - 4.0 * e * g));
    return 0.5 * (n[10] + d - std::sqrt((n[10] + d) * (n[10] + d) - 4.0 * (n[9] + n[10] * d)));
}

constexpr double criticalTemperature = 647.096; // K
constexpr double criticalDensity = 322.0;       // kg/m³

/// Wagner and Pruß 1993, equations 2 and 3.
double liquidDensity(double kelvin)
{
    const double third = std::cbrt(1.0 - kelvin / criticalTemperature);
    return criticalDensity *
           (1.0 + 1.99274064 * third + 1.09965342 * std::pow(third, 2) -
            0.510839303 * std::pow(third, 5) - 1.75493479 * std::pow(third, 16) -
            45.5170352 * std::pow(third, 43) - 6.74694450e5 * std::pow(third, 110));
}

double steamDensity(double kelvin)
{
    const double sixth = std::pow(1.0 - kelvin / criticalTemperature, 1.0 / 6.0);
    return criticalDensity *
           std::exp(-2.03150240 * std::pow(sixth, 2) - 2.68302940 * std::pow(sixth, 4) -
                    5.38626492 * std::pow(sixth, 8) - 17.2991605 * std::pow(sixth, 18) -
                    44.7586581 * std::pow(sixth, 37) - 63.9201063 * std::pow(sixth, 71));
}

std::optional<Failure> temperatureFault(double celsius, double most)
{
    return outsideRange({{"The temperature of the water", celsius, 0.0, most, "°C"}});
}

struct Point
{
    double celsius;
    double heatCapacity; // J/(kg·K)
};

constexpr std::array<Point, 16> heatCapacities{{{0.0, 4219.4},
                                                {5.0, 4205.0},
                                                {10.0, 4195.5},
                                                {15.0, 4188.8},
                                                {20.0, 4184.4},
                                                {25.0, 4181.6},
                                                {30.0, 4180.1},
                                                {35.0, 4179.5},
                                                {40.0, 4179.6},
                                                {45.0, 4180.4},
                                                {50.0, 4181.5},
                                                {60.0, 4185.1},
                                                {70.0, 4190.2},
                                                {80.0, 4196.9},
                                                {90.0, 4205.3},
                                                {100.0, 4215.7}}};

/// J/kg from 0 °C, exact for the straight lines of the table.
double heatFromZero(double celsius)
{
    double heat = 0.0;
    for (std::size_t i = 1; i < heatCapacities.size(); ++i) {
        const Point& a = heatCapacities[i - 1];
        const Point& b = heatCapacities[i];
        const double end = std::min(celsius, b.celsius);
        if (end <= a.celsius) {
            break;
        }
        const double share = (end - a.celsius) / (b.celsius - a.celsius);
        const double atEnd = a.heatCapacity + share * (b.heatCapacity - a.heatCapacity);
        heat += 0.5 * (a.heatCapacity + atEnd) * (end - a.celsius);
    }
    return heat;
}

} // namespace

Result<double> pressureAtAltitude(double metres)
{
    if (auto fault = outsideRange({{"The altitude", metres, -400.0, 5000.0, "m"}})) {
        return *fault;
    }
    return 101.325 * std::pow(1.0 - 2.25577e-5 * metres, 5.25588);
}

Result<double> saturationPressure(double celsius)
{
    if (auto fault = temperatureFault(celsius, 200.0)) {
        return *fault;
    }
    return 1000.0 * steamPressure(celsius + zeroCelsius);
}

Result<double> boilingPoint(double kilopascals)
{
    if (auto fault = outsideRange({{"The pressure", kilopascals, 0.62, 1500.0, "kPa"}})) {
        return *fault;
    }
    return steamTemperature(kilopascals / 1000.0) - zeroCelsius;
}

Result<double> boilingPointAtAltitude(double metres)
{
    auto pressure = pressureAtAltitude(metres);
    return pressure ? boilingPoint(*pressure) : pressure;
}

Result<double> waterDensity(double celsius)
{
    if (auto fault = temperatureFault(celsius, 200.0)) {
        return *fault;
    }
    return liquidDensity(celsius + zeroCelsius);
}

Result<double> heatOfVaporisation(double celsius)
{
    if (auto fault = outsideRange({{"The temperature of the water", celsius, 0.01, 200.0, "°C"}})) {
        return *fault;
    }
    const double kelvin = celsius + zeroCelsius;
    constexpr double step = 0.01; // K
    const double slope =
        1e6 * (steamPressure(kelvin + step) - steamPressure(kelvin - step)) / (2.0 * step);
    return kelvin * slope * (1.0 / steamDensity(kelvin) - 1.0 / liquidDensity(kelvin));
}

Result<double> waterHeatCapacity(double celsius)
{
    if (auto fault = temperatureFault(celsius, 100.0)) {
        return *fault;
    }
    const auto* after =
        std::upper_bound(heatCapacities.begin() + 1, heatCapacities.end() - 1, celsius,
                         [](double t, const Point& point) { return t < point.celsius; });
    const Point& a = *(after - 1);
    const double share = (celsius - a.celsius) / (after->celsius - a.celsius);
    return a.heatCapacity + share * (after->heatCapacity - a.heatCapacity);
}

Result<double> heatToWarmWater(double from, double to)
{
    if (auto fault = temperatureFault(from, 100.0)) {
        return *fault;
    }
    if (auto fault = temperatureFault(to, 100.0)) {
        return *fault;
    }
    return heatFromZero(to) - heatFromZero(from);
}

} // namespace suppertide::science
