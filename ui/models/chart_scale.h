// The scales of a chart of temperatures: the stretch of time that is shown, which is zoomed and
// moved within the whole, the ticks of both axes, and labels moved apart. Pure.
#pragma once

#include <string>
#include <vector>

#include "core/base/civil_time.h"

namespace suppertide::ui {

/// The minutes shown of a whole. All changes keep it within the whole and not shorter than
/// `shortest`.
class TimeWindow
{
public:
    static constexpr double shortest = 10; // min

    TimeWindow() = default;
    /// Shows all of it. Requires from <= to; less than `shortest` is widened.
    TimeWindow(double from, double to);

    [[nodiscard]] double from() const { return from_; }
    [[nodiscard]] double to() const { return to_; }
    [[nodiscard]] double length() const { return to_ - from_; }
    [[nodiscard]] bool isWhole() const;

    /// `factor` times as long; the minute `around` stays where it is. Requires factor > 0.
    void zoom(double factor, double around);
    void move(double minutes);
    void showAll();
    /// The same minutes of another whole, as far as they are in it; all of it where all was shown.
    void setWhole(double from, double to);

private:
    void show(double from, double length);

    double wholeFrom_ = 0;
    double wholeTo_ = shortest;
    double from_ = 0;
    double to_ = shortest;
};

struct TimeTick
{
    PlanTime time;
    CivilTime civil;
    bool isDay = false; // the first tick of its day among those shown

    friend bool operator==(const TimeTick&, const TimeTick&) = default;
};

/// Ticks at round times of the clock on the wall, rising, at most one in `room` of the window's
/// minutes.
[[nodiscard]] std::vector<TimeTick> timeTicks(const PlanCalendar& calendar,
                                              const TimeWindow& window, double room);

/// Degrees from a round one to a round one, and the step between ticks: 2, 5, 10, 20, 50 or 100.
struct DegreeScale
{
    double low = 0;
    double high = 100;
    double step = 20;

    friend bool operator==(const DegreeScale&, const DegreeScale&) = default;
};
/// Holds both and some room above; at most `most` steps. Requires least <= greatest, most >= 2.
[[nodiscard]] DegreeScale degreeScale(double least, double greatest, int most);
/// The same in °C, with its ticks at round °F.
[[nodiscard]] DegreeScale fahrenheitScale(double least, double greatest, int most);
/// "180°", "−4°"; with the unit: "180 °C", "356 °F".
[[nodiscard]] std::string tickText(double celsius, bool isFahrenheit, bool hasUnit);

/// Middles of labels `height` high, moved as little as the order allows so that none overlaps
/// another and all lie between top and bottom, as long as there is room for all. Parallel to
/// `wanted`.
[[nodiscard]] std::vector<double> spreadLabels(const std::vector<double>& wanted, double height,
                                               double top, double bottom);

} // namespace suppertide::ui
