// Amounts of an ingredient in other measures: what 2½ cups of flour weigh, how many lemons give 8 g
// of zest, how much to buy so that so much can be eaten. A failure's sentence says what does not
// fit
// ("3 l of egg") and what would.
#pragma once

#include "core/base/result.h"
#include "core/food/ingredient.h"
#include "core/quantity/amount.h"

namespace suppertide {

/// Grams of the edible part; of a range its upper end. `part`: what the line takes of each whole
/// ("2 lemons, juice only"). Rounded to a milligram. BadInput if the table cannot say, or for "to
/// taste" and pinches of what nobody has weighed.
[[nodiscard]] Result<Grams> massOf(const Amount& amount, const Ingredient& ingredient,
                                   IngredientPart part = IngredientPart::Whole);
/// Through its density, rounded to a microlitre.
[[nodiscard]] Result<Millilitres> volumeOf(const Amount& amount, const Ingredient& ingredient,
                                           IngredientPart part = IngredientPart::Whole);
/// The same in another unit: exactly within a dimension, else through what it weighs.
[[nodiscard]] Result<Amount> inUnitOf(const Amount& amount, Unit unit,
                                      const Ingredient& ingredient);

/// What must be bought so that `edible` is left; as much if nobody knows the yield.
[[nodiscard]] Grams asPurchased(Grams edible, const Ingredient& ingredient);
[[nodiscard]] Grams edibleOf(Grams purchased, const Ingredient& ingredient);

/// How many wholes give so much of a part, not rounded: 8 g of zest take 2 lemons. An amount that
/// counts pieces is itself the answer. BadInput if nobody knows what one whole gives.
[[nodiscard]] Result<Rational> wholesFor(const Amount& amount, const Ingredient& ingredient,
                                         IngredientPart part);

} // namespace suppertide
