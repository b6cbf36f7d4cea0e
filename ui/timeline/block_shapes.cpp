#include "ui/timeline/block_shapes.h"

#include <algorithm>
#include <optional>

#include "ui/timeline/cook_stack.h"

namespace suppertide::ui {

namespace {

constexpr double leastDrawnWidth = 3;
constexpr double leastSlant = 4;

/// The right edge of a block that stands in a row.
void setRightEdge(BlockShape& shape, const SceneBlock& block, const TimeAxis& axis, double offsetX,
                  bool hasSlants)
{
    const double end = std::max(offsetX + axis.xOf(block.when().end), shape.left + leastDrawnWidth);
    shape.least = shape.likely = shape.most = end;
    if (!hasSlants) {
        return;
    }
    shape.least = std::min(end, offsetX + axis.xOf(block.start + block.least));
    shape.most = std::max(end, offsetX + axis.xOf(block.start + block.most));
    const double missing = leastSlant - (shape.most - shape.least);
    if (missing > 0) {
        shape.least -= missing / 2;
        shape.most += missing / 2;
    }
    shape.least = std::max(shape.least, shape.left + 1);
}

std::optional<BlockShape> shapeInRow(const Scene& scene, std::size_t block, std::size_t place,
                                     const TimeAxis& axis, const LaneLayout& layout,
                                     const ShapeRequest& request)
{
    const Placement& placement = scene.blocks[block].places[place];
    const std::optional<std::size_t> lane = findLane(scene, placement.lane);
    if (!lane) {
        return std::nullopt;
    }
    const LaneBox* box = boxOfLane(layout, *lane);
    if (box == nullptr || box->rows.empty() || box->isShared()) {
        return std::nullopt;
    }
    const auto last = static_cast<int>(box->rows.size()) - 1;
    const auto low = static_cast<std::size_t>(std::clamp(placement.row, 0, last));
    const auto high =
        static_cast<std::size_t>(std::clamp(placement.row + placement.rows - 1, 0, last));
    BlockShape shape;
    shape.block = block;
    shape.placement = place;
    shape.lane = *lane;
    shape.band = box->band;
    shape.left = request.offsetX + axis.xOf(scene.blocks[block].start);
    shape.top = box->rows[high].top;
    shape.bottom = box->rows[low].bottom();
    shape.rowBottom = shape.bottom;
    shape.gutterHeight =
        box->gutters.empty() ? 0 : box->gutters[std::min(low, box->gutters.size() - 1)].height;
    setRightEdge(shape, scene.blocks[block], axis, request.offsetX, request.hasSlants);
    return shape;
}

/// Turns the shapes of one cook's lane into stacks.
void stackShapes(const Scene& scene, std::vector<BlockShape*>& shapes, const TimeAxis& axis,
                 double offsetX)
{
    std::vector<StackItem> items;
    items.reserve(shapes.size());
    for (const BlockShape* shape : shapes) {
        const SceneBlock& block = scene.blocks[shape->block];
        items.push_back({block.when(), block.attention.percent()});
    }
    const double fullHeight = shapes.front()->bottom - shapes.front()->top;
    const double bed = shapes.front()->bottom;
    for (const StackPiece& piece : stackUp(items)) {
        BlockShape& shape = *shapes[piece.item];
        const double base = bed - fullHeight * piece.base / 100.0;
        const double top = base - fullHeight * items[piece.item].percent / 100.0;
        const double left = offsetX + axis.xOf(piece.when.start);
        const double right = std::max(left + leastDrawnWidth, offsetX + axis.xOf(piece.when.end));
        shape.pieces.push_back({left, top, right, base});
    }
    for (BlockShape* shape : shapes) {
        if (shape->pieces.empty()) {
            continue;
        }
        shape->least = shape->likely = shape->most = shape->pieces.back().right;
        shape->top = shape->pieces.front().top;
        shape->bottom = shape->pieces.front().bottom;
        for (const Box& piece : shape->pieces) {
            shape->top = std::min(shape->top, piece.top);
            shape->bottom = std::max(shape->bottom, piece.bottom);
        }
    }
}

} // namespace

Box BlockShape::bounds() const
{
    return {left, top, std::max({least, likely, most}), bottom};
}

std::vector<BlockShape> shapeBlocks(const Scene& scene, const TimeAxis& axis,
                                    const LaneLayout& layout, const ShapeRequest& request)
{
    std::vector<BlockShape> shapes;
    shapes.reserve(scene.blocks.size() * 2);
    for (std::size_t block = 0; block < scene.blocks.size(); ++block) {
        for (std::size_t place = 0; place < scene.blocks[block].places.size(); ++place) {
            if (auto shape = shapeInRow(scene, block, place, axis, layout, request)) {
                shapes.push_back(std::move(*shape));
            }
        }
    }
    for (std::size_t lane = 0; lane < scene.lanes.size(); ++lane) {
        if (!std::holds_alternative<CookLane>(scene.lanes[lane].kind)) {
            continue;
        }
        std::vector<BlockShape*> inLane;
        for (BlockShape& shape : shapes) {
            if (shape.lane == lane) {
                inLane.push_back(&shape);
            }
        }
        if (!inLane.empty()) {
            stackShapes(scene, inLane, axis, request.offsetX);
        }
    }
    // A block that takes nothing of a cook has nothing to show in the cook's lane.
    std::erase_if(shapes, [&](const BlockShape& shape) {
        return std::holds_alternative<CookLane>(scene.lanes[shape.lane].kind) && !shape.isSegment();
    });
    return shapes;
}

} // namespace suppertide::ui
