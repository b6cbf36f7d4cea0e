// LineAmounts: the needs of one ingredient in as few units as can be, each in the unit that most of
// them are told in. Used by core/shopping alone.
#pragma once

#include <vector>

#include "core/shopping/wholes.h"

namespace suppertide::shopping {

/// Needs that are told in one unit.
struct NeedGroup
{
    Unit unit = Unit::Gram;
    std::vector<ShoppingNeed> needs;
    Rational amount; // as bought
    Rational opened; // wholes whose parts are taken
    Wholes wholes;
    bool isCounted = false; // false: pinches, "to taste", or all of it comes from elsewhere
};

/// At least one group, if there are needs; needs without an amount are in the first.
[[nodiscard]] std::vector<NeedGroup> groupsOf(std::vector<ShoppingNeed> needs,
                                              const IngredientFacts& facts);

/// Whether the amount is of what is prepared, not of what is bought: of a part, or if the note says
/// "peeled weight", "trimmed weight", "prepared weight", "net weight".
[[nodiscard]] bool isPreparedAmount(const ShoppingNeed& need);

/// What must be bought for one need, in `unit`; absent if that is not known.
[[nodiscard]] std::optional<Rational> asBought(const ShoppingNeed& need, Unit unit,
                                               const IngredientFacts& facts);

} // namespace suppertide::shopping
