// Broken requirements as text with all that they say, so that a test compares whole lines:
//     "lag:rest below min 4/5 [20,24) chop,boil"
// is name, how, asked/allowed, minutes and tasks; what else is set follows as "cook=", "oven=",
// "demand=" and "with=".
#pragma once

#include <string>
#include <vector>

#include "core/check/check.h"

namespace suppertide::test {

using Lines = std::vector<std::string>;

/// What `check` says, in its order.
[[nodiscard]] Lines brokenIn(const Problem& problem, const Schedule& schedule);

} // namespace suppertide::test
