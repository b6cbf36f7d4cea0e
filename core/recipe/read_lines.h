// Lines of a recipe from ingredient lines as people write them.
#pragma once

#include <set>
#include <string_view>
#include <vector>

#include "core/food/ingredient_line.h"
#include "core/recipe/recipe.h"

namespace suppertide {

/// The reading as a line: without an amount "to taste"; what is wanted more and what was not read
/// stand in the note, so that nothing is lost. Its id is the ingredient's name, or that with a
/// number if `taken` has it.
[[nodiscard]] IngredientLine lineFrom(const IngredientLineReading& reading,
                                      const std::set<LineId>& taken);

/// A text of many lines; headings are left out.
[[nodiscard]] std::vector<IngredientLine> linesFrom(std::string_view text, MeasureSystem system,
                                                    std::set<LineId> taken);

/// In whose cups and spoons a text is written: US customary if it has cups, sticks, ounces or
/// pounds and nothing in grams or millilitres; else metric.
[[nodiscard]] MeasureSystem systemOf(std::string_view text);

} // namespace suppertide
