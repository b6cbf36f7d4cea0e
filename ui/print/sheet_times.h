// Sheet times: clock times and oven settings as they stand on paper, short, in the occasion's zone.
#pragma once

#include <string>

#include "core/sheet/per_hour_plan.h"

namespace suppertide::ui {

/// "19:30", "7:30 pm".
[[nodiscard]] std::string clockText(const PerHourPlan& plan, PlanTime time);

/// The numeral of an hour row, and the small text under it: "19" and "", "7" and "pm"; a row that
/// begins within an hour has ":30" there.
struct HourNumeral
{
    std::string large;
    std::string small;
};
[[nodiscard]] HourNumeral hourNumeral(const ClockTime& clock, const ReadingStyle& style);

/// "150°", "300°", "off".
[[nodiscard]] std::string knobText(std::optional<int> celsius, const ReadingStyle& style);

} // namespace suppertide::ui
