// The words of the head bar: when, how many, and whether it is past.
#pragma once

#include <QString>

#include "core/occasion/occasion.h"

namespace suppertide::ui {

/// "Saturday 19 June, eight at table at 19:30"; the year where it is not this one's.
[[nodiscard]] QString dateLine(const Occasion& occasion, const CivilDate& today);
/// True if the last course was served before `now`.
[[nodiscard]] bool isPast(const Occasion& occasion, Instant now);

} // namespace suppertide::ui
