// Pleats: the hours that a timeline may fold away because nobody does anything in them.
#pragma once

#include <vector>

#include "ui/timeline/scene.h"

namespace suppertide::ui {

/// No stretch shorter than this is folded: the two fold lines would cost more than they save.
inline constexpr Minutes shortestPleat{90};

/// Stretches of the horizon of at least 90 min in which no step takes a cook, no oven is turned,
/// and no course is served (none in a scene without steps: there all would be folded away), cut
/// inwards to whole quarter hours of the plan's clock, rising. O(n log n) in the number of blocks.
[[nodiscard]] std::vector<Interval> pleatsOf(const Scene& scene);

} // namespace suppertide::ui
