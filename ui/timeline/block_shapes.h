// Block shapes: where each block of a scene is drawn, once for every lane that it stands in. The
// left edge is upright; the right edge slants from the least end at the top over the likely one to
// the most at the foot. In cook lanes a block is a stack of pieces instead. Pure.
#pragma once

#include <vector>

#include "ui/timeline/lane_layout.h"
#include "ui/timeline/scene.h"
#include "ui/timeline/time_axis.h"

namespace suppertide::ui {

/// A rectangle in device-independent pixels.
struct Box
{
    double left = 0;
    double top = 0;
    double right = 0;
    double bottom = 0;

    [[nodiscard]] double width() const { return right - left; }
    [[nodiscard]] double height() const { return bottom - top; }
    [[nodiscard]] bool contains(double x, double y) const
    {
        return left <= x && x < right && top <= y && y < bottom;
    }
    [[nodiscard]] bool overlaps(const Box& other) const
    {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }
    [[nodiscard]] Box grown(double by) const
    {
        return {left - by, top - by, right + by, bottom + by};
    }
    friend bool operator==(const Box&, const Box&) = default;
};

struct BlockShape
{
    std::size_t block = 0;     // index into Scene::blocks
    std::size_t placement = 0; // index into its places
    std::size_t lane = 0;      // index into Scene::lanes
    LaneBand band = LaneBand::Scrolling;
    double left = 0;
    double least = 0;  // x of the right edge at the top
    double likely = 0; // in the middle
    double most = 0;   // at the foot
    double top = 0;
    double bottom = 0;
    std::vector<Box> pieces; // cook lanes: at least one; else empty
    double rowBottom = 0;    // where its gutter begins
    double gutterHeight = 0;

    [[nodiscard]] bool isSegment() const { return !pieces.empty(); }
    [[nodiscard]] Box bounds() const;
    friend bool operator==(const BlockShape&, const BlockShape&) = default;
};

struct ShapeRequest
{
    double offsetX = 0; // x of the axis' zero in the widget
    bool hasSlants = true;
};

/// Shapes in the order of the scene's blocks and their places; places in lanes that are folded,
/// shared or unknown have none.
[[nodiscard]] std::vector<BlockShape> shapeBlocks(const Scene& scene, const TimeAxis& axis,
                                                  const LaneLayout& layout,
                                                  const ShapeRequest& request);

} // namespace suppertide::ui
