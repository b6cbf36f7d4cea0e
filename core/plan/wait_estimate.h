// WaitEstimate: how long a wait is at least, where it is there for a food to get cold and set: from
// the food's shape and mass, what was done to it before, and how cold this kitchen keeps it. The
// recipe's own figure stands where nothing can be computed.
#pragma once

#include "core/kitchen/kitchen.h"
#include "core/plan/formulation.h"

namespace suppertide {

/// For `share` of the recipe's portions, in the wait's first place. Range: the least of the wait by
/// the range of the chilling, with what it sets for. Absent where the wait names no temperature.
[[nodiscard]] std::optional<ComputedDuration> computedWait(const Wait& wait,
                                                           const ResolvedRecipe& recipe,
                                                           const Rational& share,
                                                           const Kitchen& kitchen);

} // namespace suppertide
