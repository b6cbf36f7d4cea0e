#include "core/science/core_temperature.h"

#include <fmt/format.h>

#include <algorithm>
#include <variant>

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

Result<FoodProperties> foodBetween(const CoreQuestion& q, double conductivityShare)
{
    const double between = std::max(0.5 * (q.start + q.target), q.freezesAt);
    auto properties = foodProperties(q.food, between, q.freezesAt);
    if (properties) {
        properties->conductivity *= conductivityShare;
    }
    return properties;
}

Result<Parts> bodyParts(const CoreQuestion& q, double coefficient, double conductivityShare)
{
    auto half = halfThickness(q.shape);
    if (!half) {
        return half.error();
    }
    auto properties = foodBetween(q, conductivityShare);
    if (!properties) {
        return properties.error();
    }
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

/// Blocks and rolls in one place: exact.
Result<double> minutesOfProduct(const CoreQuestion& q, const Exchange& exchange,
                                double conductivityShare)
{
    auto food = foodBetween(q, conductivityShare);
    if (!food) {
        return food.error();
    }
    auto parts = partsOf(q.shape, food->conductivity, food->diffusivity(), exchange.coefficient);
    if (!parts) {
        return parts.error();
    }
    auto product = ProductOfBodies::make(*parts);
    if (!product) {
        return product.error();
    }
    const double theta = (q.target - exchange.temperature) / (q.start - exchange.temperature);
    auto seconds = product->secondsToTheta(theta);
    if (!seconds) {
        return seconds.error();
    }
    if (*seconds > 60.0 * mostMinutes) {
        return neverReached(q, exchange.temperature);
    }
    return *seconds / 60.0;
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
    if (staysUnfrozen(q) && !std::holds_alternative<Joint>(q.shape)) {
        return minutesOfProduct(q, *exchange, conductivityShare);
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

/// How much longer freezing or thawing takes than at the likely coefficient, by the two resistances
/// of Plank's formula, 1/h and L/(2k): their factors are in the same proportion for slab, cylinder
/// and sphere.
double resistanceAgainst(const CoreQuestion& q, double coefficient, double conductivityShare)
{
    const double half = halfThickness(q.shape).value();
    const double k = foodBetween(q, 1.0).value().conductivity;
    const auto resistance = [half](double h, double conductivity) {
        return 1.0 / h + half / (2.0 * conductivity);
    };
    return resistance(coefficient, conductivityShare * k) / resistance(q.coefficient.likely, k);
}

} // namespace

std::optional<Failure> faultIn(const CoreQuestion& question)
{
    if (auto fault = outsideRange(
            {{"The temperature of the food at the start", question.start, -40.0, 150.0, "°C"},
             {"The temperature wanted in the middle", question.target, -40.0, 150.0, "°C"},
             {"The temperature of the surroundings", question.surroundings, -60.0, 400.0, "°C"},
             {"The heat transfer coefficient", question.coefficient.least, 1.0, 5000.0, "W/(m²·K)"},
             {"The heat transfer coefficient", question.coefficient.likely,
              question.coefficient.least, 5000.0, "W/(m²·K)"},
             {"The heat transfer coefficient", question.coefficient.most,
              question.coefficient.likely, 5000.0, "W/(m²·K)"},
             {"The part of the surface that is wet", question.wetness.least, 0.0, 1.0, ""},
             {"The part of the surface that is wet", question.wetness.likely,
              question.wetness.least, 1.0, ""},
             {"The part of the surface that is wet", question.wetness.most, question.wetness.likely,
              1.0, ""}})) {
        return fault;
    }
    const bool lies =
        (question.start <= question.target && question.target < question.surroundings) ||
        (question.surroundings < question.target && question.target <= question.start);
    if (!lies) {
        return cannotCompute(fmt::format("Food of {} °C never gets to {} °C in its middle where it "
                                         "is {} °C. Choose another temperature "
                                         "for the middle, or a {} place.",
                                         plainNumber(question.start), plainNumber(question.target),
                                         plainNumber(question.surroundings),
                                         question.target >= question.start ? "hotter" : "colder"));
    }
    return std::nullopt;
}

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
    auto parts = bodyParts(question, coefficient, conductivityShare);
    if (!parts) {
        return parts.error();
    }
    return bodyOf(question, *parts);
}

Result<Estimate> timeToCore(const CoreQuestion& question)
{
    if (auto fault = faultIn(question)) {
        return *fault;
    }
    const Spread& h = question.coefficient;
    const Spread& wet = question.wetness;
    auto likely = minutesWith(question, h.likely, wet.likely, 1.0);
    if (!likely) {
        return likely.error();
    }
    auto least = staysUnfrozen(question)
                     ? minutesWith(question, h.most, wet.least, 1.0)
                     : Result<double>{*likely * resistanceAgainst(question, h.most, 1.0)};
    if (!least) {
        return least.error();
    }
    auto most = staysUnfrozen(question)
                    ? minutesWith(question, h.least, wet.most, leastConductivityShare)
                    : Result<double>{*likely *
                                     resistanceAgainst(question, h.least, leastConductivityShare)};
    if (!most) {
        return most.error();
    }
    if (*most > mostMinutes) {
        return neverReached(question, question.surroundings);
    }
    const Exchange exchange = exchangeFor(question, h.likely, wet.likely).value();
    const auto parts = bodyParts(question, exchange.coefficient, 1.0);
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
