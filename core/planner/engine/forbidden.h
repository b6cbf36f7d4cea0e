// ForbiddenPropagator: ranges of values that a variable cannot have if a literal holds: starts at
// which a cook would not be free, or would be at table.
//
//     x in  |---####------##########---|   # forbidden; if x ≥ the first # of a range then x is
//                                          behind it
#pragma once

#include <vector>

#include "core/planner/engine/engine.h"

namespace suppertide::engine {

struct ValueRange
{
    Bound first = 0;
    Bound last = 0; // included
};

class ForbiddenPropagator : public Propagator
{
public:
    /// The ranges rise and neither overlap nor touch.
    ForbiddenPropagator(Variable variable, std::vector<ValueRange> ranges, Literal enabler)
        : variable_(variable), ranges_(std::move(ranges)), enabler_(enabler)
    {}
    /// Of ranges in any order, overlapping or not.
    static void post(Engine& engine, Variable variable, std::vector<ValueRange> ranges,
                     Literal enabler);

    bool propagate(Engine& engine) override;

private:
    [[nodiscard]] const ValueRange* rangeOf(Bound value) const;

    Variable variable_;
    std::vector<ValueRange> ranges_;
    Literal enabler_;
};

} // namespace suppertide::engine
