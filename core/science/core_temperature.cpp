#include "core/science/core_temperature.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

/// Measured conductivities lie up to this much below Choi and Okos's.
constexpr double leastConductivityShare = 0.9;

struct Parts
{
    double halfThickness;
    double shapeFactor;
    FoodProperties properties;
};

bool staysUnfrozen(const CoreQuestion& q)
{
    return std::min({q.start, q.target, q.surroundings}) >= q.freezesAt;
}

std::optional<Failure> faultOf(const CoreQuestion& q)
{
    if (auto fault = outsideRange(
            {{"The temperature of the food at the start", q.start, -40.0, 150.0, "°C"},
             {"The temperature wanted in the middle", q.target, -40.0, 150.0, "°C"},
             {"The temperature of the surroundings", q.surroundings, -60.0, 400.0, "°C"},
             {"The heat transfer coefficient", q.coefficient.least, 1.0, 5000.0, "W/(m²·K)"},
             {"The heat transfer coefficient", q.coefficient.likely, q.coefficient.least, 5000.0,
              "W/(m²·K)"},
             {"The heat transfer coefficient", q.coefficient.most, q.coefficient.likely, 5000.0,
              "W/(m²·K)"},
             {"The part of the surface that is wet", q.wetness.least, 0.0, 1.0, ""},
             {"The part of the surface that is wet", q.wetness.likely, q.wetness.least, 1.0, ""},
             {"The part of the surface that is wet", q.wetness.most, q.wetness.likely, 1.0, ""}})) {
        return fault;
    }
    const bool lies = (q.start <= q.target && q.target < q.surroundings) ||
                      (q.surroundings < q.target && q.target <= q.start);
    if (!lies) {
        return cannotCompute(fmt::format("Food of {} °C never gets to {} °C in its middle where it "
                                         "is {} °C. Choose another temperature "
                                         "for the middle, or a {} place.",
                                         plainNumber(q.start), plainNumber(q.target),
                                         plainNumber(q.surroundings),
                                         q.target >= q.start ? "hotter" : "colder"));
    }
    return std::nullopt;
}

Result<Parts> partsOf(const CoreQuestion& q, double coefficient, double conductivityShare)
{
    auto half = halfThickness(q.shape);
    if (!half) {
        return half.error();
    }
    const double between = std::max(0.5 * (q.start + q.target), q.freezesAt);
    auto properties = foodProperties(q.food, between, q.freezesAt);
    if (!properties) {
        return properties.error();
    }
    properties->conductivity *= conductivityShare;
    auto factor = shapeFactor(q.shape, coefficient * *half / properties->conductivity);
    if (!factor) {
        return factor.error();
    }
    return Parts{*half, *factor, *properties};
}

Result<HeatedBody> bodyOf(const CoreQuestion& q, const Parts& parts)
{
    const FoodProperties& food = parts.properties;
    auto material = staysUnfrozen(q) ? HeatMaterial::constant(food.conductivity,
                                                              food.density * food.heatCapacity)
                                     : heatMaterial(q.food, q.freezesAt);
    if (!material) {
        return material.error();
    }
    return HeatedBody::make(parts.shapeFactor, parts.halfThickness, std::move(*material), q.start);
}

Failure neverReached(const CoreQuestion& q, double surface)
{
    return cannotCompute(fmt::format(
        "The middle does not get to {} °C in surroundings of {} °C within two weeks: the surface "
        "stays at "
        "about {:.0f} °C. Choose another temperature for the middle, or cover the food.",
        plainNumber(q.target), plainNumber(q.surroundings), surface));
}

Result<double> minutesWith(const CoreQuestion& q, double coefficient, double wetness,
                           double conductivityShare)
{
    auto exchange = exchangeFor(q, coefficient, wetness);
    if (!exchange) {
        return exchange.error();
    }
    if (q.target > q.start && exchange->temperature <= q.target) {
        return neverReached(q, exchange->temperature);
    }
    auto body = bodyFor(q, exchange->coefficient, conductivityShare);
    if (!body) {
        return body.error();
    }
    auto seconds = body->advanceToCentre(*exchange, q.target, 60.0 * mostMinutes);
    if (!seconds) {
        return seconds.error();
    }
    if (!seconds->has_value()) {
        return neverReached(q, exchange->temperature);
    }
    return **seconds / 60.0;
}

} // namespace

Result<Exchange> exchangeFor(const CoreQuestion& question, double coefficient, double wetness)
{
    return withEvaporation({question.surroundings, coefficient}, wetness);
}

Result<HeatedBody> bodyFor(const CoreQuestion& question, double coefficient,
                           double conductivityShare)
{
    if (auto fault = outsideRange(
            {{"The part of the conductivity", conductivityShare, 0.5, 1.0, ""},
             {"The heat transfer coefficient", coefficient, 1.0, 5000.0, "W/(m²·K)"}})) {
        return *fault;
    }
    auto parts = partsOf(question, coefficient, conductivityShare);
    if (!parts) {
        return parts.error();
    }
    return bodyOf(question, *parts);
}

Result<Estimate> timeToCore(const CoreQuestion& question)
{
    if (auto fault = faultOf(question)) {
        return *fault;
    }
    const Spread& h = question.coefficient;
    const Spread& wet = question.wetness;
    auto likely = minutesWith(question, h.likely, wet.likely, 1.0);
    if (!likely) {
        return likely.error();
    }
    auto least = minutesWith(question, h.most, wet.least, 1.0);
    if (!least) {
        return least.error();
    }
    auto most = minutesWith(question, h.least, wet.most, leastConductivityShare);
    if (!most) {
        return most.error();
    }
    const Exchange exchange = exchangeFor(question, h.likely, wet.likely).value();
    const auto parts = partsOf(question, exchange.coefficient, 1.0);
    if (!parts) {
        return parts.error();
    }
    const double half = parts->halfThickness;
    const FoodProperties& food = parts->properties;
    // The solver is exact to its step; three runs may differ by that where the coefficient hardly
    // counts.
    return Estimate{std::min(*least, *likely),
                    *likely,
                    std::max(*most, *likely),
                    {{"half of the thickness", 1000.0 * half, "mm"},
                     {"shape (0 slab, 1 cylinder, 2 sphere)", parts->shapeFactor, ""},
                     {"at the start", question.start, "°C"},
                     {"wanted in the middle", question.target, "°C"},
                     {"surroundings", question.surroundings, "°C"},
                     {"heat transfer at the surface", h.likely, "W/(m²·K)"},
                     {"part of the surface that evaporates like water", wet.likely, ""},
                     {"as if surroundings were", exchange.temperature, "°C"},
                     {"conductivity", food.conductivity, "W/(m·K)"},
                     {"diffusivity", 1e6 * food.diffusivity(), "mm²/s"},
                     {"Biot number", exchange.coefficient * half / food.conductivity, ""}}};
}

} // namespace suppertide::science
