// PertBeta: how long a step takes at a given caution: the quantile of a PERT-beta distribution over
// its least, likely and most length. Pure; used where a plan is made more carefully than at
// "likely".
#pragma once

#include "core/base/plan_time.h"

namespace suppertide {

/// The length that is not exceeded with `percent` (1…99) in a hundred, rounded up to whole minutes.
/// The distribution has its mode at `likely`, shapes α = 1 + 4 (likely − least)/(most − least) and
/// β = 6 − α. Requires least ≤ likely ≤ most. All three equal: that length.
/// Source: D. G. Malcolm, J. H. Roseboom, C. E. Clark, W. Fazar, Application of a technique for
/// research and development program evaluation, Operations Research 7 (1959), 646–669.
[[nodiscard]] Minutes pertQuantile(Minutes least, Minutes likely, Minutes most, int percent);

} // namespace suppertide
