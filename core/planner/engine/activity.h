// Activity: which literals to decide next. Literals that occur in conflicts get a name and a
// figure that fades; those with the highest figure are decided first.
// Source: M. Moskewicz et al., Chaff: engineering an efficient SAT solver (2001), for VSIDS.
#pragma once

#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

#include "core/planner/engine/trail.h"

namespace suppertide::engine {

class Activity
{
public:
    /// Names the literal, or its negation, and raises its figure.
    void bump(Literal literal);
    void decay() { increment_ /= 0.85; }
    /// The undecided literal of the highest figure, as "x ≤ bound"; absent: all named are decided.
    [[nodiscard]] std::optional<Literal> next(const Trail& trail);
    /// After going back to a trail of so many events: names that were passed over as decided since
    /// are looked at again.
    void reopen(std::size_t events);

private:
    struct Name
    {
        Literal literal; // of a variable's positive view
        double figure = 0;
        std::int32_t place = -1; // in the heap; −1: not in it
    };
    [[nodiscard]] bool above(std::uint32_t a, std::uint32_t b) const
    {
        return names_[a].figure != names_[b].figure ? names_[a].figure > names_[b].figure : a < b;
    }
    void rise(std::size_t place);
    void sink(std::size_t place);
    void put(std::size_t place, std::uint32_t name);
    void insert(std::uint32_t name);
    void rescale();

    std::unordered_map<std::uint64_t, std::uint32_t> known_;
    std::vector<Name> names_;
    std::vector<std::uint32_t> heap_;
    struct Outside
    {
        std::uint32_t name;
        std::size_t events; // on the trail when it was passed over
    };
    std::vector<Outside> outside_;
    double increment_ = 1;
};

} // namespace suppertide::engine
