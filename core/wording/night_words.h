// What a cook reads on the night when the rest of the evening is planned anew: what moves, what
// stays, what gives way, what has passed.
#pragma once

#include <string>

#include "core/night/rest_of_evening.h"
#include "core/wording/wording.h"

namespace suppertide {

/// “Roast roots into the oven” at 18:42, 12 min later. Serving stays 19:30. `plan` is of the rest.
[[nodiscard]] std::string changesText(const RestOfEvening& rest, const Plan& plan,
                                      const ReadingStyle& style = {});
/// "What is left does not fit as it was. It fits if courses are served later than set."; empty if
/// nothing gives way. `whole` is the whole evening.
[[nodiscard]] std::string givingWayText(const Formulation& whole, const RestOptions& givingWay);
/// One sentence for each requirement whose time has passed.
[[nodiscard]] std::string passedText(const RestOfEvening& rest, const ReadingStyle& style = {});

} // namespace suppertide
