// Lane layout: how high each lane is and where it stands, for a window of a given size. What does
// not fit gives way in a fixed order: large sizes, then small ones in which idle burners share a
// row, then lanes with nothing in view fold to a line, then the upper lanes scroll between the
// ruler and the cooks. Pure; in device-independent pixels from the widget's top left.
#pragma once

#include <vector>

#include "ui/timeline/scene.h"

namespace suppertide::ui {

/// A horizontal strip.
struct Strip
{
    double top = 0;
    double height = 0;

    [[nodiscard]] double bottom() const { return top + height; }
    friend bool operator==(const Strip&, const Strip&) = default;
};

/// Lanes scroll between the ruler and the foot; those of the foot stay.
enum class LaneBand
{
    Scrolling,
    Foot
};

struct LaneBox
{
    std::size_t lane = 0;             // index into Scene::lanes
    std::vector<std::size_t> sharing; // idle burners that stand in this same row
    Strip strip;
    LaneBand band = LaneBand::Scrolling;
    bool isFolded = false;
    /// Where blocks stand. Oven: a row a shelf, the lowest first. Cook: the bar from the 100 % line
    /// (its top) to the bed. Else one row, or none if folded.
    std::vector<Strip> rows;
    std::vector<Strip> gutters; // under each row: waits are drawn there
    Strip tableBand;            // cooks only

    [[nodiscard]] bool isShared() const { return !sharing.empty(); }
    friend bool operator==(const LaneBox&, const LaneBox&) = default;
};

struct LaneLayout
{
    double headerWidth = 0;
    bool isLarge = false;
    bool showsNotes = true; // second lines and percent signs in the header column
    Strip rail;
    Strip ruler;
    Strip scrolling; // the window on the scrolling lanes
    Strip foot;
    double scrollRange = 0; // how far the scrolling lanes can be moved up
    std::vector<LaneBox> boxes;

    [[nodiscard]] Strip visible(LaneBand band) const
    {
        return band == LaneBand::Foot ? foot : scrolling;
    }
    friend bool operator==(const LaneLayout&, const LaneLayout&) = default;
};

struct LayoutRequest
{
    double width = 0;
    double height = 0;
    double scrollY = 0;
    double textScale = 1;   // application font over its nominal size
    double longestName = 0; // px of the widest lane name, drawn
    /// For each lane: something stands in it in the stretch of time in view. Empty: all do.
    std::vector<bool> isBusy;
};

[[nodiscard]] LaneLayout layoutLanes(const Scene& scene, const LayoutRequest& request);

/// The box in which a lane stands, its own or the row that it shares; null if there is none.
[[nodiscard]] const LaneBox* boxOfLane(const LaneLayout& layout, std::size_t lane);

} // namespace suppertide::ui
