#include "ui/print/sheet_times.h"

#include <fmt/core.h>

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

std::string clockText(const PerHourPlan& plan, PlanTime time)
{
    return timeText(plan.plan->formulation->calendar, time, std::nullopt, plan.style);
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
    const std::string text = temperatureText(*celsius, style);
    return text.substr(0, text.rfind(' ')) + "°";
}

} // namespace suppertide::ui
