// The sentence for a rule of food safety that a plan breaks: which food, by how much, since when,
// and who says so where. For core/wording only.
#pragma once

#include <string>

#include "core/wording/clash_words.h"

namespace suppertide {

/// Requires a clash of kind FoodSafety. Never says that anything is safe: local codes prevail.
[[nodiscard]] std::string foodSafetySentence(const ClashWords& words);

/// ": what the rule says (who says it, where)", to go on after what breaks it; empty without a
/// finding.
[[nodiscard]] std::string ruleAfter(const Clash& clash);

} // namespace suppertide
