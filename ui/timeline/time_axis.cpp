#include "ui/timeline/time_axis.h"

#include <algorithm>
#include <cmath>

#include "core/base/contracts.h"

namespace suppertide::ui {

namespace {

double minutes(PlanTime time)
{
    return static_cast<double>(minuteOf(time));
}

} // namespace

TimeAxis::TimeAxis(const Interval& horizon, double pixelsPerHour, std::span<const Interval> folded,
                   double foldedWidth)
    : pixelsPerHour_(pixelsPerHour)
{
    expects(pixelsPerHour > 0 && foldedWidth > 0, "widths above 0");
    PlanTime at = horizon.start;
    double x = 0;
    const auto add = [&](PlanTime end, bool isFolded) {
        const Interval when{at, end};
        if (when.empty()) {
            return;
        }
        const double length = static_cast<double>(when.length().count());
        const double width = isFolded ? foldedWidth : length * pixelsPerHour / 60.0;
        pieces_.push_back({when, x, x + width, isFolded});
        x += width;
        at = end;
    };
    for (const Interval& fold : folded) {
        const Interval inside = fold.common(horizon);
        if (inside.empty() || inside.start < at) {
            continue;
        }
        add(inside.start, false);
        add(inside.end, true);
    }
    add(horizon.end, false);
}

const TimeAxis::Piece& TimeAxis::pieceOfMinute(double minute) const
{
    const auto after = std::upper_bound(
        pieces_.begin(), pieces_.end(), minute,
        [](double value, const Piece& piece) { return value < minutes(piece.when.end); });
    return after == pieces_.end() ? pieces_.back() : *after;
}

const TimeAxis::Piece& TimeAxis::pieceAt(double x) const
{
    const auto after =
        std::upper_bound(pieces_.begin(), pieces_.end(), x,
                         [](double value, const Piece& piece) { return value < piece.x1; });
    return after == pieces_.end() ? pieces_.back() : *after;
}

double TimeAxis::xOfMinute(double minute) const
{
    if (pieces_.empty()) {
        return minute * pixelsPerHour_ / 60.0;
    }
    const double first = minutes(pieces_.front().when.start);
    const double last = minutes(pieces_.back().when.end);
    if (minute < first) {
        return (minute - first) * pixelsPerHour_ / 60.0;
    }
    if (minute >= last) {
        return width() + (minute - last) * pixelsPerHour_ / 60.0;
    }
    const Piece& piece = pieceOfMinute(minute);
    const double length = static_cast<double>(piece.when.length().count());
    return piece.x0 + (minute - minutes(piece.when.start)) / length * (piece.x1 - piece.x0);
}

double TimeAxis::xOf(PlanTime time) const
{
    return xOfMinute(minutes(time));
}

double TimeAxis::minuteAt(double x) const
{
    if (pieces_.empty()) {
        return x * 60.0 / pixelsPerHour_;
    }
    if (x < 0) {
        return minutes(pieces_.front().when.start) + x * 60.0 / pixelsPerHour_;
    }
    if (x >= width()) {
        return minutes(pieces_.back().when.end) + (x - width()) * 60.0 / pixelsPerHour_;
    }
    const Piece& piece = pieceAt(x);
    const double length = static_cast<double>(piece.when.length().count());
    return minutes(piece.when.start) + (x - piece.x0) / (piece.x1 - piece.x0) * length;
}

PlanTime TimeAxis::timeAt(double x) const
{
    return planTime(std::llround(minuteAt(x)));
}

bool TimeAxis::isFolded(PlanTime time) const
{
    return std::any_of(pieces_.begin(), pieces_.end(), [&](const Piece& piece) {
        return piece.isFolded && piece.when.contains(time);
    });
}

} // namespace suppertide::ui
