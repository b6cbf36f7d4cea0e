// Another tin or mould for a dish than its recipe names: what it changes in the steps. Amounts
// follow where a line's own rule is the mould (core/recipe/line_scaling).
#pragma once

#include "core/occasion/occasion.h"

namespace suppertide {

/// Changes the steps in an oven that come after, or are, one that takes what goes by the mould.
/// Filled as deep, a batch of them is as much larger as the bottom; with the same amounts they take
/// longer or shorter by the depth (core/science/mould_scaling; common practice), in their other
/// temperatures too. Which tin it is stands in their detail. Nothing changes without such a line.
void putIntoMould(ResolvedRecipe& recipe, const OtherMould& other);

} // namespace suppertide
