// Core temperature: how long a food takes until its middle has a temperature, in one place. Used
// for roasts, fish, custards, eggs; by resting and by the way out of slow chilling.
#pragma once

#include <optional>

#include "core/base/result.h"
#include "core/science/body_shape.h"
#include "core/science/dinner_foods.h"
#include "core/science/estimate.h"
#include "core/science/heated_body.h"
#include "core/science/moist_surface.h"

namespace suppertide::science {

struct CoreQuestion
{
    Composition food;
    double freezesAt = usualFreezingPoint; // °C
    BodyShape shape;
    double start = 5.0;              // °C, all through
    double target = 60.0;            // °C, in the middle
    double surroundings = 0.0;       // °C, of oven, bath, fridge
    Spread coefficient;              // W/(m²·K), dry
    Spread wetness = coveredSurface; // bareSurface for what lies open in an oven
};

/// Minutes until the middle is at the target. Likely: likely coefficient; least: most coefficient;
/// most: least coefficient and a conductivity 10 % lower (as measured ones are). Evaporation and
/// crust are not computed: in an oven they lie within the range of the coefficient. Food −40…150
/// °C; other ranges as of the parts. Fails with a sentence if the target cannot be reached at the
/// likely coefficient, or not within two weeks.
[[nodiscard]] Result<Estimate> timeToCore(const CoreQuestion& question);

/// Why the question cannot be answered whatever the food: a number outside its range, or a target
/// that does not lie between food and surroundings. Nothing if it can be tried.
[[nodiscard]] std::optional<Failure> faultIn(const CoreQuestion& question);

/// What heats the food as its surroundings do, with what evaporates: to be handed to the solver.
[[nodiscard]] Result<Exchange> exchangeFor(const CoreQuestion& question, double coefficient,
                                           double wetness);

/// The food as a body for the solver: with the shape factor at this coefficient.
/// `conductivityShare` 0.5…1 scales the conductivity. Constant properties between start and target
/// if nothing freezes.
[[nodiscard]] Result<HeatedBody> bodyFor(const CoreQuestion& question, double coefficient,
                                         double conductivityShare = 1.0);

} // namespace suppertide::science
