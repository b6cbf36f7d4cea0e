// Main ingredients: what a dish is mostly made of, so that a menu can be told that has salmon
// twice.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/occasion/occasion.h"

namespace suppertide::menus {

/// Of a variant: what makes up a fifth or more of all of it that is weighed or measured, a
/// millilitre counted as a gram, and what the dish is named after; of a preparation that counts so
/// much, its own. Water is none. By their names in `ingredients`, else as the recipe has them; in
/// the form of nameKey, sorted, each once. (Where the line is drawn is our own choice.)
[[nodiscard]] std::vector<std::string>
mainIngredients(const Recipe& recipe, const VariantId& variant,
                const std::map<RecipeId, const Recipe*>& recipes,
                const IngredientBook& ingredients);

} // namespace suppertide::menus
