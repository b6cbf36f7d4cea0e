// Problems with fewer requirements, as the page of the format says how a conflict is judged.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/problem/problem.h"

namespace suppertide::test {

/// Every id that may stand in a conflict, such as "lag:l1".
[[nodiscard]] std::set<std::string> requirementsOf(const Problem& problem);

/// The problem with no requirements but these; what always holds stays.
[[nodiscard]] Problem withOnly(const Problem& problem, const std::set<std::string>& kept);

} // namespace suppertide::test
