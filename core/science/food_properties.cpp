#include "core/science/food_properties.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

constexpr double coldest = -40.0; // °C
constexpr double hottest = 150.0;
/// J/kg at 0 °C. Source: International Association for the Properties of Water and Steam,
/// formulation for ice Ih (2006).
constexpr double heatOfMelting = 333.6e3;

/// a + b T + c T², T in °C.
struct Quadratic
{
    double a;
    double b;
    double c;

    [[nodiscard]] double at(double t) const { return a + (b + c * t) * t; }
};

struct Row
{
    Quadratic conductivity;
    Quadratic density;
    Quadratic heatCapacity; // kJ/(kg·K)
};

/// Choi and Okos, in the order of Component.
constexpr std::array<Row, 7> rows{{
    {{0.57109, 1.7625e-3, -6.7036e-6},
     {997.18, 3.1439e-3, -3.7574e-3},
     {4.1762, -9.0864e-5, 5.4731e-6}},
    {{2.2196, -6.2489e-3, 1.0154e-4}, {916.89, -0.13071, 0.0}, {2.0623, 6.0769e-3, 0.0}},
    {{0.17881, 1.1958e-3, -2.7178e-6}, {1329.9, -0.51840, 0.0}, {2.0082, 1.2089e-3, -1.3129e-6}},
    {{0.18071, -2.7604e-4, -1.7749e-7}, {925.59, -0.41757, 0.0}, {1.9842, 1.4733e-3, -4.8008e-6}},
    {{0.20141, 1.3874e-3, -4.3312e-6}, {1599.1, -0.31046, 0.0}, {1.5488, 1.9625e-3, -5.9399e-6}},
    {{0.18331, 1.2497e-3, -3.1683e-6}, {1311.5, -0.36589, 0.0}, {1.8459, 1.8306e-3, -4.6509e-6}},
    {{0.32962, 1.4011e-3, -2.9069e-6}, {2423.8, -0.28063, 0.0}, {1.0926, 1.8896e-3, -3.6817e-6}},
}};

/// Of water that has not frozen below 0 °C (Choi and Okos, second range; from memory).
constexpr Quadratic coldWaterCapacity{4.0817, -5.3062e-3, 9.9516e-4};

ComponentProperties propertiesOf(Component component, double t)
{
    const Row& row = rows.at(static_cast<std::size_t>(component));
    const bool isColdWater = component == Component::Water && t < 0.0;
    const Quadratic& capacity = isColdWater ? coldWaterCapacity : row.heatCapacity;
    return {row.conductivity.at(t), row.density.at(t), 1000.0 * capacity.at(t)};
}

std::optional<Failure> temperatureFault(double t)
{
    return outsideRange({{"The temperature of the food", t, coldest, hottest, "°C"}});
}

std::optional<Failure> compositionFault(const Composition& c, double freezesAt)
{
    if (auto fault = outsideRange({{"The part of water", c.water, 0.0, 1.0, ""},
                                   {"The part of protein", c.protein, 0.0, 1.0, ""},
                                   {"The part of fat", c.fat, 0.0, 1.0, ""},
                                   {"The part of carbohydrate", c.carbohydrate, 0.0, 1.0, ""},
                                   {"The part of fibre", c.fibre, 0.0, 1.0, ""},
                                   {"The part of ash", c.ash, 0.0, 1.0, ""},
                                   {"The freezing point", freezesAt, -5.0, 0.0, "°C"}})) {
        return fault;
    }
    return outsideRange({{"The sum of all parts of the food", c.sum(), 0.95, 1.05, ""}});
}

/// By mass of the food. Valid composition and temperature.
double iceAt(const Composition& c, double t, double freezesAt)
{
    if (t >= freezesAt) {
        return 0.0;
    }
    const double free = std::max(c.water - 0.4 * c.protein, 0.0) / c.sum();
    return free * (1.0 - freezesAt / t);
}

FoodProperties mixed(const Composition& c, double t, double freezesAt)
{
    const double whole = c.sum();
    const double ice = iceAt(c, t, freezesAt);
    const std::array<double, 7> mass{c.water / whole - ice,  ice,
                                     c.protein / whole,      c.fat / whole,
                                     c.carbohydrate / whole, c.fibre / whole,
                                     c.ash / whole};
    std::array<ComponentProperties, 7> parts{};
    double volume = 0.0; // m³/kg
    FoodProperties food;
    food.iceFraction = ice;
    for (std::size_t i = 0; i < mass.size(); ++i) {
        parts[i] = propertiesOf(static_cast<Component>(i), t);
        volume += mass[i] / parts[i].density;
        food.heatCapacity += mass[i] * parts[i].heatCapacity;
    }
    food.density = 1.0 / volume;
    double resistance = 0.0;
    for (std::size_t i = 0; i < mass.size(); ++i) {
        const double share = mass[i] / parts[i].density / volume;
        food.conductivity += share * parts[i].conductivity;
        resistance += share / parts[i].conductivity;
    }
    food.conductivityAcross = 1.0 / resistance;
    return food;
}

} // namespace

Result<ComponentProperties> componentProperties(Component component, double temperature)
{
    if (auto fault = temperatureFault(temperature)) {
        return *fault;
    }
    return propertiesOf(component, temperature);
}

Result<FoodProperties> foodProperties(const Composition& composition, double temperature,
                                      double freezesAt)
{
    if (auto fault = temperatureFault(temperature)) {
        return *fault;
    }
    if (auto fault = compositionFault(composition, freezesAt)) {
        return *fault;
    }
    return mixed(composition, temperature, freezesAt);
}

Result<HeatMaterial> heatMaterial(const Composition& composition, double freezesAt)
{
    if (auto fault = compositionFault(composition, freezesAt)) {
        return *fault;
    }
    constexpr double step = 0.25; // °C
    constexpr auto points = static_cast<std::size_t>((hottest - coldest) / step) + 1;
    const double density = mixed(composition, 20.0, freezesAt).density;
    std::vector<double> enthalpy;
    std::vector<double> conductivity;
    enthalpy.reserve(points);
    conductivity.reserve(points);
    double sensible = 0.0; // J/kg since the coldest
    double before = 0.0;
    for (std::size_t i = 0; i < points; ++i) {
        const double t = coldest + step * static_cast<double>(i);
        const FoodProperties food = mixed(composition, t, freezesAt);
        if (i > 0) {
            sensible += 0.5 * step * (before + food.heatCapacity);
        }
        before = food.heatCapacity;
        enthalpy.push_back(density * (sensible - heatOfMelting * food.iceFraction));
        conductivity.push_back(food.conductivity);
    }
    return HeatMaterial::tabulated(coldest, step, std::move(enthalpy), std::move(conductivity));
}

Result<double> heatCapacityOfParts(const Composition& composition)
{
    if (auto fault = compositionFault(composition, usualFreezingPoint)) {
        return *fault;
    }
    return 1424.0 * (composition.carbohydrate + composition.fibre) + 1549.0 * composition.protein +
           1675.0 * composition.fat + 837.0 * composition.ash + 4187.0 * composition.water;
}

Result<double> conductivityOfMeat(double water)
{
    if (auto fault = outsideRange({{"The part of water in the meat", water, 0.60, 0.80, ""}})) {
        return *fault;
    }
    return 0.148 + 0.493 * water;
}

} // namespace suppertide::science
