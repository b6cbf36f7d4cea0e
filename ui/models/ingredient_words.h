// What is known of an ingredient, in a line for the page of a recipe.
#pragma once

#include <QString>

#include "core/food/ingredient_part.h"
#include "core/quantity/amount.h"
#include "ui/document/state.h"

namespace suppertide::ui {

/// "Known as plain flour: baking; contains wheat; this weighs 250 g." or what must be said of it.
/// `amount`: of the line.
[[nodiscard]] QString ingredientFacts(const LibraryState& library, const std::string& ingredient,
                                      const Amount& amount, IngredientPart part);

} // namespace suppertide::ui
