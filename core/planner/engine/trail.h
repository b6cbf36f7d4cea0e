// Trail: the bounds of all variables and how they came about: a stack of events, each of which
// lowered the upper bound of one view for a reason. Going back undoes the events of later levels.
#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

#include "core/planner/engine/literal.h"

namespace suppertide::engine {

/// Why a bound holds. `at` says which clause, edge, or place among the stored explanations.
struct Reason
{
    enum class Kind : std::uint8_t
    {
        Decision, // or an assumption; or, at level 0, a fact
        Clause,
        Stored, // literals kept on the trail
        Edge,   // of the difference edges
        Asked   // the propagator says why when asked
    };
    Kind kind = Kind::Decision;
    std::uint32_t at = 0;
};

using EventIndex = std::int32_t;
inline constexpr EventIndex fromTheStart = -1;

struct Event
{
    View view = 0;
    Bound before = 0; // upper bound of the view
    Bound after = 0;
    EventIndex earlier = fromTheStart; // of the same view
    std::int32_t level = 0;
    Reason reason;
};

class Trail
{
public:
    Variable add(Bound least, Bound most);
    [[nodiscard]] std::size_t views() const { return most_.size(); }

    [[nodiscard]] Bound most(View view) const { return most_[view]; }
    [[nodiscard]] Bound least(View view) const { return -most_[opposite(view)]; }
    [[nodiscard]] Bound most(Variable x) const { return most_[x.plus()]; }
    [[nodiscard]] Bound least(Variable x) const { return -most_[x.minus()]; }
    [[nodiscard]] Bound most(const Term& term) const { return most(term.variable) + term.plus; }
    [[nodiscard]] Bound least(const Term& term) const { return least(term.variable) + term.plus; }
    [[nodiscard]] bool isFixed(Variable x) const { return least(x) == most(x); }
    [[nodiscard]] bool holds(Literal literal) const { return most_[literal.view] <= literal.bound; }
    [[nodiscard]] bool fails(Literal literal) const { return holds(~literal); }
    [[nodiscard]] bool holdsAll(const Literals& literals) const
    {
        return std::ranges::all_of(literals, [&](Literal literal) { return holds(literal); });
    }

    /// The upper bound that the view has whatever is decided.
    [[nodiscard]] Bound mostAlways(View view) const;

    /// Lowers the bound of the literal's view, which must be above it.
    void push(Literal literal, Reason reason);
    /// Keeps an explanation as long as the current level lasts.
    Reason store(const Literals& because);
    /// The literals kept at `at` are those from first up to last.
    [[nodiscard]] const Literal* storedBegin(std::uint32_t at) const { return &stored_[at] + 1; }
    [[nodiscard]] std::size_t storedCount(std::uint32_t at) const
    {
        return static_cast<std::size_t>(stored_[at].bound);
    }

    [[nodiscard]] std::int32_t level() const { return static_cast<std::int32_t>(marks_.size()); }
    void openLevel() { marks_.push_back({events_.size(), stored_.size()}); }
    void backTo(std::int32_t level);

    /// Events and literals kept.
    [[nodiscard]] std::size_t size() const { return events_.size() + stored_.size(); }
    [[nodiscard]] const std::vector<Event>& events() const { return events_; }
    /// The event that made a literal true that holds; `fromTheStart` if it always did.
    [[nodiscard]] EventIndex madeTrue(Literal literal) const;
    /// The upper bound of a view just before an event.
    [[nodiscard]] Bound mostBefore(EventIndex event, View view) const;

private:
    struct Mark
    {
        std::size_t events;
        std::size_t stored;
    };
    std::vector<Bound> most_;
    std::vector<EventIndex> last_; // by view
    std::vector<Event> events_;
    Literals stored_; // runs, each led by one whose bound is the number of those that follow
    std::vector<Mark> marks_;
};

} // namespace suppertide::engine
