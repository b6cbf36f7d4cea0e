// Proof: the little that the quick start can prove. Infeasible: lags and windows of tasks that are
// always present contradict each other, or a single requirement cannot be met by any resource there
// is. And a lower bound of the cost that always holds.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/problem/problem.h"

namespace suppertide::quick_start {

/// Requirements that cannot all hold, by name; without any one of them the rest of the list can.
[[nodiscard]] std::optional<std::vector<std::string>> provenConflict(const Problem& problem);

/// The same of the lags and windows alone, of the tasks that are present.
[[nodiscard]] std::optional<std::vector<std::string>>
lagConflict(const Problem& problem, const IndexedVector<TaskIndex, bool>& present);

/// No schedule costs less.
[[nodiscard]] std::int64_t provenBound(const Problem& problem);

} // namespace suppertide::quick_start
