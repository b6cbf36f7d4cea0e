// KeptStarts: the plan to stay close to, as far as it can be kept: all starts and options of it are
// assumed; where that cannot be, a core says which of them clash, and those are let go. What is
// left is kept by a schedule that moves few tasks, found after as many tries as there are cores.
//
//     pin      salad at 17:40
//     kept     soup 17:10   salad 17:20   bread 17:35   roast 16:00
//     core                  salad         bread          both let go, the others stay
#pragma once

#include <vector>

#include "core/planner/exact/model.h"

namespace suppertide::exact {

/// Whether moving a task costs more than a session or anything that ovens cost once: so a plan that
/// moves few tasks is one of the best, which else it need not be.
[[nodiscard]] bool isMovingDear(const Costs& costs);

class KeptStarts
{
public:
    /// Of what the costs of the problem name as the plan before.
    explicit KeptStarts(const Model& model);

    /// All that is kept.
    [[nodiscard]] const Literals& literals() const { return kept_; }
    /// Lets go what is named in a core. False: nothing that is kept is.
    bool letGo(const Literals& core);
    /// Values to aim at: the plan before, and others where it says nothing.
    [[nodiscard]] std::vector<Bound> aims(std::vector<Bound> others) const;

private:
    struct Start
    {
        Variable start;
        Bound at = 0;
    };
    std::vector<Start> starts_;
    Literals kept_;
};

} // namespace suppertide::exact
