// The layers of the painter, one function each; painter.cpp calls them in order. Not for others.
#pragma once

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include "ui/timeline/canvas.h"
#include "ui/timeline/painter.h"

namespace suppertide::ui {

/// What every layer works on.
struct Layer
{
    Canvas& canvas;
    const PaintInput& in;
    LaneBand band;

    [[nodiscard]] const Scene& scene() const { return in.scene; }
    [[nodiscard]] const Geometry& geometry() const { return in.geometry; }
    [[nodiscard]] const Neutrals& neutral() const { return canvas.neutral(); }
    [[nodiscard]] double left() const { return in.geometry.timeLeft(); }
    /// The view's right edge, or the horizon's end if that is in view.
    [[nodiscard]] double right() const
    {
        return std::min(in.geometry.timeRight(), in.geometry.x(in.scene.horizon.end));
    }
    [[nodiscard]] DishFill dishOf(const SceneBlock& block) const;
    [[nodiscard]] DishFill dishAt(const std::optional<std::size_t>& dish) const;
    /// Calls `paint` for each lane of this band that needs painting.
    template <typename Paint>
    void forEachBox(Paint paint) const
    {
        for (const LaneBox& box : in.geometry.lanes().boxes) {
            const Strip& strip = box.strip;
            if (box.band == band &&
                canvas.isDirty({0, strip.top - 12, right(), strip.bottom() + 12})) {
                paint(box, in.scene.lanes[box.lane]);
            }
        }
    }
    /// Calls `paint` for each shape of this band that needs painting: of ghosts, or of all others.
    template <typename Paint>
    void forEachShape(bool ghosts, Paint paint) const
    {
        for (const BlockShape& shape : in.geometry.blocks()) {
            if (shape.band != band || in.scene.blocks[shape.block].ghost.has_value() != ghosts) {
                continue;
            }
            const Box bounds = shape.bounds();
            // Countdowns of ghosts stand left of them.
            const Box touched =
                ghosts ? Box{bounds.left - 60, bounds.top, bounds.right, bounds.bottom} : bounds;
            if (bounds.right >= left() && bounds.left <= right() &&
                canvas.isDirty(touched.grown(4))) {
                paint(shape);
            }
        }
    }
    /// Calls `paint` for each folded stretch of the axis: its two edges.
    template <typename Paint>
    void forEachFold(Paint paint) const
    {
        for (const TimeAxis::Piece& piece : in.geometry.axis().pieces()) {
            const double x0 = in.geometry.offset() + piece.x0;
            const double x1 = in.geometry.offset() + piece.x1;
            if (piece.isFolded && x1 > left() && x0 < right()) {
                paint(piece, x0, x1);
            }
        }
    }
};

// paint_grounds.cpp
void paintGrounds(const Layer& layer);
/// No kitchen yet: lanes that wait to be filled.
void paintMissingLanes(const Layer& layer);
void paintHourLines(const Layer& layer);
void paintAbsences(const Layer& layer);
void paintFacets(const Layer& layer, double top, double bottom);
void paintFoldLines(const Layer& layer, double top, double bottom);
void paintPleatHours(const Layer& layer);
void paintServingLines(const Layer& layer, double top, double bottom);
void paintNowLine(const Layer& layer, double top, double bottom);

// paint_drag.cpp
void paintAllowed(const Layer& layer);
void paintRefusals(const Layer& layer);
/// Where reasons of refusals are written, with some room around.
[[nodiscard]] std::vector<Box> reasonPlaces(const Layer& layer);
/// Where the words of allowed ranges are written, with some room around.
[[nodiscard]] std::vector<Box> rangeWordPlaces(const Layer& layer);
/// From and to: the widest stretch of [left, right) without a fold and without the now line.
[[nodiscard]] std::pair<double, double> widestClear(const Layer& layer, double left, double right);

// paint_levels.cpp
void paintHeat(const Layer& layer);
void paintHeatLines(const Layer& layer);
void paintCold(const Layer& layer);
void paintColdLines(const Layer& layer);
void paintHandsLines(const Layer& layer);

// paint_block_labels.cpp
void paintBlockLabels(const Layer& layer);

// paint_blocks.cpp
void paintBlocks(const Layer& layer);
void paintGhosts(const Layer& layer);
void paintPins(const Layer& layer);
/// The block's outline, moved outwards by `by` px.
[[nodiscard]] QPolygonF outlineOf(const BlockShape& shape, double by);

// paint_ties.cpp
void paintSpans(const Layer& layer);
void paintWaits(const Layer& layer);
void paintWaitLabels(const Layer& layer);
void paintThreads(const Layer& layer);

// paint_clashes.cpp
void paintClashAreas(const Layer& layer);
void paintTags(const Layer& layer);

// paint_pointing.cpp
void paintSelection(const Layer& layer);
void paintFocus(const Layer& layer);
void paintHover(const Layer& layer);
void paintPointedClash(const Layer& layer);
void paintCard(const Layer& layer);

// paint_rail.cpp
void paintRail(const Layer& layer);

// paint_header.cpp
void paintHeader(const Layer& layer);

} // namespace suppertide::ui
