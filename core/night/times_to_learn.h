// TimesToLearn: what the night has shown of how long computed steps take in this kitchen: proposals
// that the cook takes or leaves, for the estimates to learn from. It changes nothing.
#pragma once

#include <vector>

#include "core/kitchen/kitchen.h"
#include "core/night/progress.h"

namespace suppertide {

/// Finished steps whose length was computed and whose true one was reported: in an oven from when
/// it was in to when it was taken out. Left out are those that took just what was planned (nobody
/// may have looked), a fifth or five times of what was computed (something else was measured), and
/// what the kitchen has learned already. In order of time, with ids that are free in the kitchen.
[[nodiscard]] std::vector<TimeTaken> timesToLearn(const Formulation& formulation,
                                                  const Progress& progress, const Kitchen& kitchen);

} // namespace suppertide
