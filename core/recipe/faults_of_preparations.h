// What in the preparations of a recipe cannot be, which can only be told with the other recipes at
// hand. Used where files are taken in and before an evening is planned.
#pragma once

#include <map>
#include <vector>

#include "core/recipe/recipe.h"

namespace suppertide {

/// A preparation that is not among `recipes`, or that needs this recipe in turn. Empty where it
/// takes no preparations.
[[nodiscard]] std::vector<RecipeFault>
faultsOfPreparations(const Recipe& recipe, const std::map<RecipeId, const Recipe*>& recipes);

} // namespace suppertide
