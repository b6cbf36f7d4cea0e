#include "core/science/oven_curve.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/science/bracketed_root.h"
#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

constexpr double hottestOven = 400.0; // °C

std::optional<Failure> readingFault(double room, const OvenReading& reading)
{
    return outsideRange(
        {{"The temperature of the kitchen", room, 0.0, 45.0, "°C"},
         {"The time until the oven was read", reading.minutes, 1.0, 180.0, "minutes"},
         {"The temperature that was read", reading.celsius, room + 20.0, hottestOven, "°C"}});
}

std::optional<Failure> settingFault(double celsius)
{
    return outsideRange({{"The oven's setting", celsius, 50.0, 300.0, "°C"}});
}

/// The minutes asked for, or why they are none.
Result<double> sensible(double minutes, double from, double to)
{
    if (!std::isfinite(minutes) || minutes > 1440.0) {
        return cannotCompute(fmt::format(
            "By its readings this oven does not get from {} °C to {} °C within a day. Choose "
            "another temperature, or measure again.",
            plainNumber(from), plainNumber(to)));
    }
    return minutes;
}

} // namespace

Result<OvenHeating> OvenHeating::fromOneReading(double room, const OvenReading& reading)
{
    if (auto fault = readingFault(room, reading)) {
        return *fault;
    }
    return OvenHeating{std::nullopt, (reading.celsius - room) / reading.minutes};
}

Result<OvenHeating> OvenHeating::fromTwoReadings(double room, const OvenReading& first,
                                                 const OvenReading& second)
{
    if (auto fault = readingFault(room, first)) {
        return *fault;
    }
    if (auto fault = readingFault(room, second)) {
        return *fault;
    }
    if (!(second.minutes > first.minutes && second.celsius > first.celsius)) {
        return cannotCompute("The second reading of the oven must be later and hotter than the "
                             "first. Check the two.");
    }
    const double firstRate = (first.celsius - room) / first.minutes;
    const double thenRate = (second.celsius - first.celsius) / (second.minutes - first.minutes);
    constexpr double straight = 0.99;
    constexpr double tooFast = 1.1;
    if (thenRate > tooFast * firstRate) {
        return cannotCompute(fmt::format(
            "By these readings the oven heats faster the hotter it is ({:.1f} °C a minute, then "
            "{:.1f}), which none does. Measure again.",
            firstRate, thenRate));
    }
    if (thenRate > straight * firstRate) {
        return fromOneReading(room, second);
    }
    // (1 − e^(−t₁/τ))/(1 − e^(−t₂/τ)) rises from t₁/t₂ to 1 with 1/τ.
    const double wanted = (first.celsius - room) / (second.celsius - room);
    const auto excess = [&](double rate) {
        return std::expm1(-rate * first.minutes) / std::expm1(-rate * second.minutes) - wanted;
    };
    const double fast = 40.0 / first.minutes;
    const double slow = 1e-6 / second.minutes;
    if (excess(fast) <= 0.0) {
        return OvenHeating{second.celsius, fast};
    }
    const double rate = bracketedRoot(excess, slow, fast);
    const double end = room - (second.celsius - room) / std::expm1(-rate * second.minutes);
    return OvenHeating{end, rate};
}

Result<double> OvenHeating::minutesBetween(double from, double to) const
{
    if (auto fault = outsideRange({{"The oven's temperature now", from, -10.0, hottestOven, "°C"},
                                   {"The temperature wanted", to, from, hottestOven, "°C"}})) {
        return *fault;
    }
    if (!end_) {
        return sensible((to - from) / rate_, from, to);
    }
    if (to == from) {
        return 0.0;
    }
    if (to >= *end_) {
        return cannotCompute(fmt::format(
            "By its readings this oven ends at {:.0f} °C and does not get to {} °C. Choose a "
            "lower temperature, or measure again.",
            *end_, plainNumber(to)));
    }
    return sensible(std::log((*end_ - from) / (*end_ - to)) / rate_, from, to);
}

