// SequenceCosts: what stays in one oven cost at least in the order in which they are known to come
// (oven_box.h), looked at as often as pays and remembered.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "core/planner/exact/oven_order.h"
#include "core/planner/exact/oven_sequence.h"

namespace suppertide::exact {

class SequenceCosts
{
public:
    SequenceCosts(const Oven& oven, const OvenProgramStyle& style,
                  const std::vector<PossibleStay>& stays);

    struct Found
    {
        std::int64_t least = 0;
        engine::Literals because;
    };
    /// For stays by their positions, the differences of which are known; costs from `below` on are
    /// not told apart. Absent: their order is not sure, or it does not pay to look. `steps` of the
    /// engine so far: this takes a share of its time.
    [[nodiscard]] std::optional<Found> least(const std::vector<std::size_t>& positions,
                                             const StartDifferences& differences,
                                             const engine::Trail& trail, std::int64_t below,
                                             std::int64_t steps);

private:
    /// Of stays in an order, found for costs below so much.
    struct Known
    {
        std::int64_t below = 0;
        std::int64_t lastOpen = 0; // minutes that lengths left open, when last looked at
        std::map<std::vector<std::int64_t>, std::int64_t> least; // by lengths
    };

    [[nodiscard]] std::vector<HeldStay> held(const std::vector<std::size_t>& positions,
                                             const StartDifferences& differences,
                                             const engine::Trail& trail) const;
    [[nodiscard]] std::optional<std::int64_t> costOf(const std::vector<std::size_t>& positions,
                                                     const OvenSequence& sequence,
                                                     std::int64_t below, std::int64_t steps);

    Oven oven_;
    OvenProgramStyle style_;
    std::vector<PossibleStay> stays_;
    std::map<std::vector<std::size_t>, Known> known_;
    std::int64_t work_ = 0; // levels found (setting_levels.h)
};

} // namespace suppertide::exact
