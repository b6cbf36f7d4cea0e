// TimeAxis: where a minute lies on the timeline and back, with folded stretches of time squeezed
// to a fixed width. Pure arithmetic in device-independent pixels; x = 0 is the horizon's start.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/base/interval.h"

namespace suppertide::ui {

class TimeAxis
{
public:
    /// A stretch of the axis that is linear in itself.
    struct Piece
    {
        Interval when;
        double x0 = 0;
        double x1 = 0;
        bool isFolded = false;

        friend bool operator==(const Piece&, const Piece&) = default;
    };

    TimeAxis() = default;
    /// `folded` rises without overlap; what of it lies outside the horizon is ignored.
    /// Requires pixelsPerHour > 0 and foldedWidth > 0.
    TimeAxis(const Interval& horizon, double pixelsPerHour, std::span<const Interval> folded,
             double foldedWidth);

    [[nodiscard]] double xOf(PlanTime time) const;
    /// As xOf, between whole minutes.
    [[nodiscard]] double xOfMinute(double minute) const;
    /// The minute in fractions at `x`; the inverse of xOfMinute.
    [[nodiscard]] double minuteAt(double x) const;
    /// The whole minute nearest to `x`.
    [[nodiscard]] PlanTime timeAt(double x) const;

    [[nodiscard]] double width() const { return pieces_.empty() ? 0.0 : pieces_.back().x1; }
    [[nodiscard]] double pixelsPerHour() const { return pixelsPerHour_; }
    [[nodiscard]] const std::vector<Piece>& pieces() const { return pieces_; }
    [[nodiscard]] bool isFolded(PlanTime time) const;

    friend bool operator==(const TimeAxis&, const TimeAxis&) = default;

private:
    [[nodiscard]] const Piece& pieceOfMinute(double minute) const;
    [[nodiscard]] const Piece& pieceAt(double x) const;

    std::vector<Piece> pieces_;
    double pixelsPerHour_ = 60;
};

} // namespace suppertide::ui
