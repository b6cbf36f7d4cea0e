// LineWriter: makes the lines of a shopping list from the needs of each ingredient: how much, what
// of it is at home, in which packs, for how much. Trips and left-overs come later. Used by
// shopping_list.cpp alone.
#pragma once

#include "core/shopping/ingredient_facts.h"
#include "core/shopping/shopping_list.h"

namespace suppertide::shopping {

/// One line for each ingredient, more where its amounts cannot be told in one unit; in the order in
/// which the menu asks for them.
[[nodiscard]] std::vector<ShoppingLine> linesFor(const std::vector<ShoppingNeed>& needs,
                                                 const ShoppingInput& input, FactsBook& facts);

/// So much of an ingredient as can be asked for in a shop: whole pieces; what is weighed or
/// measured rounded up to 1 below 100, 5 below 1000, 10 above.
[[nodiscard]] Rational roundedUp(const Rational& value, Unit unit);

} // namespace suppertide::shopping
