// UnitSweep: which unit of a pool serves which demand, for fixed intervals. Demands are looked at
// in order of start; a state is when each unit gets free, and units that are alike are not told
// apart. Exact as long as no more states are alive at once than the limit. A step of assign.
#pragma once

#include <cstdint>
#include <vector>

#include "core/base/interval.h"

namespace suppertide {

struct UnitWork
{
    Interval during;                 // not empty
    std::vector<bool> allowed;       // for each unit
    std::vector<std::size_t> pinned; // at most one; empty: any allowed

    friend bool operator==(const UnitWork&, const UnitWork&) = default;
};

struct UnitSweepResult
{
    std::vector<std::size_t> units; // as the work; a unit that is not allowed counts as broken
    std::int64_t broken = 0;
};

/// `size` of each unit; a demand gets the smallest unit that serves. At least one unit.
[[nodiscard]] UnitSweepResult sweepUnits(const std::vector<UnitWork>& work,
                                         const std::vector<std::int64_t>& size);

} // namespace suppertide
