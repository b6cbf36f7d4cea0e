// Geometry: all the places of one scene in one window: the time axis, the lanes, the blocks and
// the waits, in device-independent pixels from the widget's top left. Made anew whenever scene,
// size, zoom or scroll change (well under a millisecond for some hundred blocks); painter, hit
// testing, keyboard and accessibility all read this one value. Pure.
#pragma once

#include <map>
#include <set>
#include <vector>

#include "ui/timeline/block_shapes.h"
#include "ui/timeline/lane_layout.h"
#include "ui/timeline/time_axis.h"
#include "ui/timeline/wait_shapes.h"
#include "ui/timeline/zoom.h"

namespace suppertide::ui {

/// What the user has set about the view, none of it part of the plan.
struct Viewport
{
    double width = 0;
    double height = 0;
    double pixelsPerHour = pixelsPerHourAt(ZoomStop::Hours);
    double scrollX = 0; // px from the axis' start to the left edge of the time area
    double scrollY = 0;
    std::set<PlanTime> openPleats; // starts of pleats that the user opened
    double textScale = 1;
    double longestName = 0;

    friend bool operator==(const Viewport&, const Viewport&) = default;
};

class Geometry
{
public:
    Geometry() = default;
    /// `pleats`: what may be folded (pleatsOf); those of them that are open stay unfolded.
    Geometry(const Scene& scene, const Viewport& viewport, const std::vector<Interval>& pleats);

    [[nodiscard]] const TimeAxis& axis() const { return axis_; }
    [[nodiscard]] const LaneLayout& lanes() const { return lanes_; }
    [[nodiscard]] const std::vector<BlockShape>& blocks() const { return blocks_; }
    [[nodiscard]] const std::vector<WaitShape>& waits() const { return waits_; }
    [[nodiscard]] ZoomStop stop() const { return stopOf(axis_.pixelsPerHour()); }

    /// The time area: right of the header column.
    [[nodiscard]] double timeLeft() const { return lanes_.headerWidth; }
    [[nodiscard]] double timeRight() const { return width_; }
    [[nodiscard]] double timeWidth() const;
    [[nodiscard]] double height() const { return height_; }
    [[nodiscard]] double lanesTop() const { return lanes_.scrolling.top; }
    [[nodiscard]] double lanesBottom() const;
    [[nodiscard]] double maxScrollX() const;
    [[nodiscard]] double scrollX() const { return scrollX_; }

    [[nodiscard]] double x(PlanTime time) const { return offset() + axis_.xOf(time); }
    [[nodiscard]] PlanTime timeAt(double x) const { return axis_.timeAt(x - offset()); }
    /// x of the axis' zero.
    [[nodiscard]] double offset() const { return timeLeft() - scrollX_; }
    [[nodiscard]] Interval visibleTime() const;

    /// y of `celsius` in an oven's lane, of `percent` in a cook's, of `used` in a cold place's.
    [[nodiscard]] static double heatY(const LaneBox& box, const OvenLane& oven, Celsius celsius);
    [[nodiscard]] static double handsY(const LaneBox& box, double percent);
    [[nodiscard]] static double coldY(const LaneBox& box, const ColdLane& cold, Litres used);

private:
    TimeAxis axis_;
    LaneLayout lanes_;
    std::vector<BlockShape> blocks_;
    std::vector<WaitShape> waits_;
    double width_ = 0;
    double height_ = 0;
    double scrollX_ = 0;
};

/// `viewport` with scrolling brought back into what there is to scroll.
[[nodiscard]] Viewport settled(const Scene& scene, Viewport viewport,
                               const std::vector<Interval>& pleats);

/// Zoomed so that the time at `x` stays where it is.
[[nodiscard]] Viewport zoomedAround(const Scene& scene, const Viewport& viewport,
                                    const std::vector<Interval>& pleats, double pixelsPerHour,
                                    double x);

/// Scrolled no further than needed for `when` to be in view with some room around.
[[nodiscard]] Viewport showing(const Scene& scene, const Viewport& viewport,
                               const std::vector<Interval>& pleats, const Interval& when);

} // namespace suppertide::ui
