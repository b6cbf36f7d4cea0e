// Audit: looks at everything that the engine explains and learns. An explanation holds, and held
// before what it explains; a conflict holds; of a learnt clause every literal fails at the
// conflict, and exactly the first is open once the engine has gone back. Solutions that are known
// may be ruled out by none of these. A defect throws ContractViolation.
//
// Off, but for engines that ask for it, and all of them in a build with
// SUPPERTIDE_ASSERT_EXPLANATIONS. The known solutions as in N. Eén, N. Sörensson, MiniSat's debug
// builds: a clause that a known solution breaks points at the step that went wrong.
#pragma once

#include <span>
#include <vector>

#include "core/planner/engine/trail.h"

namespace suppertide::engine {

class Audit
{
public:
    Audit();
    void begin() { on_ = true; }
    [[nodiscard]] bool isOn() const { return on_; }
    /// A value for each variable; all that has been added to the engine is kept.
    void know(std::vector<std::vector<Bound>> solutions) { known_ = std::move(solutions); }

    /// `implied` follows from `because`, which became true before the event.
    void explanation(const Trail& trail, EventIndex before, Literal implied,
                     std::span<const Literal> because) const;
    void conflict(const Trail& trail, const Literals& conflict) const;
    void learnt(const Trail& trail, const Literals& clause) const;
    void wentBack(const Trail& trail, const Literals& clause) const;

private:
    bool on_;
    std::vector<std::vector<Bound>> known_;
};

} // namespace suppertide::engine
