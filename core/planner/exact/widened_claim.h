// WidenedClaim: what an oven costs at least is found for stays at certain times; mostly it costs no
// less if they are some minutes further apart or closer. A claim for as wide times as can be shown
// rules out more at once.
//
//     bread 20 min after the gratin: costs 49 at least     found
//     bread 11 min or more after it: costs 49 at least     claimed
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "core/planner/exact/box_costs.h"
#include "core/planner/exact/oven_sequence.h"

namespace suppertide::exact {

/// Makes the lengths of stretches as wide as can be shown, from a box that costs `least`, no wider
/// than they can ever be; what is empty is never told apart beyond what the oven forgets.
void widenBox(BoxCosts& costs, OvenSequence& sequence, const StartDifferences& differences,
              const engine::Trail& trail, std::int64_t least);

/// The sequence of stays; absent: their order is not sure.
using SequenceOf = std::function<std::optional<OvenSequence>(const std::vector<HeldStay>&)>;

struct FewerStays
{
    std::vector<std::size_t> kept; // by their positions
    OvenSequence sequence;
};

/// None left out.
[[nodiscard]] FewerStays allStays(const std::vector<HeldStay>& held, OvenSequence sequence);

/// Leaves out stays without which the sequence of the others costs `least` too; that of all does.
[[nodiscard]] FewerStays fewestStays(BoxCosts& costs, const std::vector<HeldStay>& held,
                                     const SequenceOf& sequenceOf, std::int64_t least,
                                     BoxLook look);

/// As wide as they can ever be.
[[nodiscard]] OvenSequence widestBox(const Oven& oven, OvenSequence sequence,
                                     const StartDifferences& differences,
                                     const engine::Trail& trail);

struct WidenedClaim
{
    std::optional<engine::Literals> because; // absent: it is not easy to show even for those
    std::vector<std::size_t> stays;          // of which it speaks, by their positions
    std::int64_t work = 0;                   // levels found
};

/// Literals on how far stays are apart with which no program of the oven costs less than `least`;
/// they hold for the stays as they are. The differences of all are known, and the oven starts no
/// warmer than the room.
[[nodiscard]] WidenedClaim widenedClaim(BoxCosts& costs, const std::vector<HeldStay>& held,
                                        const StartDifferences& differences,
                                        const engine::Trail& trail, std::int64_t least);

} // namespace suppertide::exact
