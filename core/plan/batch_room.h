// BatchRoom: how many portions of a step this kitchen's vessels and appliances take at once, where
// its recipe says what they are filled with. Used by core/plan and by pages that tell it.
#pragma once

#include <optional>

#include "core/kitchen/kitchen.h"
#include "core/recipe/recipe.h"

namespace suppertide {

struct BatchRoom
{
    std::optional<Portions> atOnce; // absent: nothing that is known bounds it
    /// The use for which nothing that the kitchen has of that kind holds a single portion; else
    /// null.
    const Use* tooSmall = nullptr;
};

/// The least of what the recipe says and of what the things hold that are filled: the largest of
/// the kind; where several are taken together, as many times the smallest of the largest that many.
/// Of a kind that is not there nothing is known. What is too small does not bound: nobody divides a
/// portion, and all of them wait for something larger.
[[nodiscard]] BatchRoom roomForBatch(const Step& step, const Portions& recipePortions,
                                     const Portions& portions, const Kitchen& kitchen);

/// How much each of so many vessels must hold for `portions` at once: what it is filled with and
/// the room that stays empty above, rounded up.
[[nodiscard]] Litres roomFor(const Filling& filling, int vessels, const Portions& recipePortions,
                             const Portions& portions);

} // namespace suppertide
