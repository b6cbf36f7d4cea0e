#include "core/plan/oven_rate.h"

#include <algorithm>
#include <cmath>

#include "core/base/log.h"
#include "core/science/oven_curve.h"
#include "core/science/valid_range.h"

namespace suppertide {

namespace {

double degrees(Celsius temperature)
{
    return temperature.tenths() / 10.0;
}

science::OvenReading readingOf(const OvenWarming& warming)
{
    return {static_cast<double>(warming.after.count()), degrees(warming.shown)};
}

} // namespace

Result<double> measuredPreheat(const std::vector<OvenWarming>& warming, Celsius room,
                               Celsius hottest)
{
    if (warming.empty()) {
        return science::cannotCompute("Nobody has measured how this oven heats up.");
    }
    const auto heating =
        warming.size() == 1
            ? science::OvenHeating::fromOneReading(degrees(room), readingOf(warming[0]))
            : science::OvenHeating::fromTwoReadings(degrees(room), readingOf(warming[0]),
                                                    readingOf(warming[1]));
    return heating ? heating->minutesBetween(degrees(room), degrees(hottest))
                   : Result<double>(heating.error());
}

std::int64_t heatingRate(const KitchenOven& oven, Celsius room, Celsius hottest)
{
    if (oven.warming.empty() || hottest <= room) {
        return oven.heatMilliCPerMin;
    }
    const auto minutes = measuredPreheat(oven.warming, room, hottest);
    if (!minutes || *minutes <= 0) {
        log::debug("core.plan", "the readings of oven {} are not used: {}", oven.id.text(),
                   minutes ? "no time" : minutes.error().forCook);
        return oven.heatMilliCPerMin;
    }
    constexpr double milliPerTenth = 100;
    const double rise = static_cast<double>(hottest.tenths() - room.tenths()) * milliPerTenth;
    return std::max<std::int64_t>(1, std::llround(std::floor(rise / *minutes)));
}

} // namespace suppertide
