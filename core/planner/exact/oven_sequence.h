// OvenSequence: stays in an oven in a known order of their beginnings and ends, cut at each of
// these, with how long each piece may be (see oven_box.h).
//
//     gratin   ├─────────────┤
//     tart            ├──────────────┤
//              │ 5…12 │ 20…9 │ 25…32 │
#pragma once

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "core/assign/oven_box.h"
#include "core/planner/exact/start_differences.h"

namespace suppertide::exact {

struct HeldStay
{
    OvenStay stay;
    engine::Term from;
    engine::Term to;
};

struct OvenSequence
{
    using Ends = std::pair<engine::Term, engine::Term>;

    OvenBox box;
    std::vector<Ends> ends; // of each stretch
    std::vector<Ends> ties; // points at one moment
};

/// In the order of the times of the stays, each stretch as long as it is by them. The differences
/// of all are known.
[[nodiscard]] OvenSequence sequenceOf(const std::vector<HeldStay>& held);

/// The same, but each stretch as long as it can still be; absent: the order is not sure.
[[nodiscard]] std::optional<OvenSequence> possibleSequence(const std::vector<HeldStay>& held,
                                                           const StartDifferences& differences,
                                                           const engine::Trail& trail);

/// Why each stretch is no shorter and no longer; what is empty for `forgets` minutes may be so for
/// longer.
[[nodiscard]] engine::Literals whySequence(const OvenSequence& sequence,
                                           const StartDifferences& differences,
                                           std::int64_t forgets);

} // namespace suppertide::exact
