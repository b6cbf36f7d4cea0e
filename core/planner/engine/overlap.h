// OverlapPropagator: a variable is at least the minutes that a task shares with a stretch of time
// that ends at a reference point: quiet time before the guests sit down.
//
//     quiet       [========)T          T the reference, `window` long
//     task    [-----)                  start s, `length` long; shared = the part of both
//
// The minutes shared rise and then fall with s − T, so they are at least v exactly while
// v − length − window ≤ s − T ≤ −v, which is what the explanations say.
#pragma once

#include "core/planner/engine/engine.h"

namespace suppertide::engine {

struct Overlap
{
    Variable shared; // at least the minutes shared, if present
    Term start;
    Bound length = 0;
    Term reference;
    Bound window = 0;
    Literal present;
};

class OverlapPropagator : public Propagator
{
public:
    explicit OverlapPropagator(const Overlap& overlap) : overlap_(overlap) {}
    static void post(Engine& engine, const Overlap& overlap);

    bool propagate(Engine& engine) override;

private:
    [[nodiscard]] bool raiseShared(Engine& engine) const;
    [[nodiscard]] bool keepOut(Engine& engine) const;
    [[nodiscard]] bool pushLater(Engine& engine, Bound most, Bound edge) const;
    [[nodiscard]] bool pushEarlier(Engine& engine, Bound most, Bound edge) const;

    Overlap overlap_;
};

} // namespace suppertide::engine
