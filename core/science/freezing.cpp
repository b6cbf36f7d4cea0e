#include "core/science/freezing.h"

#include <fmt/format.h>

#include <cmath>

#include "core/science/valid_range.h"

namespace suppertide::science {

PlankFactors plankFactors(Shape shape)
{
    switch (shape) {
    case Shape::Slab:
        return {1.0 / 2.0, 1.0 / 8.0};
    case Shape::Cylinder:
        return {1.0 / 4.0, 1.0 / 16.0};
    case Shape::Sphere:
        break;
    }
    return {1.0 / 6.0, 1.0 / 24.0};
}

Result<PlankFactors> plankFactorsOfBlock(double beta1, double beta2)
{
    if (auto fault =
            outsideRange({{"The second length against the shortest", beta1, 1.0, 20.0, ""},
                          {"The third length against the shortest", beta2, 1.0, 20.0, ""}})) {
        return *fault;
    }
    const double p = beta1 * beta2 / (2.0 * (beta1 * beta2 + beta1 + beta2));
    const double root = std::sqrt((beta1 - beta2) * (beta1 - 1.0) + (beta2 - 1.0) * (beta2 - 1.0));
    const auto part = [&](double x) {
        return x > 1.0 ? (x - 1.0) * (beta1 - x) * (beta2 - x) * std::log(x / (x - 1.0)) : 0.0;
    };
    double r = (2.0 * beta1 + 2.0 * beta2 - 1.0) / 72.0;
    constexpr double cube = 1e-6; // the first term vanishes there, as 0/0
    if (root > cube) {
        const double sum = beta1 + beta2 + 1.0;
        r += (part((sum + root) / 3.0) - part((sum - root) / 3.0)) / (8.0 * root);
    }
    return PlankFactors{p, r};
}

Result<double> plankSeconds(const PlankQuestion& q)
{
    if (auto fault = outsideRange(
            {{"The size of the food", q.size, 0.001, 2.0, "m"},
             {"The density", q.density, 100.0, 3000.0, "kg/m³"},
             {"The heat to be taken out", q.heat, 1e3, 1e6, "J/kg"},
             {"The thermal conductivity", q.conductivity, 0.01, 10.0, "W/(m·K)"},
             {"The heat transfer coefficient", q.coefficient, 0.1, 1e5, "W/(m²·K)"},
             {"The freezing point", q.freezingPoint, -10.0, 0.0, "°C"},
             {"The temperature of the surroundings", q.surroundings, -200.0, 50.0, "°C"}})) {
        return *fault;
    }
    if (q.surroundings > q.freezingPoint - 0.5) {
        return cannotCompute(fmt::format(
            "Food that freezes at {} °C does not freeze where it is {} °C. Choose a colder place.",
            plainNumber(q.freezingPoint), plainNumber(q.surroundings)));
    }
    return q.density * q.heat / (q.freezingPoint - q.surroundings) *
           (q.factors.p * q.size / q.coefficient + q.factors.r * q.size * q.size / q.conductivity);
}

Result<double> amendedHeat(double start, double freezingPoint, double end, double latent,
                           double unfrozenCp, double frozenCp)
{
    if (auto fault =
            outsideRange({{"The freezing point", freezingPoint, -10.0, 0.0, "°C"},
                          {"The temperature at the start", start, freezingPoint, 150.0, "°C"},
                          {"The temperature at the end", end, -60.0, freezingPoint, "°C"},
                          {"The heat of melting", latent, 0.0, 334e3, "J/kg"},
                          {"The specific heat", unfrozenCp, 500.0, 5000.0, "J/(kg·K)"},
                          {"The specific heat, frozen", frozenCp, 500.0, 5000.0, "J/(kg·K)"}})) {
        return *fault;
    }
    return unfrozenCp * (start - freezingPoint) + latent + frozenCp * (freezingPoint - end);
}

Result<double> coefficientUnder(const std::vector<Layer>& layers, double coefficient)
{
    if (auto fault =
            outsideRange({{"The heat transfer coefficient", coefficient, 0.1, 1e5, "W/(m²·K)"}})) {
        return *fault;
    }
    double resistance = 1.0 / coefficient;
    for (const Layer& layer : layers) {
        if (auto fault =
                outsideRange({{"The thickness of the wrapping", layer.thickness, 0.0, 0.5, "m"},
                              {"The conductivity of the wrapping", layer.conductivity, 0.01, 500.0,
                               "W/(m·K)"}})) {
            return *fault;
        }
        resistance += layer.thickness / layer.conductivity;
    }
    return 1.0 / resistance;
}

Result<Estimate> thawingTime(const Composition& food, double freezesAt, const BodyShape& shape,
                             double start, Place place)
{
    if (auto fault =
            outsideRange({{"The temperature of the frozen food", start, -40.0, -2.0, "°C"}})) {
        return *fault;
    }
    const Surroundings& around = surroundingsOf(place);
    if (!around.temperature) {
        return cannotCompute(
            fmt::format("How long food thaws in “{}” depends on a temperature that is set. "
                        "Choose fridge or cold water, or cook it from frozen.",
                        around.name));
    }
    return timeToCore({.food = food,
                       .freezesAt = freezesAt,
                       .shape = shape,
                       .start = start,
                       .target = freezesAt,
                       .surroundings = *around.temperature,
                       .coefficient = around.coefficient});
}

} // namespace suppertide::science
