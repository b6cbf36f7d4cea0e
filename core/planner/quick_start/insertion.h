// Insertion: puts one block into a partial plan: as late as it fits, or where it costs least, or,
// if it fits nowhere, where what has to go weighs least.
#pragma once

#include <optional>
#include <vector>

#include "core/planner/quick_start/budget.h"
#include "core/planner/quick_start/dice.h"
#include "core/planner/quick_start/placement.h"

namespace suppertide::quick_start {

class Insertion
{
public:
    /// All must outlive this.
    Insertion(const PartialPlan& plan, const Penalties& penalties, Dice& dice, Budget& budget)
        : plan_(&plan), placement_(plan, penalties), dice_(&dice), budget_(&budget)
    {}

    /// The latest start at which nothing has to go.
    [[nodiscard]] std::optional<Proposal> latest(BlockIndex block);
    /// The start of least cost among those worth trying, at which nothing has to go.
    [[nodiscard]] std::optional<Proposal> cheapest(BlockIndex block);
    /// Some start, drawn, at which nothing has to go.
    [[nodiscard]] std::optional<Proposal> somewhere(BlockIndex block);
    /// The start at which what has to go weighs least; ties are drawn. Best after `latest` or
    /// `cheapest` has failed: it tries the starts at which those were stopped.
    [[nodiscard]] std::optional<Proposal> forced(BlockIndex block);
    /// As `latest`, and what stopped the block on the way; for messages, not counted as work.
    struct Explained
    {
        std::optional<Proposal> proposal;
        std::vector<Blame> reasons;
    };
    [[nodiscard]] Explained explained(BlockIndex block);

private:
    [[nodiscard]] std::optional<Proposal> tryAt(BlockIndex block, Minute start, std::int64_t limit,
                                                bool withCost);
    [[nodiscard]] std::vector<Minute> worthTrying(BlockIndex block, const StartRange& range);
    void addAligned(BlockIndex block, std::vector<Minute>& starts) const;
    void addAlignedWork(BlockIndex block, std::vector<Minute>& starts) const;

    const PartialPlan* plan_;
    Placement placement_;
    Dice* dice_;
    Budget* budget_;
    std::vector<Minute> stopped_; // where the last search was stopped
};

} // namespace suppertide::quick_start
