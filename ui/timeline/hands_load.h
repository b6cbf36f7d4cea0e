// Hands load: how much of all cooks together is taken, over the horizon. Pure.
#pragma once

#include <vector>

#include "ui/timeline/scene.h"

namespace suppertide::ui {

/// Percent of all cooks taken at most in each `step` of the horizon (two cooks busy: 200).
[[nodiscard]] std::vector<int> handsLoad(const Scene& scene, Minutes step);

} // namespace suppertide::ui
