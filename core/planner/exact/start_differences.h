// StartDifferences: by how much one start is after another, as variables of their own. What an oven
// costs follows from how stays lie to each other, not from the time of day; said in these, what is
// learnt of one plan goes for the same one earlier or later.
//
//     gratin ├──────┤   12 min   ├────────┤ tart       whenever both are
#pragma once

#include <cstdint>
#include <vector>

#include "core/planner/engine/engine.h"

namespace suppertide::exact {

class StartDifferences
{
public:
    StartDifferences() = default;
    /// Of each two of the variables; of none, if there are too many of them.
    StartDifferences(engine::Engine& engine, std::vector<engine::Variable> starts);

    /// Whether the difference of these two has a variable, or is a constant.
    [[nodiscard]] bool knows(const engine::Term& from, const engine::Term& to) const;
    /// Of to − from; known ones only.
    [[nodiscard]] engine::Bound least(const engine::Trail& trail, const engine::Term& from,
                                      const engine::Term& to) const;
    [[nodiscard]] engine::Bound most(const engine::Trail& trail, const engine::Term& from,
                                     const engine::Term& to) const;
    /// The same, whatever is decided.
    [[nodiscard]] engine::Bound leastAlways(const engine::Trail& trail, const engine::Term& from,
                                            const engine::Term& to) const;
    [[nodiscard]] engine::Bound mostAlways(const engine::Trail& trail, const engine::Term& from,
                                           const engine::Term& to) const;
    /// Adds the literal that says so, if it is not a constant.
    void sayAtLeast(const engine::Term& from, const engine::Term& to, std::int64_t minutes,
                    engine::Literals& because) const;
    void sayAtMost(const engine::Term& from, const engine::Term& to, std::int64_t minutes,
                   engine::Literals& because) const;

    struct Difference
    {
        engine::Variable variable; // to − from
        engine::Variable from;
        engine::Variable to;
    };
    [[nodiscard]] const std::vector<Difference>& all() const { return all_; }

private:
    /// With more of them they cost the search more than they save.
    static constexpr std::size_t mostStarts = 12;

    /// Whether the variable is of to − from; else it is of from − to.
    [[nodiscard]] bool isForward(const engine::Term& from, const engine::Term& to) const
    {
        return placeOf_[from.variable.index] < placeOf_[to.variable.index];
    }
    [[nodiscard]] engine::Term term(const engine::Term& from, const engine::Term& to) const;

    std::vector<std::int32_t> placeOf_; // by variable; −1: none
    std::size_t count_ = 0;
    std::vector<engine::Variable> between_; // from · count + to, for from < to
    std::vector<Difference> all_;
};

} // namespace suppertide::exact
