// Cheapest choices: everybody takes one of several things, and each thing that is taken by anybody
// must be made once: who takes what, so that the making and the dislikes together cost least. It
// is facility location without capacities (Cornuejols, Nemhauser & Wolsey, in Mirchandani &
// Francis, Discrete Location Theory, 1990), solved by branch and bound: dinners are small.
#pragma once

#include <cstddef>
#include <functional>
#include <set>
#include <vector>

namespace suppertide::menus {

/// A thing that may be taken, and what taking it costs besides making it.
struct Choice
{
    std::size_t thing = 0;
    int penalty = 0;

    friend bool operator==(const Choice&, const Choice&) = default;
};

/// In order of preference, for where costs are equal; not empty.
using Choices = std::vector<Choice>;

/// What it costs to make all of these; never less for more of them.
using CostOfMaking = std::function<int(const std::set<std::size_t>&)>;

/// For each of `takers` the number of its choice. Exact up to `mostNodes` steps of the search, then
/// the best so far; deterministic.
[[nodiscard]] std::vector<std::size_t> cheapestChoices(const std::vector<Choices>& takers,
                                                       const CostOfMaking& costOfMaking,
                                                       std::size_t mostNodes = 200'000);

} // namespace suppertide::menus
