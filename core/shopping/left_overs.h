// LeftOvers: which other recipes could use what is left. Used by shopping_list.cpp alone.
#pragma once

#include "core/shopping/ingredient_facts.h"
#include "core/shopping/shopping_list.h"

namespace suppertide::shopping {

/// Names at most three recipes of the repertoire for each thing that is left over: dishes first,
/// those that are not cooked this evening.
void findUses(ShoppingList& list, const ShoppingInput& input, FactsBook& facts);

} // namespace suppertide::shopping
