// The sentence for a rule of food safety that a plan breaks: which food, by how much, since when,
// and who says so where. For core/wording only.
#pragma once

#include <string>

#include "core/wording/clash_words.h"

namespace suppertide {

/// Requires a clash of kind FoodSafety. Never says that anything is safe: local codes prevail.
[[nodiscard]] std::string foodSafetySentence(const ClashWords& words);

} // namespace suppertide
