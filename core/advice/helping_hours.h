// Hours of cooks on one day, as an occasion has them: what they are, and one stretch more.
#pragma once

#include <vector>

#include "core/occasion/occasion.h"

namespace suppertide {

/// Minutes since midnight; 24:00 is 1440.
[[nodiscard]] Minutes minuteOfDay(const ClockTime& clock);
[[nodiscard]] ClockTime clockAt(Minutes minuteOfDay);

/// The occasion's own hours for that day, else the usual ones.
[[nodiscard]] std::vector<Hours> hoursOn(const Occasion& occasion, const KitchenCook& cook,
                                         const CivilDate& date);

/// The cook is free from `from` to `to` too, on the day of `from`; whatever else they were going to
/// be doing at home then is cut.
void addFreeHours(Occasion& occasion, const KitchenCook& cook, const CivilTime& from,
                  const CivilTime& to);

} // namespace suppertide
