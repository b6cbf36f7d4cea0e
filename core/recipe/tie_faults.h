// TieFaults: what is wrong in how the parts of a recipe refer to each other: ties to steps that are
// not there or in a circle, ids that stand for two things, drops that hit nothing. For core/recipe
// only.
#pragma once

#include <string>
#include <vector>

#include "core/recipe/recipe.h"

namespace suppertide {

/// What a fault calls a step: its deed, or its id where it has none.
[[nodiscard]] std::string nameInFaults(const Step& step);

/// Of one variant carried through; `where` stands before each place ("variant “x”, ").
void addTieFaults(const ResolvedRecipe& recipe, const std::string& where,
                  std::vector<RecipeFault>& faults);

/// What the variant drops that is neither in the common part nor in a method.
void addDropFaults(const Recipe& recipe, const Variant& variant, std::vector<RecipeFault>& faults);

} // namespace suppertide
