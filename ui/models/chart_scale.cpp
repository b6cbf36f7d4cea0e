#include "ui/models/chart_scale.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <optional>

#include "core/base/contracts.h"

namespace suppertide::ui {

namespace {

constexpr std::array<int, 11> tickMinutes{5, 15, 30, 60, 120, 180, 360, 720, 1440, 2880, 10080};
constexpr std::array<double, 6> degreeSteps{2, 5, 10, 20, 50, 100};
constexpr int dayMinutes = 24 * 60;

} // namespace

TimeWindow::TimeWindow(double from, double to)
    : wholeFrom_(from), wholeTo_(std::max(to, from + shortest)), from_(from), to_(wholeTo_)
{
    expects(from <= to, "a chart does not end before it begins");
}

bool TimeWindow::isWhole() const
{
    return from_ <= wholeFrom_ && to_ >= wholeTo_;
}

void TimeWindow::show(double from, double length)
{
    const double most = wholeTo_ - wholeFrom_;
    const double shown = std::clamp(length, std::min(shortest, most), most);
    from_ = std::clamp(from, wholeFrom_, wholeTo_ - shown);
    to_ = from_ + shown;
}

void TimeWindow::zoom(double factor, double around)
{
    expects(factor > 0, "a zoom by more than nothing");
    const double most = wholeTo_ - wholeFrom_;
    const double shown = std::clamp(length() * factor, std::min(shortest, most), most);
    const double part = std::clamp((around - from_) / length(), 0.0, 1.0);
    show(from_ + part * (length() - shown), shown);
}

void TimeWindow::move(double minutes)
{
    show(from_ + minutes, length());
}

void TimeWindow::showAll()
{
    show(wholeFrom_, wholeTo_ - wholeFrom_);
}

void TimeWindow::setWhole(double from, double to)
{
    const bool wasWhole = isWhole();
    const double shownFrom = from_;
    const double shown = length();
    *this = TimeWindow(from, to);
    if (!wasWhole) {
        show(shownFrom, shown);
    }
}

std::vector<TimeTick> timeTicks(const PlanCalendar& calendar, const TimeWindow& window, double room)
{
    const auto fits = [room](int minutes) { return minutes >= room; };
    const auto found = std::ranges::find_if(tickMinutes, fits);
    const int step = found == tickMinutes.end() ? tickMinutes.back() : *found;
    const int days = std::max(1, step / dayMinutes);
    const int withinDay = std::min(step, dayMinutes);
    const PlanTime first = planTime(std::llround(std::ceil(window.from())));
    const PlanTime last = planTime(std::llround(std::floor(window.to())));
    std::vector<TimeTick> ticks;
    std::optional<CivilDate> day;
    for (CivilDate date = calendar.civil(first).date; date <= calendar.civil(last).date;
         date = addDays(date, days)) {
        for (int minute = 0; minute < dayMinutes; minute += withinDay) {
            const CivilTime civil{date, {minute / 60, minute % 60}};
            if (calendar.zone.kindOf(civil) == ClockTimeKind::Skipped) {
                continue;
            }
            const PlanTime time = calendar.planTime(civil);
            if (time < first || time > last) {
                continue;
            }
            ticks.push_back({time, civil, !day || *day != date});
            day = date;
        }
    }
    return ticks;
}

DegreeScale degreeScale(double least, double greatest, int most)
{
    expects(least <= greatest && most >= 2, "degrees from the least to the greatest");
    DegreeScale scale;
    for (const double step : degreeSteps) {
        constexpr double above = 0.3; // of a step, free over the highest
        scale = {std::floor(least / step) * step, std::ceil(greatest / step + above) * step, step};
        if (scale.high - scale.low <= most * step) {
            break;
        }
    }
    return scale;
}

DegreeScale fahrenheitScale(double least, double greatest, int most)
{
    const auto up = [](double celsius) { return celsius * 1.8 + 32; };
    const auto down = [](double fahrenheit) { return (fahrenheit - 32) / 1.8; };
    const DegreeScale scale = degreeScale(up(least), up(greatest), most);
    return {down(scale.low), down(scale.high), scale.step / 1.8};
}

std::string tickText(double celsius, bool isFahrenheit, bool hasUnit)
{
    const long shown = std::lround(isFahrenheit ? celsius * 1.8 + 32 : celsius);
    const char* unit = !hasUnit ? "°" : isFahrenheit ? " °F" : " °C";
    return (shown < 0 ? "−" : "") + std::to_string(std::abs(shown)) + unit;
}

std::vector<double> spreadLabels(const std::vector<double>& wanted, double height, double top,
                                 double bottom)
{
    std::vector<std::size_t> order(wanted.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {}, [&wanted](std::size_t i) { return wanted[i]; });
    std::vector<double> placed = wanted;
    double free = top;
    for (const std::size_t i : order) { // down from the top …
        placed[i] = std::max(placed[i], free + height / 2);
        free = placed[i] + height / 2;
    }
    double below = bottom;
    for (auto i = order.rbegin(); i != order.rend(); ++i) { // … and back from the bottom
        placed[*i] = std::min(placed[*i], below - height / 2);
        below = placed[*i] - height / 2;
    }
    return placed;
}

} // namespace suppertide::ui
