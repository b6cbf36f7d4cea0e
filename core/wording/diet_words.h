// What is said of a guest's diets.
#pragma once

#include <string>

#include "core/occasion/diet_doubts.h"

namespace suppertide {

/// “Bea is said to be vegan and pescatarian, which contradict each other …”; empty if nothing is in
/// doubt.
[[nodiscard]] std::string dietDoubtSentence(const Guest& guest);

} // namespace suppertide
