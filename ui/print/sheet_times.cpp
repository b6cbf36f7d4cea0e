#include "ui/print/sheet_times.h"

#include <fmt/core.h>

#include <cmath>

namespace suppertide::ui {

namespace {

int hourOf12(int hour)
{
    return hour % 12 == 0 ? 12 : hour % 12;
}

const char* halfOfDay(int hour)
{
    return hour < 12 ? "am" : "pm";
}

} // namespace

std::string clockText(const ClockTime& clock, const ReadingStyle& style)
{
    if (style.clock12) {
        return fmt::format("{}:{:02} {}", hourOf12(clock.hour), clock.minute,
                           halfOfDay(clock.hour));
    }
    return fmt::format("{:02}:{:02}", clock.hour, clock.minute);
}

std::string clockText(const PerHourPlan& plan, PlanTime time, const ReadingStyle& style)
{
    return clockText(plan.plan->formulation->calendar.civil(time).clock, style);
}

HourNumeral hourNumeral(const ClockTime& clock, const ReadingStyle& style)
{
    const std::string minutes = clock.minute == 0 ? "" : fmt::format(":{:02}", clock.minute);
    if (style.clock12) {
        return {std::to_string(hourOf12(clock.hour)), minutes + halfOfDay(clock.hour)};
    }
    return {fmt::format("{}", clock.hour), minutes};
}

std::string knobText(std::optional<int> celsius, const ReadingStyle& style)
{
    if (!celsius) {
        return "off";
    }
    if (style.fahrenheit) {
        const double fahrenheit = *celsius * 9.0 / 5.0 + 32.0;
        return fmt::format("{}°", std::lround(fahrenheit / 5) * 5);
    }
    return fmt::format("{}°", *celsius);
}

} // namespace suppertide::ui
