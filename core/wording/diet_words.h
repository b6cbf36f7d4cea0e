// What is said of a guest's diets.
#pragma once

#include <string>
#include <vector>

#include "core/occasion/diet_doubts.h"

namespace suppertide {

/// "coeliac", "no almond": diets, then allergies that no diet of the guest rules out already.
[[nodiscard]] std::vector<std::string> needsOf(const Guest& guest);

/// “Bea is said to be vegan and pescatarian, which contradict each other …”; empty if nothing is in
/// doubt.
[[nodiscard]] std::string dietDoubtSentence(const Guest& guest);

} // namespace suppertide
