// Words for parts of a whole, as a list says them.
#pragma once

#include <string_view>

#include "core/food/ingredient_part.h"

namespace suppertide::shopping {

/// "zest", "yolk"; empty for the whole.
[[nodiscard]] std::string_view wordFor(IngredientPart part);

} // namespace suppertide::shopping
