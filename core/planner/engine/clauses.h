// Clauses: of each at least one literal holds. Two literals of a clause are watched, those that
// fail last; a watch is kept with the view whose fall makes its literal fail, in order of the
// threshold, so that a fall finds those that it crosses. What was learnt and proves of little use
// is forgotten. Source: N. Eén, N. Sörensson, An extensible SAT-solver (2003), for watches and
// activity; G. Audemard, L. Simon, Predicting learnt clauses quality in modern SAT solvers (2009),
// for LBD.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/planner/engine/trail.h"

namespace suppertide::engine {

class Clauses
{
public:
    struct Clause
    {
        Literals literals; // the two watched first; the one that is implied, if any, very first
        double activity = 0;
        std::int32_t levels = 0; // different levels when learnt (LBD)
        bool learnt = false;
        bool gone = false;
    };

    void grow(std::size_t views) { watches_.resize(views); }
    /// At least two literals; the first two are watched.
    std::uint32_t add(Literals literals, bool learnt, std::int32_t levels);
    [[nodiscard]] const Clause& at(std::uint32_t index) const { return clauses_[index]; }
    void bump(std::uint32_t index);
    void decay() { increment_ /= 0.999; }
    [[nodiscard]] std::size_t learnt() const { return learnt_; }
    /// Forgets half of the learnt clauses; only at level 0, with no clause the reason of anything
    /// above it.
    void forget();

    /// Looks at the clauses watched by a view whose bound fell from `before`. Absent: no conflict;
    /// else the clause of which no literal can hold.
    [[nodiscard]] std::optional<std::uint32_t> propagate(Trail& trail, View view, Bound before);

private:
    struct Watch
    {
        Bound threshold; // the watched literal fails once the view's bound is at most this
        std::uint32_t clause;
        Literal blocker; // some other literal; if it holds, there is nothing to do
    };
    /// A clause gets another watch, once those of the view have been looked at.
    struct Moved
    {
        std::uint32_t clause;
        Literal to;
        Literal blocker;
    };
    void watch(std::uint32_t clause, Literal literal, Literal blocker);
    static void insert(std::vector<Watch>& watches, const Watch& watch);
    bool rewatch(Clause& clause, const Trail& trail);

    std::vector<Clause> clauses_;
    std::vector<std::uint32_t> free_;
    std::vector<std::vector<Watch>> watches_; // by view, in order of threshold
    std::vector<Moved> moved_;
    double increment_ = 1;
    std::size_t learnt_ = 0;
};

} // namespace suppertide::engine
