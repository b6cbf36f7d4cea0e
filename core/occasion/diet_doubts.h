// Diets of one guest that contradict each other: all that any of them rules out is kept from the
// guest, and the cook is told to ask.
#pragma once

#include <optional>
#include <utility>

#include "core/occasion/occasion.h"

namespace suppertide {

/// Two diets of which one has as a matter of course what the other rules out: who is pescatarian
/// eats fish, who is vegetarian or vegan does not. The stricter one first; absent if there is none.
[[nodiscard]] std::optional<std::pair<Diet, Diet>> contradictingDiets(const Guest& guest);

} // namespace suppertide
