// Focus moves: what an arrow key leads to: left and right in time, up and down through the lanes.
// Above the uppermost lane lies the row of course flags and folds. Pure.
#pragma once

#include <vector>

#include "ui/timeline/geometry.h"
#include "ui/timeline/hit_test.h"

namespace suppertide::ui {

enum class FocusMove
{
    Earlier,
    Later,
    Up,
    Down,
    First,
    Last
};

/// From `current` to its neighbour. From nothing it leads to the first block in view; at the edge
/// the focus stays; with no block, flag or fold at all it is nothing.
[[nodiscard]] Target moveFocus(const Scene& scene, const Geometry& geometry, const Target& current,
                               FocusMove move);

/// All blocks by start, then by lane: the order in which screen readers list them, whether or not
/// their lanes are in view. Indices into Scene::blocks.
[[nodiscard]] std::vector<std::size_t> readingOrder(const Scene& scene);

} // namespace suppertide::ui
