// Random recipes, kitchens and occasions that mean something: every member is used now and then,
// with names in several scripts, and faultsOf finds nothing in them.
#pragma once

#include "core/exchange/exchange.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::test {

/// Grows with the seed; the id is `id`.
[[nodiscard]] Recipe anyRecipe(Random& random, const std::string& id);
[[nodiscard]] Kitchen anyKitchen(Random& random, const std::string& id);
/// Takes dishes from `recipes` and cooks from `kitchen`.
[[nodiscard]] OccasionRecord anyOccasion(Random& random, const std::string& id,
                                         const std::vector<Recipe>& recipes,
                                         const Kitchen& kitchen);
[[nodiscard]] Larder anyLarder(Random& random);
/// A few of each, sorted by id, complete in itself.
[[nodiscard]] ExchangeContent anyContent(Random& random);

} // namespace suppertide::test
