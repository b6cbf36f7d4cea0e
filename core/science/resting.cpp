#include "core/science/resting.h"

#include <algorithm>

#include "core/science/bracketed_root.h"
#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

struct Peak
{
    double rise;
    double minutes;
};

Result<Peak> peakAfter(const CoreQuestion& q, double ovenCoefficient, double wetness,
                       double roomCoefficient, double room)
{
    auto oven = exchangeFor(q, ovenCoefficient, wetness);
    if (!oven) {
        return oven.error();
    }
    auto body = bodyFor(q, oven->coefficient);
    if (!body) {
        return body.error();
    }
    const auto cooked = body->advanceToCentre(*oven, q.target, 60.0 * mostMinutes);
    if (!cooked) {
        return cooked.error();
    }
    if (!cooked->has_value()) {
        return cannotCompute(
            "The middle does not get there within two weeks. Choose another temperature for it.");
    }
    const double atOnce = body->centre();
    Peak peak{0.0, 0.0};
    double seconds = 0.0;
    // The hottest time is found to a twentieth of itself; around it the temperature hardly changes.
    for (double step = 30.0; seconds < 6.0 * 3600.0; step = std::max(30.0, 0.05 * seconds)) {
        if (auto passed = body->advance({room, roomCoefficient}, step); !passed) {
            return passed.error();
        }
        seconds += step;
        const double rise = body->centre() - atOnce;
        if (rise <= peak.rise) {
            break;
        }
        peak = {rise, seconds / 60.0};
    }
    return peak;
}

Spread ordered(double a, double b, double c)
{
    return {std::min({a, b, c}), b, std::max({a, b, c})};
}

} // namespace

Result<Resting> carryOver(const CoreQuestion& question, double room)
{
    if (auto fault = outsideRange({{"The temperature of the room", room, 0.0, 60.0, "°C"}})) {
        return *fault;
    }
    if (auto fault = faultIn(question)) {
        return *fault;
    }
    const Spread& oven = question.coefficient;
    const Spread& wet = question.wetness;
    const Spread& counter = surroundingsOf(Place::Counter).coefficient;
    auto likely = peakAfter(question, oven.likely, wet.likely, counter.likely, room);
    auto least = peakAfter(question, oven.least, wet.most, counter.most, room);
    auto most = peakAfter(question, oven.most, wet.least, counter.least, room);
    for (const auto* peak : {&likely, &least, &most}) {
        if (!*peak) {
            return peak->error();
        }
    }
    return Resting{ordered(least->rise, likely->rise, most->rise),
                   ordered(least->minutes, likely->minutes, most->minutes),
                   {{"taken out at", question.target, "°C"},
                    {"oven", question.surroundings, "°C"},
                    {"room", room, "°C"},
                    {"heat transfer in the oven", oven.likely, "W/(m²·K)"},
                    {"heat transfer on the counter", counter.likely, "W/(m²·K)"}}};
}

Result<double> pullTemperature(const CoreQuestion& question, double room, double wanted)
{
    CoreQuestion asked = question;
    asked.target = wanted;
    if (auto fault = outsideRange({{"The temperature of the room", room, 0.0, 60.0, "°C"}})) {
        return *fault;
    }
    if (auto possible = timeToCore(asked); !possible) {
        return possible.error();
    }
    const double coefficient = surroundingsOf(Place::Counter).coefficient.likely;
    const auto excess = [&](double target) {
        asked.target = target;
        const auto peak =
            peakAfter(asked, asked.coefficient.likely, asked.wetness.likely, coefficient, room);
        return peak ? target + peak->rise - wanted : target - wanted;
    };
    const double coldest = question.start + 0.1;
    if (coldest >= wanted || excess(coldest) > 0.0) {
        return cannotCompute("Even if it is taken out at once, it gets warmer than that. Choose a "
                             "higher temperature.");
    }
    constexpr double precise = 0.2; // °C
    return bracketedRoot(excess, coldest, wanted, precise);
}

} // namespace suppertide::science
