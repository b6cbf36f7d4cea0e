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
#include "core/planner/exact/sequence_reader.h"
#include "core/planner/exact/widened_claim.h"

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
        bool isNew = false;              // that they cost what was asked about; shown just now
    };
    /// For stays by their positions, the differences of which are known; costs from `below` on are
    /// not told apart. Null: their order is not sure, or it does not pay to look. `steps` of the
    /// engine so far: this takes a share of its time. Valid until the next call.
    [[nodiscard]] const Found* least(const std::vector<std::size_t>& positions,
                                     const StartDifferences& differences,
                                     const engine::Trail& trail, std::int64_t below,
                                     std::int64_t steps);

private:
    /// Of stays by their positions.
    struct Memory
    {
        SequenceReader reader;
        std::optional<Found> found;   // at the last look
        std::int64_t below = 0;       // then
        std::optional<Found> byOrder; // whatever the lengths
        std::int64_t belowByOrder = 0;
        std::int64_t lastOpen = 0; // minutes that lengths left open when last looked at closely
    };
    [[nodiscard]] Memory& memoryOf(const std::vector<std::size_t>& positions);
    [[nodiscard]] Found foundOf(const std::vector<std::size_t>& positions, std::int64_t cost,
                                const FewerStays& said, const StartDifferences& differences) const;
    void lookAtOrder(const std::vector<std::size_t>& positions, Memory& memory,
                     const StartDifferences& differences, const engine::Trail& trail,
                     std::int64_t below, bool mayLook);
    void lookAtLengths(const std::vector<std::size_t>& positions, Memory& memory,
                       const StartDifferences& differences, const engine::Trail& trail,
                       std::int64_t below, bool mayLook);

    std::shared_ptr<BoxCosts> costs_;
    std::vector<PossibleStay> stays_;
    std::int64_t forgets_;
    std::map<std::vector<std::size_t>, Memory> memories_;
    std::int64_t work_ = 0;
    std::int64_t claims_ = 0;
};

} // namespace suppertide::exact
