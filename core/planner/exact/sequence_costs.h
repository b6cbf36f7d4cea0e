// SequenceCosts: what stays in one oven cost at least in the order in which they are known to come
// (oven_box.h), looked at as often as pays and remembered.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <vector>

#include "core/planner/exact/box_costs.h"
#include "core/planner/exact/oven_order.h"
#include "core/planner/exact/oven_sequence.h"

namespace suppertide::exact {

class SequenceCosts
{
public:
    SequenceCosts(std::shared_ptr<BoxCosts> costs, const std::vector<PossibleStay>& stays);

    struct Found
    {
        std::int64_t least = 0;
        std::vector<std::size_t> inside; // of the positions, those that it takes
        engine::Literals because;        // and how they lie to each other
    };
    /// For stays by their positions, the differences of which are known; costs from `below` on are
    /// not told apart. Absent: their order is not sure, or it does not pay to look. `steps` of the
    /// engine so far: this takes a share of its time.
    [[nodiscard]] std::optional<Found> least(const std::vector<std::size_t>& positions,
                                             const StartDifferences& differences,
                                             const engine::Trail& trail, std::int64_t below,
                                             std::int64_t steps);

private:
    [[nodiscard]] std::vector<HeldStay> held(const std::vector<std::size_t>& positions,
                                             const StartDifferences& differences,
                                             const engine::Trail& trail) const;
    [[nodiscard]] bool isWorthALook(const std::vector<std::size_t>& positions,
                                    const OvenSequence& sequence);

    std::shared_ptr<BoxCosts> costs_;
    std::vector<PossibleStay> stays_;
    /// Minutes that lengths left open when last looked at, by positions.
    std::map<std::vector<std::size_t>, std::int64_t> lastOpen_;
    std::int64_t work_ = 0;
    std::int64_t claims_ = 0;
};

} // namespace suppertide::exact
