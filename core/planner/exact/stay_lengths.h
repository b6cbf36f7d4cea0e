// StayLengths: how long the stays of ovens last, by the lags between their tasks:
//
//     from ├ into ┤  ├─ bake ─┤    ├ turn ┤ ├ bake ┤  ├ out ┤ to
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/problem/problem.h"

namespace suppertide::exact {

/// Minutes.
struct StayLength
{
    std::int64_t least = 0;           // 0 where nothing is known
    std::optional<std::int64_t> most; // absent: as long as any

    [[nodiscard]] bool isFixed() const { return most == least; }
};

/// By oven demand, wherever it holds something. Longest paths (R. Bellman, On a routing problem,
/// 1958) over the tasks that are present then.
[[nodiscard]] IndexedVector<OvenDemandIndex, StayLength> stayLengths(const Problem& problem);

} // namespace suppertide::exact
