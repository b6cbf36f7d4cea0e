// A second reading of the problem format, minute by minute and as plain as can be: the oracle for
// core/check. It looks at every minute of the horizon instead of intervals, and shares nothing with
// the checker.
#pragma once

#include <cstdint>
#include <set>
#include <string>

#include "core/problem/schedule.h"

namespace suppertide::test {

/// The broken requirements as "kind:id".
[[nodiscard]] std::set<std::string> brokenByMinutes(const Problem& problem,
                                                    const Schedule& schedule);

/// The cost, added up minute by minute.
[[nodiscard]] std::int64_t costByMinutes(const Problem& problem, const Schedule& schedule);

} // namespace suppertide::test
