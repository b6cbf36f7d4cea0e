#include "ui/timeline/geometry.h"

#include <algorithm>

namespace suppertide::ui {

namespace {

TimeAxis makeAxis(const Scene& scene, const Viewport& viewport, const std::vector<Interval>& pleats)
{
    std::vector<Interval> folded;
    for (const Interval& pleat : pleats) {
        if (!viewport.openPleats.contains(pleat.start)) {
            folded.push_back(pleat);
        }
    }
    return TimeAxis{scene.horizon, viewport.pixelsPerHour, folded,
                    pleatWidthAt(stopOf(viewport.pixelsPerHour))};
}

/// For each lane: does anything stand in it within `visible`?
std::vector<bool> busyLanes(const Scene& scene, const Interval& visible)
{
    std::vector<bool> isBusy(scene.lanes.size(), false);
    const auto mark = [&](const std::string& id, const Interval& when) {
        if (const auto lane = findLane(scene, id); lane && when.overlaps(visible)) {
            isBusy[*lane] = true;
        }
    };
    for (const SceneBlock& block : scene.blocks) {
        for (const Placement& placement : block.places) {
            mark(placement.lane, block.when());
        }
    }
    for (const SceneSpan& span : scene.spans) {
        mark(span.lane, span.when);
    }
    for (const AllowedRange& allowed : scene.allowed) {
        mark(allowed.lane, allowed.when);
    }
    for (std::size_t i = 0; i < scene.lanes.size(); ++i) {
        if (const auto* oven = std::get_if<OvenLane>(&scene.lanes[i].kind)) {
            isBusy[i] =
                isBusy[i] || std::any_of(oven->settings.begin(), oven->settings.end(),
                                         [&](const OvenSetting& setting) {
                                             return setting.set && setting.when.overlaps(visible);
                                         });
        }
    }
    return isBusy;
}

} // namespace

Geometry::Geometry(const Scene& scene, const Viewport& viewport,
                   const std::vector<Interval>& pleats)
    : axis_(makeAxis(scene, viewport, pleats)), width_(viewport.width), height_(viewport.height),
      scrollX_(viewport.scrollX)
{
    LayoutRequest request;
    request.width = viewport.width;
    request.height = viewport.height;
    request.scrollY = viewport.scrollY;
    request.textScale = viewport.textScale;
    request.longestName = viewport.longestName;
    // Which lanes are busy depends on the time in view, for which the usual header will do.
    lanes_.headerWidth = 122;
    request.isBusy = busyLanes(scene, visibleTime());
    lanes_ = layoutLanes(scene, request);
    blocks_ = shapeBlocks(scene, axis_, lanes_, {offset(), stop() != ZoomStop::Day});
    waits_ =
        shapeWaits(scene, axis_, blocks_, offset(), std::min(timeRight(), x(scene.horizon.end)));
}

double Geometry::timeWidth() const
{
    return std::max(0.0, width_ - timeLeft());
}

double Geometry::lanesBottom() const
{
    if (lanes_.boxes.empty()) {
        return lanesTop();
    }
    return std::min(height_, lanes_.boxes.back().strip.bottom());
}

double Geometry::maxScrollX() const
{
    return std::max(0.0, axis_.width() - timeWidth());
}

Interval Geometry::visibleTime() const
{
    return {timeAt(timeLeft()), timeAt(timeRight()) + Minutes{1}};
}

double Geometry::heatY(const LaneBox& box, const OvenLane& oven, Celsius celsius)
{
    // A little headroom keeps the curve at its top clear of the lane's edge.
    const double headroom = oven.shelves <= 1 ? 2 : 10;
    const double share =
        static_cast<double>(celsius.tenths()) / static_cast<double>(oven.top.tenths());
    return box.strip.bottom() - share * (box.strip.height - headroom);
}

double Geometry::handsY(const LaneBox& box, double percent)
{
    if (box.rows.empty()) {
        return box.strip.bottom();
    }
    return box.rows.front().bottom() - box.rows.front().height * percent / 100.0;
}

double Geometry::coldY(const LaneBox& box, const ColdLane& cold, Litres used)
{
    // What there is lies at three quarters of the height: room for what is too much above it.
    const double full = box.strip.height * 0.76;
    const auto capacity = static_cast<double>(std::max<std::int64_t>(1, cold.capacity.smallest()));
    const double share = static_cast<double>(used.smallest()) / capacity;
    return box.strip.bottom() - std::min(share * full, box.strip.height - 1);
}

Viewport settled(const Scene& scene, Viewport viewport, const std::vector<Interval>& pleats)
{
    const Geometry geometry{scene, viewport, pleats};
    viewport.scrollX = std::clamp(viewport.scrollX, 0.0, geometry.maxScrollX());
    viewport.scrollY = std::clamp(viewport.scrollY, 0.0, geometry.lanes().scrollRange);
    return viewport;
}

Viewport zoomedAround(const Scene& scene, const Viewport& viewport,
                      const std::vector<Interval>& pleats, double pixelsPerHour, double x)
{
    const Geometry before{scene, viewport, pleats};
    Viewport next = viewport;
    next.pixelsPerHour = std::clamp(pixelsPerHour, leastPixelsPerHour, mostPixelsPerHour);
    const double minute = before.axis().minuteAt(x - before.offset());
    const TimeAxis axis = makeAxis(scene, next, pleats);
    next.scrollX = axis.xOfMinute(minute) - (x - before.timeLeft());
    return settled(scene, next, pleats);
}

Viewport showing(const Scene& scene, const Viewport& viewport, const std::vector<Interval>& pleats,
                 const Interval& when)
{
    constexpr double room = 40;
    const Geometry geometry{scene, viewport, pleats};
    const double left = geometry.x(when.start) - room;
    const double right = geometry.x(when.end) + room;
    Viewport next = viewport;
    if (left < geometry.timeLeft() || right - left > geometry.timeWidth()) {
        next.scrollX += left - geometry.timeLeft();
    } else if (right > geometry.timeRight()) {
        next.scrollX += right - geometry.timeRight();
    }
    return settled(scene, next, pleats);
}

} // namespace suppertide::ui
