#include "core/science/chilling.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/science/core_temperature.h"
#include "core/science/reduction.h"
#include "core/science/valid_range.h"
#include "core/science/water.h"

namespace suppertide::science {

namespace {

std::optional<Failure> faultOf(const ChillQuestion& q)
{
    if (auto fault = outsideRange(
            {{"What is to be chilled", q.litres, 0.02, 60.0, "litres"},
             {"The number of containers", static_cast<double>(q.containers), 1.0, 50.0, ""},
             {"The diameter of the container", q.diameter, 0.03, 0.80, "m"},
             {"The temperature at the start", q.from, -40.0, 150.0, "°C"},
             {"The temperature wanted", q.to, -40.0, 150.0, "°C"},
             {"The temperature of the place", q.placeTemperature, -60.0, 150.0, "°C"}})) {
        return fault;
    }
    if (!(q.placeTemperature < q.to && q.to <= q.from)) {
        return cannotCompute(fmt::format(
            "Food of {} °C never gets to {} °C where it is {} °C. Take a colder place, or "
            "another temperature.",
            plainNumber(q.from), plainNumber(q.to), plainNumber(q.placeTemperature)));
    }
    const double depth = depthOf(q);
    return outsideRange({{"The depth of the food in its container", depth, 0.001, 1.0, "m"}});
}

/// Minutes by Newton's law, and by what evaporates from the top, `share` of what a still surface
/// gives off: the way from one temperature to the other in small steps.
double openMinutes(const ChillQuestion& q, double heat, double coefficient, double area,
                   double share)
{
    constexpr int steps = 400;
    constexpr double coolest = 20.0; // °C: below, next to nothing evaporates
    constexpr double hottest = 99.0;
    const double top = std::numbers::pi * 0.25 * q.diameter * q.diameter;
    const double step = (q.from - q.to) / steps;
    double seconds = 0.0;
    for (int i = 0; i < steps; ++i) {
        const double now = q.from - (i + 0.5) * step;
        double loss = coefficient * area * (now - q.placeTemperature); // W
        if (now > coolest) {
            const double water = std::min(now, hottest);
            const auto rate = evaporationOfSurface({top, water, q.placeTemperature});
            loss += rate ? share * *rate * heatOfVaporisation(water).value() : 0.0;
        }
        seconds += heat * step / loss;
    }
    return seconds / 60.0;
}

Result<Estimate> stirred(const ChillQuestion& q)
{
    auto properties = foodProperties(q.food, std::max(0.5 * (q.from + q.to), 0.0));
    if (!properties) {
        return properties.error();
    }
    const double depth = depthOf(q);
    const double area = std::numbers::pi * q.diameter * (0.5 * q.diameter + depth);
    const double mass = q.litres / 1000.0 / q.containers * properties->density;
    const Spread& h = surroundingsOf(q.place).coefficient;
    const bool isAir = q.place == Place::Counter || q.place == Place::Fridge;
    const bool evaporates =
        q.isOpen && isAir && q.placeTemperature >= 0.0 && q.placeTemperature <= 50.0;
    const auto minutes = [&](double coefficient, double share) {
        if (evaporates) {
            return openMinutes(q, mass * properties->heatCapacity, coefficient, area, share);
        }
        const double tau =
            newtonTimeConstant(mass, properties->heatCapacity, coefficient, area).value();
        return newtonSeconds(q.from, q.to, q.placeTemperature, tau).value() / 60.0;
    };
    constexpr Spread evaporation{0.6, 1.0, 1.7}; // an order of magnitude
    Estimate estimate{minutes(h.most, evaporation.most),
                      minutes(h.likely, evaporation.likely),
                      minutes(h.least, evaporation.least),
                      {{"in each container", q.litres / q.containers, "litres"},
                       {"depth", 1000.0 * depth, "mm"},
                       {"surface of each", 1e4 * area, "cm²"},
                       {"at the start", q.from, "°C"},
                       {"wanted", q.to, "°C"},
                       {"surroundings", q.placeTemperature, "°C"},
                       {"heat transfer at the surface", h.likely, "W/(m²·K)"}}};
    if (estimate.most > mostMinutes) {
        return cannotCompute(
            "So much does not get that cold within two weeks. Split it, or take a colder place.");
    }
    return estimate;
}

} // namespace

double depthOf(const ChillQuestion& question)
{
    const double radius = 0.5 * question.diameter;
    return question.litres / 1000.0 / question.containers / (std::numbers::pi * radius * radius);
}

Result<Estimate> timeToChill(const ChillQuestion& question)
{
    if (auto fault = faultOf(question)) {
        return *fault;
    }
    if (question.isStirred) {
        return stirred(question);
    }
    auto estimate = timeToCore({.food = question.food,
                                .shape = Roll{question.diameter, depthOf(question)},
                                .start = question.from,
                                .target = question.to,
                                .surroundings = question.placeTemperature,
                                .coefficient = surroundingsOf(question.place).coefficient});
    if (estimate) {
        estimate->because.insert(
            estimate->because.begin(),
            {{"in each container", question.litres / question.containers, "litres"},
             {"depth", 1000.0 * depthOf(question), "mm"}});
    }
    return estimate;
}

Result<double> newtonTimeConstant(double mass, double heatCapacity, double coefficient, double area)
{
    if (auto fault =
            outsideRange({{"The mass", mass, 1e-4, 1000.0, "kg"},
                          {"The specific heat", heatCapacity, 100.0, 10000.0, "J/(kg·K)"},
                          {"The heat transfer coefficient", coefficient, 0.1, 1e5, "W/(m²·K)"},
                          {"The surface", area, 1e-5, 100.0, "m²"}})) {
        return *fault;
    }
    return mass * heatCapacity / (coefficient * area);
}

Result<double> newtonSeconds(double from, double to, double surroundings, double timeConstant)
{
    if (auto fault = outsideRange({{"The time constant", timeConstant, 1e-3, 1e9, "s"},
                                   {"The temperature at the start", from, -200.0, 600.0, "°C"}})) {
        return *fault;
    }
    if (from == to) {
        return 0.0;
    }
    const double left = (to - surroundings) / (from - surroundings);
    if (!(left > 0.0 && left < 1.0)) {
        return cannotCompute(fmt::format(
            "What is at {} °C never gets to {} °C where it is {} °C. Choose a temperature "
            "between the two.",
            plainNumber(from), plainNumber(to), plainNumber(surroundings)));
    }
    return -timeConstant * std::log(left);
}

Result<double> coolingSlope(double first, double second, double air, double hours)
{
    if (!(first >= second && second > air && hours > 0.0 && std::isfinite(first) &&
          std::isfinite(air) && std::isfinite(hours))) {
        return cannotCompute("Two readings of cooling food must fall and stay above the "
                             "temperature of the air, with some "
                             "time between them. Measure again.");
    }
    return std::log10((first - air) / (second - air)) / hours;
}

Result<double> slopeOfCoolingRule(double airFahrenheit)
{
    if (auto fault =
            outsideRange({{"The temperature of the air", airFahrenheit, -20.0, 40.0, "°F"}})) {
        return *fault;
    }
    // FDA Food Code 2022, 3-501.14(A).
    const double firstLeg = coolingSlope(135.0, 70.0, airFahrenheit, 2.0).value();
    const double wholeWay = coolingSlope(135.0, 41.0, airFahrenheit, 6.0).value();
    return std::max(firstLeg, wholeWay);
}

} // namespace suppertide::science
