// TemperatureCurve: the temperatures in the middle and at the surface of a food through all its
// stays, as points in time, for charts, safety and lethality.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/science/heated_body.h"

namespace suppertide::science {

/// Some minutes in one place.
struct Stay
{
    Exchange place;
    double minutes = 0.0;
};

struct CurvePoint
{
    double minute = 0.0;  // since the curve began
    double centre = 0.0;  // °C
    double surface = 0.0; // °C
    double mean = 0.0;    // °C, over the volume

    friend bool operator==(const CurvePoint&, const CurvePoint&) = default;
};

/// The curve of `body` through `stays` (each 0…160 000 minutes): a point at the start, one at the
/// end of each stay, and between them one each `every` minutes (0.1…1440), later in a stay one each
/// twentieth of the time since it began: changes slow down, and straight lines between the points
/// are within 0.2 °C. `body` goes along, so that a later stay costs only itself. Fails outside the
/// ranges.
[[nodiscard]] Result<std::vector<CurvePoint>>
temperatureCurve(HeatedBody& body, const std::vector<Stay>& stays, double every);

} // namespace suppertide::science
