// Damage: what has to be painted anew when one scene follows another, so that a drag repaints the
// few blocks that moved and not the whole window. Pure.
#pragma once

#include <vector>

#include "ui/timeline/geometry.h"

namespace suppertide::ui {

struct Damage
{
    bool isAll = false;
    std::vector<Box> boxes;

    [[nodiscard]] bool isNone() const { return !isAll && boxes.empty(); }
};

/// Between two scenes, each with its geometry. When in doubt it is more rather than less.
[[nodiscard]] Damage damageBetween(const Scene& before, const Geometry& geometryBefore,
                                   const Scene& after, const Geometry& geometryAfter);

} // namespace suppertide::ui
