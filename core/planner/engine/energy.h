// EnergyPropagator: within any stretch of time, items of a limited resource cannot need more of it,
// minutes times amount, than there is. Stronger than the timetable where items have room to move
// but not enough of it together; only for items that are there for sure, of fixed length. Slow, so
// for counts it looks only while few levels are decided, where it raises lower bounds (measured on
// RCPSP/max: at all levels fewer instances are closed than without it); where no two items can
// overlap (add_clique.cpp) it pays at all of them.
//
//     window      a|==============|b        an item with est and lct as drawn is at least 3 minutes
//     item     [ - - ======]                in the window wherever it goes; if the others leave
//              est        lct               room for 2 only, it cannot begin between a − length + 3
//                                           and b − 3
//
// Source: P. Baptiste, C. Le Pape, W. Nuijten, Constraint-Based Scheduling (2001), section 3.3.6
// (energetic reasoning); the explanation of an item by the two bounds that force its least overlap
// as in A. Schutt, T. Feydy, P. Stuckey, Explaining time-table-edge-finding propagation for the
// cumulative resource constraint (2013).
#pragma once

#include <vector>

#include "core/planner/engine/engine.h"

namespace suppertide::engine {

struct EnergyItem
{
    Term start;
    Bound length = 0; // > 0
    Bound amount = 1; // > 0
};

class EnergyPropagator : public Propagator
{
public:
    EnergyPropagator(std::vector<EnergyItem> items, Bound capacity, std::int32_t deepest)
        : items_(std::move(items)), capacity_(capacity), deepest_(deepest)
    {}
    /// Looks up to the level `deepest`.
    static void post(Engine& engine, std::vector<EnergyItem> items, Bound capacity,
                     std::int32_t deepest);

    bool propagate(Engine& engine) override;
    [[nodiscard]] int order() const override { return 2; }

private:
    struct Window
    {
        Bound from = 0;
        Bound until = 0;
    };
    struct Bounds
    {
        Bound est = 0;
        Bound lst = 0;
    };
    [[nodiscard]] Bound leastIn(std::size_t item, const Window& window) const;
    [[nodiscard]] Literals because(const Window& window, std::size_t without,
                                   std::int64_t spare) const;
    [[nodiscard]] bool fits(Engine& engine, const Window& window);
    [[nodiscard]] bool pushOut(Engine& engine, const Window& window, std::size_t item,
                               std::int64_t room);

    std::vector<EnergyItem> items_;
    Bound capacity_;
    std::int32_t deepest_;
    std::vector<Bounds> bounds_; // as they were when the propagator began
};

} // namespace suppertide::engine
