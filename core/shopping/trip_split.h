// TripSplit: which trip brings what: what keeps early, so that the last days are free, what does
// not keep long late, and all before the plan first needs it. Used by shopping_list.cpp alone.
#pragma once

#include "core/shopping/shopping_list.h"

namespace suppertide::shopping {

/// Gives `list` its trips, and each of its lines to buy a trip, with a note where none fits.
/// Without trips of the occasion two days are proposed: a week before, and the day before.
void splitOverTrips(ShoppingList& list, const ShoppingInput& input);

} // namespace suppertide::shopping
