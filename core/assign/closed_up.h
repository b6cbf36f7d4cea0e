// ClosedUp: stays of one oven without the time in which it stands empty for so long that nothing
// tells what was in before. What their cheapest program costs stays the same, so stays that differ
// only in such times, or in when the first begins, are looked at once.
//
//     ├──────┤                                     ├────────┤
//     ├──────┤      ovenForgets      ├────────┤
#pragma once

#include <cstdint>
#include <vector>

#include "core/assign/oven_pairs.h"
#include "core/problem/problem.h"
#include "core/problem/schedule.h"

namespace suppertide {

/// Minutes after which nothing tells what was in an oven that stands empty: it has cooled to the
/// room, and would have to be heated anew.
[[nodiscard]] std::int64_t ovenForgets(const Oven& oven);

struct ClosedUp
{
    /// From the beginning of a stay after an empty time on.
    struct Part
    {
        PlanTime start;
        Minutes earlier{0}; // than it was
    };
    std::vector<OvenStay> stays; // in order of time
    std::vector<Part> parts;
};

/// Empty times, and that before the first stay, are no longer than `longest`. Stays in any order.
[[nodiscard]] ClosedUp closedUp(std::vector<OvenStay> stays, Minutes longest);

/// A program for the closed-up stays as one for the stays as they were: it waits where the oven is
/// coolest.
[[nodiscard]] OvenProgram openedUp(const Oven& oven, const OvenProgram& program,
                                   const ClosedUp& closed);

} // namespace suppertide
