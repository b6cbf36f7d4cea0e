// WidenedClaim: what an oven costs at least is found for stays at certain times; mostly it costs no
// less if they are some minutes further apart or closer. A claim for as wide times as can be shown
// rules out more at once.
//
//     bread 20 min after the gratin: costs 49 at least     found
//     bread 11 min or more after it: costs 49 at least     claimed
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/assign/oven_program.h"
#include "core/planner/exact/oven_sequence.h"

namespace suppertide::exact {

struct WidenedClaim
{
    std::optional<engine::Literals> because; // absent: it is not easy to show even for those
    std::int64_t work = 0;                   // levels found
};

/// Literals on how far stays are apart with which no program of the oven costs less than `least`;
/// they hold for the stays as they are. The differences of all are known, and the oven starts no
/// warmer than the room.
[[nodiscard]] WidenedClaim widenedClaim(const Oven& oven, const OvenProgramStyle& style,
                                        const std::vector<HeldStay>& held,
                                        const StartDifferences& differences,
                                        const engine::Trail& trail, std::int64_t least);

} // namespace suppertide::exact
