// The ingredients that this cook has: the table with what the larder says in its place, and labels
// that were read.
#pragma once

#include "core/food/ingredient.h"
#include "core/larder/larder.h"

namespace suppertide {

/// What the larder leaves out stands as in the table. Of an ingredient that only the larder knows
/// and of which it does not say what it contains, the label is to be checked. A label that was read
/// is all that the thing contains.
[[nodiscard]] IngredientBook ingredientBook(const Larder& larder);

} // namespace suppertide
