// TemperatureMethods: a step given at several oven temperatures is a choice of methods, as any
// other that a cook has. Used by resolve.
#pragma once

#include "core/recipe/recipe.h"

namespace suppertide {

/// The choice of a step's temperature: "bake-heat".
[[nodiscard]] MethodChoiceId heatChoiceOf(const StepId& step);

/// Takes each step with other heats out of the common part and makes a choice of it, one method for
/// each temperature, the one as it stands first. In a method of a choice, that choice has the
/// method once for each temperature; the first keeps its id. No step has other heats afterwards.
void spreadTemperatures(ResolvedRecipe& recipe);

/// All choices of a recipe with those of temperature, its variants' own included, each once: what a
/// cook may take.
[[nodiscard]] std::vector<MethodChoice> choicesOf(const Recipe& recipe);

} // namespace suppertide
