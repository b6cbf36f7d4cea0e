// LeastLengths: how long at least the stays of ovens last, by the lags between their tasks:
//
//     from ├ into ┤  ├─ bake ─┤    ├ turn ┤ ├ bake ┤  ├ out ┤ to
#pragma once

#include <cstdint>
#include <vector>

#include "core/problem/problem.h"

namespace suppertide::exact {

/// Minutes, by oven demand, wherever it holds something; 0 where nothing is known. Longest paths
/// (R. Bellman, On a routing problem, 1958) over the tasks that are present then.
[[nodiscard]] IndexedVector<OvenDemandIndex, std::int64_t> leastLengths(const Problem& problem);

} // namespace suppertide::exact
