// LinearPropagator: a weighted sum of views is at most a limit. The cost of a plan is one such sum,
// with the cost's own variable in it.
//
//     2·x + 3·y ≤ 20, x ≥ 4  →  y ≤ 4, because x ≥ 4; as y ≤ 4 follows from x ≥ 3 too,
//                                       x ≥ 3 is the explanation
// Source: Ohrimenko, Stuckey, Codish 2009, section 3.3; the loosened explanation as described in
// T. Feydy, P. Stuckey, Lazy clause generation reengineered (2009).
#pragma once

#include <vector>

#include "core/planner/engine/engine.h"

namespace suppertide::engine {

struct WeightedView
{
    View view = 0;
    Bound weight = 1; // > 0
};

class LinearPropagator : public Propagator
{
public:
    LinearPropagator(std::vector<WeightedView> terms, std::int64_t most, const Trail& trail);
    static void post(Engine& engine, std::vector<WeightedView> terms, std::int64_t most);

    bool propagate(Engine& engine) override;
    [[nodiscard]] int order() const override { return 2; }
    void explain(const Trail& trail, EventIndex event, Literal needed,
                 Literals& because) const override;

private:
    /// Why the terms but `without` amount to so much; `spare` of it need not be explained.
    void explainSum(const Trail& trail, EventIndex before, View without, std::int64_t spare,
                    Literals& because) const;
    [[nodiscard]] std::int64_t leastSum(const Trail& trail, EventIndex before) const;

    std::vector<WeightedView> terms_;
    std::vector<Bound> floor_; // what each view is at least at level 0
    std::int64_t most_;
};

} // namespace suppertide::engine
