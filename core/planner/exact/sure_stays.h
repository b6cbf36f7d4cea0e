// SureStays: while stays in an oven may still move, the part of each that is sure: by the clock,
// or to one of them, wherever all of them are.
//
//     starts 18:00…18:20, lasts 60 min    by the clock      18:20 ├─────────┤ 19:00
//     10…15 min after the gratin begins   to the gratin   0:15 ├──────────────┤ 1:10
#pragma once

#include <cstdint>
#include <vector>

#include "core/planner/exact/oven_order.h"
#include "core/planner/exact/start_differences.h"

namespace suppertide::exact {

struct SureStays
{
    std::vector<OvenStay> stays; // without what they prefer
    std::vector<OvenStay> begun; // the same, with it where it is known when they begin
    engine::Literals times;      // why they are surely in
    engine::Literals starts;     // and why they begin when they do
    bool allFixed = true;        // no part of any stay is left open
    std::int64_t minutes = 0;    // of all stays
};

/// `inside` are the positions of stays that are in.
[[nodiscard]] SureStays sureByTheClock(const std::vector<PossibleStay>& stays,
                                       const std::vector<std::size_t>& inside,
                                       const engine::Trail& trail);

/// Times from a moment long before the first; the differences of all are known. What is further
/// from all that is earlier than `forgets` minutes is as far as any other.
[[nodiscard]] SureStays sureToEachOther(const std::vector<PossibleStay>& stays,
                                        const std::vector<std::size_t>& inside,
                                        const StartDifferences& differences, std::int64_t forgets,
                                        const engine::Trail& trail);

} // namespace suppertide::exact
