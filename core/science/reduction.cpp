#include "core/science/reduction.h"

#include <algorithm>
#include <numbers>

#include "core/science/valid_range.h"
#include "core/science/water.h"

namespace suppertide::science {

namespace {

/// W/m² of pan at which a liquid boils over (common practice).
constexpr Spread boilsOver{40e3, 60e3, 90e3};
/// How far the formula of pools may be off at the temperatures of a pan (common practice).
constexpr double gentlyLeast = 0.6;
constexpr double gentlyMost = 1.7;

std::optional<Failure> faultOf(const ReductionQuestion& q)
{
    return outsideRange(
        {{"What is to be reduced", q.litres, 0.02, 60.0, "litres"},
         {"What shall be left", q.litresLeft, 0.02 * q.litres, 0.99 * q.litres, "litres"},
         {"The power of the burner", q.burner, 50.0, 10000.0, "W"},
         {"The part of the power that gets into the pan", q.efficiency.least, 0.05, 1.0, ""},
         {"The part of the power that gets into the pan", q.efficiency.likely, q.efficiency.least,
          1.0, ""},
         {"The part of the power that gets into the pan", q.efficiency.most, q.efficiency.likely,
          1.0, ""},
         {"The diameter of the pan", q.panDiameter, 0.08, 0.60, "m"}});
}

} // namespace

Result<double> evaporationOfPower(double watts, double celsius)
{
    if (auto fault = outsideRange({{"The power", watts, 0.0, 50000.0, "W"},
                                   {"The temperature", celsius, 50.0, 110.0, "°C"}})) {
        return *fault;
    }
    return watts / heatOfVaporisation(celsius).value();
}

Result<Estimate> timeToReduce(const ReductionQuestion& question)
{
    if (auto fault = faultOf(question)) {
        return *fault;
    }
    auto boils = boilingPointAtAltitude(question.altitude);
    if (!boils) {
        return boils.error();
    }
    const double radius = 0.5 * question.panDiameter;
    const double area = std::numbers::pi * radius * radius;
    const double away = question.litres - question.litresLeft;
    const double mass = away / 1000.0 * waterDensity(*boils).value();
    const auto net = [&](double efficiency, double limit) {
        return std::min(question.burner * efficiency, limit * area);
    };
    const auto minutes = [&](double watts) {
        return mass / evaporationOfPower(watts, *boils).value() / 60.0;
    };
    const double likely = net(question.efficiency.likely, boilsOver.likely);
    return Estimate{
        minutes(net(question.efficiency.most, boilsOver.most)),
        minutes(likely),
        minutes(net(question.efficiency.least, boilsOver.least)),
        {{"to be boiled away", away, "litres"},
         {"boils at", *boils, "°C"},
         {"heat of a kilogram of steam", heatOfVaporisation(*boils).value() / 1000.0, "kJ"},
         {"burner", question.burner, "W"},
         {"into the pan", question.burner * question.efficiency.likely, "W"},
         {"most that the pan takes before it boils over", boilsOver.likely * area, "W"},
         {"used", likely, "W"}}};
}

Result<double> evaporationOfSurface(const OpenSurface& surface)
{
    if (auto fault =
            outsideRange({{"The surface", surface.area, 0.001, 1.0, "m²"},
                          {"The temperature of the liquid", surface.water, 20.0, 99.0, "°C"},
                          {"The temperature of the air", surface.air, 0.0, 50.0, "°C"},
                          {"The humidity of the air", surface.humidity, 0.0, 1.0, ""}})) {
        return *fault;
    }
    const double over = saturationPressure(surface.water).value() -
                        surface.humidity * saturationPressure(surface.air).value();
    if (over <= 0.0) {
        return cannotCompute(
            "Nothing evaporates: the air is as moist as the liquid is warm. Heat it more.");
    }
    constexpr double stillAir = 0.089; // W/m² per kPa, in thousands
    return surface.area * over * stillAir / (heatOfVaporisation(surface.water).value() / 1000.0);
}

Result<Estimate> timeToReduceGently(double litresAway, const OpenSurface& surface)
{
    if (auto fault = outsideRange({{"What is to evaporate", litresAway, 0.005, 60.0, "litres"}})) {
        return *fault;
    }
    auto rate = evaporationOfSurface(surface);
    if (!rate) {
        return rate.error();
    }
    const double minutes = litresAway / 1000.0 * waterDensity(surface.water).value() / *rate / 60.0;
    if (gentlyMost * minutes > mostMinutes) {
        return cannotCompute("So much does not evaporate within two weeks from so small or cool a "
                             "surface. Boil it, or "
                             "take a wider pan.");
    }
    return Estimate{gentlyLeast * minutes,
                    minutes,
                    gentlyMost * minutes,
                    {{"to evaporate", litresAway, "litres"},
                     {"surface", 1e4 * surface.area, "cm²"},
                     {"liquid", surface.water, "°C"},
                     {"air", surface.air, "°C"},
                     {"humidity", 100.0 * surface.humidity, "%"},
                     {"evaporates in an hour", 3600.0 * *rate, "kg"}}};
}

} // namespace suppertide::science
