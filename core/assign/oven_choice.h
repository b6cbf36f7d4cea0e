// OvenChoice: which oven each stay is in, for fixed intervals: demands of one group together, no
// clash of temperatures, modes or shelves if there is a way. Depth-first with a bound on what is
// broken. A step of assign.
#pragma once

#include <cstdint>
#include <vector>

#include "core/assign/oven_pairs.h"
#include "core/problem/problem.h"

namespace suppertide {

struct OvenWork
{
    OvenStay stay;
    std::int64_t shelves = 1;
    std::optional<std::string> mode;
    std::optional<std::string> group;
    std::vector<bool> allowed;       // for each oven
    std::vector<std::size_t> pinned; // at most one; empty: any allowed

    friend bool operator==(const OvenWork&, const OvenWork&) = default;
};

struct OvenChoiceResult
{
    std::vector<std::size_t> ovens; // as the work
    std::int64_t broken = 0;
};

/// At least one oven.
[[nodiscard]] OvenChoiceResult chooseOvens(const IndexedVector<OvenIndex, Oven>& ovens,
                                           const std::vector<OvenWork>& work);

} // namespace suppertide
