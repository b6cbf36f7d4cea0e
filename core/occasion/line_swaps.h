// Line swaps: what would make a variant fit for a guest, an ingredient of the table in the place of
// each that the guest must not have; and the recipe with that as one more variant.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/occasion/suitability.h"

namespace suppertide {

struct LineSwap
{
    LineId line;
    std::string ingredient;
    std::string instead;

    friend bool operator==(const LineSwap&, const LineSwap&) = default;
};

/// Whether nothing of the line is avoided by the guest, and all of it is known.
[[nodiscard]] bool isLineFine(const Guest& guest, const IngredientLine& line,
                              const std::map<RecipeId, const Recipe*>& recipes,
                              const IngredientBook& ingredients, safety::RuleBook book);

/// The first substitute of the line's ingredient of which that holds. None for preparations, and
/// for a part of a whole.
[[nodiscard]] std::optional<std::string> substituteIn(const Guest& guest,
                                                      const IngredientLine& line,
                                                      const IngredientBook& ingredients,
                                                      safety::RuleBook book);

/// All that must be swapped in a variant; absent if something has no substitute, stands in a method
/// or is a risk to the guest by how it is cooked, or if nothing need be swapped.
[[nodiscard]] std::optional<std::vector<LineSwap>>
swapsFor(const Guest& guest, const Recipe& recipe, const VariantId& variant,
         const std::map<RecipeId, const Recipe*>& recipes, const IngredientBook& ingredients,
         safety::RuleBook book);

/// The id of a variant that is as `variant` but with the swaps.
[[nodiscard]] VariantId swappedVariant(const VariantId& variant,
                                       const std::vector<LineSwap>& swaps);
/// The recipe with that variant, unless it has it. Requires `variant` to be there.
[[nodiscard]] Recipe withSwapped(Recipe recipe, const VariantId& variant,
                                 const std::vector<LineSwap>& swaps);

} // namespace suppertide
