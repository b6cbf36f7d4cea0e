// Resting: how much warmer the middle of a roast still gets out of the oven, and when.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/science/core_temperature.h"
#include "core/science/estimate.h"
#include "core/science/surroundings.h"

namespace suppertide::science {

struct Resting
{
    Spread rise;    // °C above the temperature at which it was taken out
    Spread minutes; // until the middle is at its warmest
    std::vector<Figure> because;
};

/// Of a food that is cooked until its middle is at the target of `question` and then lies at `room`
/// °C (0…60) in still air. By the solver; range from the coefficients of oven and counter. Fails as
/// timeToCore does.
[[nodiscard]] Result<Resting> carryOver(const CoreQuestion& question, double room);

/// °C at which to take the food out, so that the rise brings it to `wanted`: question.target is
/// replaced. Fails as carryOver, and if even a food that is taken out at the start gets warmer than
/// wanted.
[[nodiscard]] Result<double> pullTemperature(const CoreQuestion& question, double room,
                                             double wanted);

} // namespace suppertide::science
