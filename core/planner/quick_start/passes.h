// Passes: a first plan. Blocks are placed one by one, those that must be latest first, each as late
// as it fits. One that fits nowhere is put where what has to go for it weighs least; what went is
// placed anew. A block weighs more each time that it did not fit, so the difficult ones settle.
// When that does not end, options are changed and the pass begins again with what it has learnt.
// Source: ejection with counters after Y. Nagata, S. Kobayashi, A powerful route minimization
// heuristic for the vehicle routing problem with time windows using ejection chains, PPSN 2008.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/planner/quick_start/insertion.h"

namespace suppertide::quick_start {

/// Places all blocks that are not placed yet; false if the budget or the ejections run out, then
/// some are left. `cheap`: where they cost least instead of as late as they fit.
class Pass
{
public:
    Pass(PartialPlan& plan, Penalties& penalties, Dice& dice, Budget& budget);

    bool run(std::size_t mostEjections, bool cheap);

private:
    void stack();
    void shake();
    [[nodiscard]] bool settle(BlockIndex block, bool cheap);

    PartialPlan* plan_;
    Penalties* penalties_;
    Dice* dice_;
    Budget* budget_;
    Insertion insertion_;
    std::vector<BlockIndex> waiting_; // the last one is next
    std::size_t ejections_ = 0;
};

} // namespace suppertide::quick_start
