#include "core/science/temperature_curve.h"

#include <algorithm>

#include "core/science/valid_range.h"

namespace suppertide::science {

Result<std::vector<CurvePoint>> temperatureCurve(HeatedBody& body, const std::vector<Stay>& stays,
                                                 double every)
{
    if (auto fault =
            outsideRange({{"The time between two points", every, 0.1, 1440.0, "minutes"}})) {
        return *fault;
    }
    double minute = 0.0;
    const auto here = [&] {
        return CurvePoint{minute, body.centre(), body.surface(), body.mean()};
    };
    std::vector<CurvePoint> curve{here()};
    for (const Stay& stay : stays) {
        if (auto fault =
                outsideRange({{"The time in one place", stay.minutes, 0.0, 160000.0, "minutes"}})) {
            return *fault;
        }
        const double begin = minute;
        const double end = minute + stay.minutes;
        constexpr double nothing = 1e-6; // minutes
        while (end - minute > nothing) {
            constexpr double rarer = 0.04;
            const double step = std::min(std::max(every, rarer * (minute - begin)), end - minute);
            if (auto passed = body.advance(stay.place, 60.0 * step); !passed) {
                return passed.error();
            }
            minute += step;
            curve.push_back(here());
        }
    }
    return curve;
}

} // namespace suppertide::science
