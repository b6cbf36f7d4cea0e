// Zoom: how many pixels an hour takes, continuous between 16 and 360, with three named stops.
#pragma once

#include <algorithm>
#include <cmath>

namespace suppertide::ui {

enum class ZoomStop
{
    Day,
    Hours,
    QuarterHours
};

inline constexpr double leastPixelsPerHour = 16;
inline constexpr double mostPixelsPerHour = 360;
/// One notch of the wheel, one press of a key.
inline constexpr double zoomStep = 1.2;

[[nodiscard]] constexpr double pixelsPerHourAt(ZoomStop stop)
{
    switch (stop) {
    case ZoomStop::Day:
        return 28;
    case ZoomStop::Hours:
        return 86;
    case ZoomStop::QuarterHours:
        return 280;
    }
    return 86;
}

/// Which stop's manner of drawing holds at a zoom: the gaps between the stops' own ranges (40 to
/// 60, 140 to 200) are cut in their middle.
[[nodiscard]] constexpr ZoomStop stopOf(double pixelsPerHour)
{
    if (pixelsPerHour < 50) {
        return ZoomStop::Day;
    }
    return pixelsPerHour < 170 ? ZoomStop::Hours : ZoomStop::QuarterHours;
}

[[nodiscard]] inline double zoomedBy(double pixelsPerHour, double notches)
{
    return std::clamp(pixelsPerHour * std::pow(zoomStep, notches), leastPixelsPerHour,
                      mostPixelsPerHour);
}

[[nodiscard]] constexpr double pleatWidthAt(ZoomStop stop)
{
    return stop == ZoomStop::Day ? 20 : 28;
}

} // namespace suppertide::ui
