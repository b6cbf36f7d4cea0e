// Moist surface: what evaporation takes away from a bare food in an oven. A roast loses a fifth of
// its mass, and the heat for that does not get into it: its surface stays far below the oven's
// temperature.
#pragma once

#include "core/base/result.h"
#include "core/science/estimate.h"
#include "core/science/heated_body.h"

namespace suppertide::science {

/// How much of a surface evaporates as open water would: nothing in a covered dish, a bag or a
/// liquid; a tenth or so of a bare roast, fish or gratin, which dries and crusts. Fitted between
/// two kinds of figures: the 28 to 33 minutes a pound of a boneless rib roast (roasting chart of
/// foodsafety.gov), and the carry-over of 3 to 14 °C of cookery texts.
inline constexpr Spread coveredSurface{0.0, 0.0, 0.0};
inline constexpr Spread bareSurface{0.03, 0.09, 0.20};

/// The exchange without evaporation that heats alike: a temperature at which the surface would
/// neither gain nor lose, and the coefficient that gives the true heat flow at 50 °C (or a degree
/// below that temperature). Half of `dry.coefficient` is convection, half radiation (common
/// practice for ovens); air with 1.5 kPa of steam at sea level. Wetness 0…1, `dry` 30…400 °C; a
/// failure outside. A wetness below 0.01 or a place below 60 °C: `dry` as it is.
/// Source: heat and mass transfer analogy, q = h_c·(M_w/M_air)·h_fg/(cp·p·Le^(2/3))·Δp: Incropera
/// et al., Fundamentals of Heat and Mass Transfer, “Evaporative cooling”.
[[nodiscard]] Result<Exchange> withEvaporation(const Exchange& dry, double wetness);

} // namespace suppertide::science
