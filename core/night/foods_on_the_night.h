// FoodsOnTheNight: the followed foods through the whole evening, as it went where something was
// reported, and as the rest is planned: the rules of food safety do not begin anew at this moment.
#pragma once

#include "core/night/rest_of_evening.h"

namespace suppertide {

/// The whole evening with `schedule`, a plan of the rest, put where it belongs; its clashes are
/// those of food safety alone. `input` is what the whole evening was made from.
[[nodiscard]] PlanPtr foodsOnTheNight(const RestOfEvening& rest, const Schedule& schedule,
                                      const PlanInput& input);

} // namespace suppertide
