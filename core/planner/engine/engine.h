// Engine: variables, clauses, difference edges and propagators, brought to a fixed point; and what
// a conflict teaches. It knows nothing about scheduling, nor how to search (search.h).
// Source: O. Ohrimenko, P. Stuckey, M. Codish, Propagation via lazy clause generation (2009).
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <new>
#include <optional>
#include <utility>
#include <vector>

#include "core/planner/engine/activity.h"
#include "core/planner/engine/audit.h"
#include "core/planner/engine/clauses.h"
#include "core/planner/engine/edges.h"
#include "core/planner/engine/propagator.h"
#include "core/planner/engine/trail.h"

namespace suppertide::engine {

/// What the engine keeps has outgrown its limit: the search is over, and proves nothing.
struct OutOfRoom : std::bad_alloc
{
    [[nodiscard]] const char* what() const noexcept override
    {
        return "the engine may not keep more";
    }
};

class Engine
{
public:
    Variable newVariable(Bound least, Bound most);
    Variable newBoolean() { return newVariable(0, 1); }

    /// All of these at level 0. A clause of no literal that can hold makes the whole infeasible.
    void addClause(Literals literals);
    void addFact(Literal literal) { addClause({literal}); }
    /// to ≥ from + least, if the enabler holds.
    void addEdge(const Term& from, const Term& to, Bound least,
                 std::optional<Literal> enabler = std::nullopt);
    template <typename P>
    P& add(std::unique_ptr<P> propagator, const std::vector<View>& listensTo)
    {
        P& result = *propagator;
        adopt(std::move(propagator), listensTo);
        return result;
    }

    /// From now on the propagator, which the engine has, is told of going back.
    void tellOfGoingBack(Propagator& propagator) { told_.push_back(&propagator); }

    [[nodiscard]] const Trail& trail() const { return trail_; }
    [[nodiscard]] bool isInfeasible() const { return infeasible_; }
    [[nodiscard]] std::int64_t steps() const { return steps_; }
    [[nodiscard]] std::int64_t conflicts() const { return conflicts_; }
    [[nodiscard]] const Edges& edges() const { return edges_; }
    [[nodiscard]] Activity& activity() { return activity_; }
    [[nodiscard]] std::size_t learnt() const { return clauses_.learnt(); }

    /// Events and literals kept at once, of 8 to 36 bytes each; beyond it OutOfRoom is thrown.
    void limitRoom(std::size_t most) { room_ = most; }
    /// From now on every explanation and all that is learnt is looked at.
    Audit& audit()
    {
        audit_.begin();
        return audit_;
    }

    /// For propagators. False: it cannot hold, a conflict.
    bool imply(Literal literal, const Literals& because);
    /// The same, explained by the propagator if it is asked. The literal must not fail.
    void implyLater(Literal literal, const Propagator& propagator);
    /// What holds and yet cannot.
    bool fail(Literals because);
    /// A clause that holds always and took long to find: to be added once the search pauses.
    void note(Literals clause) { noted_.push_back(std::move(clause)); }

    /// For the search.
    [[nodiscard]] bool propagate();
    void decide(Literal literal);
    /// A level without a decision.
    void skipLevel() { trail_.openLevel(); }
    void backTo(std::int32_t level);
    /// Learns from the conflict that `propagate` met: goes back as far as it must and implies what
    /// was learnt. False: infeasible whatever is decided.
    [[nodiscard]] bool learn();
    /// The decisions (all levels) that make a literal fail.
    [[nodiscard]] Literals decisionsAgainst(Literal literal) const;
    void forget() { clauses_.forget(); }
    /// Those that propagators have noted since this was asked for last.
    [[nodiscard]] std::vector<Literals> takeNoted() { return std::exchange(noted_, {}); }

    /// What an event's literal, weakened to `needed`, follows from.
    void explain(EventIndex event, Literal needed, Literals& because) const;

private:
    friend class Analysis;
    void adopt(std::unique_ptr<Propagator> propagator, const std::vector<View>& listensTo);
    void explainFrom(EventIndex event, Literal needed, Literals& because) const;
    bool push(Literal literal, Reason reason);
    bool pushEdge(std::uint32_t half);
    bool followEdge(std::uint32_t half);
    bool takeIn(EventIndex event);
    bool runPropagators();
    void clearQueue();
    void auditEvent(EventIndex event) const;

    Trail trail_;
    Clauses clauses_;
    Edges edges_;
    Activity activity_;
    std::vector<std::unique_ptr<Propagator>> propagators_;
    std::vector<std::vector<std::uint32_t>> listeners_; // by view
    std::vector<Propagator*> told_;
    static constexpr std::size_t orders = 3;
    std::array<std::vector<std::uint32_t>, orders> queue_;
    std::vector<bool> queued_;
    std::size_t next_ = 0; // event to take in
    Literals conflict_;
    std::vector<Literals> noted_;
    std::size_t edgePushes_ = 0; // since the last fixed point
    std::size_t room_ = 20'000'000;
    std::int64_t steps_ = 0;
    std::int64_t conflicts_ = 0;
    bool infeasible_ = false;
    Audit audit_;
    bool fresh_ = true; // propagators have yet to run for the first time
};

} // namespace suppertide::engine
