// Wait shapes: where waits are drawn, in the gutter under the row of the step that they follow:
// a line to the next start, and a bracket from the least to the most that it may take. Pure.
#pragma once

#include <optional>
#include <vector>

#include "ui/timeline/block_shapes.h"

namespace suppertide::ui {

struct WaitShape
{
    std::size_t wait = 0; // index into Scene::waits
    std::size_t lane = 0;
    LaneBand band = LaneBand::Scrolling;
    double y = 0;     // of the line
    double foot = 0;  // of the bracket
    double start = 0; // x of the dot
    double end = 0;   // x of the next step's start
    double least = 0;
    std::optional<double> most; // none: no most, or it lies outside the view
    bool hasMost = false;
    /// The minutes that break it: beyond the most, or short of the least.
    std::optional<Box> surplus;
    /// The next step stands in another lane: a thin upright from the line's end to there.
    std::optional<double> landsAt;

    friend bool operator==(const WaitShape&, const WaitShape&) = default;
};

/// `viewRight`: x beyond which a most is drawn as an arrow only.
[[nodiscard]] std::vector<WaitShape> shapeWaits(const Scene& scene, const TimeAxis& axis,
                                                const std::vector<BlockShape>& shapes,
                                                double offsetX, double viewRight);

} // namespace suppertide::ui
