// The occasion with one guest getting something else: portions follow, and everybody else keeps
// what they have.
#pragma once

#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "core/occasion/occasion.h"

namespace suppertide {

/// A dish in one of its variants; absent: nothing.
using GivenHelping = std::optional<std::pair<DishId, VariantId>>;

/// `dishes` are those of the course of which each guest gets one. The guest gets that one, or
/// nothing, instead of what they had of them; what everybody else has of them is theirs by name
/// from now on. Requires course, guest and dish to be there.
[[nodiscard]] Occasion withGiven(const Occasion& occasion, const CourseId& course,
                                 const std::vector<DishId>& dishes, const GuestId& guest,
                                 const GivenHelping& helping,
                                 const std::map<RecipeId, const Recipe*>& recipes,
                                 const IngredientBook& ingredients);

} // namespace suppertide
