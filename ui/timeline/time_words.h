// The figures of time as the timeline writes them: clock times, lengths, countdowns.
#pragma once

#include <string>

#include "core/base/civil_time.h"

namespace suppertide::ui {

/// "19:30", in the calendar's zone.
[[nodiscard]] std::string clockText(const PlanCalendar& calendar, PlanTime time);
/// "50 min", "4 h", "3 h 35".
[[nodiscard]] std::string lengthText(Minutes length);
/// For a narrow place: "50 min", "4 h", "11½ h", "3¼ h" (the nearest quarter of an hour).
[[nodiscard]] std::string roughLengthText(Minutes length);
/// "−1:45": how long before its course a step begins.
[[nodiscard]] std::string countdownText(Minutes before);

} // namespace suppertide::ui
