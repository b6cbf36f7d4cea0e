// Packs: how many of which size to buy so that there is enough.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/quantity/rational.h"

namespace suppertide::shopping {

/// All sizes and what is needed in one unit. `size` is above 0.
struct PackSize
{
    Rational size;
    std::optional<std::int64_t> price; // of one pack, in the smallest coin; not below 0
};

/// How many of each to buy, so that together they hold at least `needed`: if all have a price, at
/// the least cost; then with the least left over, then the fewest. None is too much: without any
/// one of them there would not be enough. Nothing is bought if `needed` is not above 0. An
/// unbounded knapsack, exact up to some ten thousand steps of size; what is beyond that is bought
/// in the packs that are cheapest, or largest, for their size.
[[nodiscard]] std::vector<std::int64_t> packsFor(const Rational& needed,
                                                 const std::vector<PackSize>& sizes);

} // namespace suppertide::shopping
