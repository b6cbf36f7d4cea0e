// Edges: differences between two variables, to ≤ from + weight, some of them only if a literal (the
// enabler) holds: lags, the order of two tasks, the ramp between two dishes in an oven.
//
//     x ───[ +30, if b ]──▶ y      y ≥ x + 30 if b; as views: −y ≤ −x − 30, and x ≤ y − 30
//
// If b is open and y cannot be that late, b is false. A cycle whose weights leave no room explains
// itself by its enablers alone, without the bounds that it would push for ever.
// Source: A. Schutt, T. Feydy, P. Stuckey, M. Wallace, Solving RCPSP/max by lazy clause generation,
// J. Scheduling 16 (2013); T. Feydy, A. Schutt, P. Stuckey, Global difference constraint
// propagation for finite domain solvers (2008).
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/planner/engine/trail.h"

namespace suppertide::engine {

class Edges
{
public:
    /// to ≤ from + weight, both ways round.
    struct Half
    {
        View from = 0;
        View to = 0;
        Bound weight = 0;
        std::optional<Literal> enabler;
    };

    void grow(std::size_t views);
    /// variable `to` ≥ variable `from` + least.
    void add(Variable from, Variable to, Bound least, std::optional<Literal> enabler);
    [[nodiscard]] const std::vector<Half>& halves() const { return halves_; }
    /// The half with what decides at a glance that it does nothing.
    struct Arc
    {
        View to = 0;
        Bound weight = 0;
        std::uint32_t half = 0;
        bool mayBeOff = false; // it has an enabler
        Literal enabler;
    };
    [[nodiscard]] const std::vector<Arc>& outOf(View view) const { return out_[view]; }
    [[nodiscard]] const std::vector<std::uint32_t>& enabledBy(View view) const
    {
        return enabled_[view];
    }
    /// What makes "to of the half ≤ bound" true by this edge.
    void explain(std::uint32_t half, Bound bound, Literals& because) const;
    /// If the newest event closes a cycle of edges: the enablers of the cycle.
    [[nodiscard]] std::optional<Literals> cycleAt(const Trail& trail, EventIndex newest) const;

private:
    void addHalf(const Half& half);

    std::vector<Half> halves_;
    std::vector<std::vector<Arc>> out_;               // by view
    std::vector<std::vector<std::uint32_t>> enabled_; // by the view of the enabler
};

} // namespace suppertide::engine