Result<double> OvenHeating::temperatureAfter(double from, double minutes) const
{
    if (auto fault = outsideRange({{"The oven's temperature now", from, -10.0, hottestOven, "°C"},
                                   {"The time", minutes, 0.0, 1440.0, "minutes"}})) {
        return *fault;
    }
    const double reached =
        end_ ? *end_ - (*end_ - from) * std::exp(-rate_ * minutes) : from + rate_ * minutes;
    return std::min(reached, hottestOven);
}

Result<OvenCooling> OvenCooling::fromReading(double room, double hot, const OvenReading& reading)
{
    if (auto fault = outsideRange(
            {{"The temperature of the kitchen", room, 0.0, 45.0, "°C"},
             {"The oven's temperature at switching off", hot, room + 20.0, hottestOven, "°C"},
             {"The time until the oven was read", reading.minutes, 1.0, 1440.0, "minutes"},
             {"The temperature that was read", reading.celsius, room + 1.0, hot - 1.0, "°C"}})) {
        return *fault;
    }
    return OvenCooling{room, std::log((hot - room) / (reading.celsius - room)) / reading.minutes};
}

OvenCooling OvenCooling::usual(double room, bool isDoorAjar)
{
    constexpr double measuredAt = 200.0;
    constexpr double shut = 2.5; // °C a minute
    constexpr double ajar = 6.5;
    return OvenCooling{room, (isDoorAjar ? ajar : shut) / (measuredAt - room)};
}

Result<double> OvenCooling::minutesBetween(double from, double to) const
{
    if (auto fault = outsideRange({{"The oven's temperature now", from, room_, hottestOven, "°C"},
                                   {"The temperature wanted", to, room_, from, "°C"}})) {
        return *fault;
    }
    return to == from ? 0.0 : sensible(std::log((from - room_) / (to - room_)) / rate_, from, to);
}

Result<double> OvenCooling::temperatureAfter(double from, double minutes) const
{
    if (auto fault = outsideRange({{"The oven's temperature now", from, room_, hottestOven, "°C"},
                                   {"The time", minutes, 0.0, 1440.0, "minutes"}})) {
        return *fault;
    }
    return room_ + (from - room_) * std::exp(-rate_ * minutes);
}

Result<Estimate> usualPreheat(double celsius)
{
    if (auto fault = settingFault(celsius)) {
        return *fault;
    }
    constexpr double usual = 175.0; // °C, in 10 to 15 minutes; common practice
    constexpr double room = 20.0;
    const double more = std::max(celsius - usual, 0.0) / 50.0 * 5.0;
    const double share = std::min((celsius - room) / (usual - room), 1.0);
    return Estimate{10.0 * share + more,
                    12.5 * share + more,
                    15.0 * share + more,
                    {{"oven", celsius, "°C"}, {"usual to 175 °C", 12.5, "minutes"}}};
}

Result<double> fanSetting(double conventional)
{
    if (auto fault = settingFault(conventional)) {
        return *fault;
    }
    return conventional - 20.0;
}

Result<double> conventionalSetting(double fan)
{
    if (auto fault = settingFault(fan + 20.0)) {
        return *fault;
    }
    return fan + 20.0;
}

Result<double> fahrenheitOfGasMark(double mark)
{
    if (mark == 0.25) {
        return 225.0;
    }
    if (mark == 0.5) {
        return 250.0;
    }
    if (mark >= 1.0 && mark <= 9.0 && mark == std::floor(mark)) {
        return 250.0 + 25.0 * mark;
    }
    return cannotCompute("Gas marks are ¼, ½ and 1 to 9. Enter one of them.");
}

Result<double> celsiusOfGasMark(double mark)
{
    auto fahrenheit = fahrenheitOfGasMark(mark);
    return fahrenheit ? Result<double>{(*fahrenheit - 32.0) / 1.8} : fahrenheit;
}

} // namespace suppertide::science
