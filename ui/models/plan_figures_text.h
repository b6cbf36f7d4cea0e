// The three figures of a plan for the status line, and the words of the head bar.
#pragma once

#include <QString>

#include "core/occasion/occasion.h"
#include "core/plan/plan.h"

namespace suppertide::ui {

/// "41 min hands-on in the last hour · oven on 5 h 53, 2 changes · 3 sessions".
[[nodiscard]] QString figuresText(const PlanFigures& figures);
/// "Saturday 19 June, eight at table at 19:30"; the year where it is not this one's.
[[nodiscard]] QString dateLine(const Occasion& occasion, const CivilDate& today);
/// True if the last course was served before `now`.
[[nodiscard]] bool isPast(const Occasion& occasion, Instant now);

} // namespace suppertide::ui
