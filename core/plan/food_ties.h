// FoodTies: what ties the followed foods of an evening to other things: preparations that go into
// them, and the trips that bring them. For formulate_foods alone.
#pragma once

#include "core/plan/evening.h"

namespace suppertide {

/// Each food that goes into another gets its place among the other's parts.
void tieParts(Evening& evening);

/// Each food that is bought as what it is gets the trips that may bring it.
void tieTrips(Evening& evening);

/// Raw animal food, smoked fish, dairy and the like, which a shop sells; what a recipe calls a set
/// cream or a stock is made.
[[nodiscard]] bool isBoughtAs(FoodClass food);

} // namespace suppertide
