// Placement: tries a block at a start: ties to what is placed, cooks, counts, units, ovens; what
// must be ejected for it, and about what it costs. And the starts worth trying.
#pragma once

#include <vector>

#include "core/planner/quick_start/cook_roster.h"
#include "core/planner/quick_start/oven_calendar.h"
#include "core/planner/quick_start/resource_profile.h"
#include "core/planner/quick_start/trial.h"

namespace suppertide::quick_start {

/// Starts first … last.
struct StartRange
{
    Minute first = 0;
    Minute last = 0;

    [[nodiscard]] bool empty() const { return last < first; }
};

class Placement
{
public:
    /// Both must outlive this.
    Placement(const PartialPlan& plan, const Penalties& penalties);

    /// The starts that ties to what is placed leave.
    [[nodiscard]] StartRange range(BlockIndex block) const;

    /// Tries the start; absent if it cannot be, or only by ejecting what weighs more than `limit`.
    /// Then `blockage` says how far to move and `blame` what failed. The ends of the range need
    /// no test before.
    [[nodiscard]] std::optional<Proposal> tryAt(BlockIndex block, Minute start, std::int64_t limit,
                                                bool withCost);
    [[nodiscard]] const Blockage& blockage() const { return trial_.blockage; }
    [[nodiscard]] const std::optional<Blame>& blame() const { return trial_.blame; }
    [[nodiscard]] std::int64_t trials() const { return trials_; }

private:
    [[nodiscard]] bool untie();
    [[nodiscard]] bool takeCooks(Proposal& proposal);
    [[nodiscard]] bool takeHold(Proposal& proposal, HoldIndex index);
    [[nodiscard]] bool takeHolds(Proposal& proposal, bool withCost);
    [[nodiscard]] std::optional<std::size_t> servantFor(const Hold& hold, const Need& need);
    [[nodiscard]] bool fail(Blame::Kind kind, std::size_t index);
    [[nodiscard]] std::int64_t ownCost() const;

    const PartialPlan* plan_;
    CookRoster cooks_;
    OvenCalendar ovens_;
    Trial trial_;
    std::int64_t trials_ = 0;
};

} // namespace suppertide::quick_start
