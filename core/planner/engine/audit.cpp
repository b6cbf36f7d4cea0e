#include "core/planner/engine/audit.h"

#include <algorithm>

#include "core/base/contracts.h"

namespace suppertide::engine {

namespace {

#ifdef SUPPERTIDE_ASSERT_EXPLANATIONS
constexpr bool onFromTheStart = true;
#else
constexpr bool onFromTheStart = false;
#endif

bool holdsIn(const std::vector<Bound>& solution, Literal literal)
{
    const Bound value = solution[literal.variable().index];
    return ((literal.view & 1U) == 0 ? value : -value) <= literal.bound;
}

bool failsThroughout(const Trail& trail, std::span<const Literal> literals)
{
    return std::all_of(literals.begin(), literals.end(),
                       [&](Literal literal) { return trail.fails(literal); });
}

} // namespace

Audit::Audit() : on_(onFromTheStart) {}

void Audit::explanation(const Trail& trail, EventIndex before, Literal implied,
                        std::span<const Literal> because) const
{
    for (const Literal literal : because) {
        ensures(trail.holds(literal), "an explanation holds");
        ensures(trail.madeTrue(literal) < before,
                "an explanation is earlier than what it explains");
    }
    for (const std::vector<Bound>& solution : known_) {
        ensures(holdsIn(solution, implied) ||
                    std::any_of(because.begin(), because.end(),
                                [&](Literal literal) { return !holdsIn(solution, literal); }),
                "an explanation rules out no solution");
    }
}

void Audit::conflict(const Trail& trail, const Literals& conflict) const
{
    for (const Literal literal : conflict) {
        ensures(trail.holds(literal), "a conflict holds");
    }
    for (const std::vector<Bound>& solution : known_) {
        ensures(std::any_of(conflict.begin(), conflict.end(),
                            [&](Literal literal) { return !holdsIn(solution, literal); }),
                "a conflict rules out no solution");
    }
}

void Audit::learnt(const Trail& trail, const Literals& clause) const
{
    ensures(failsThroughout(trail, clause), "what is learnt fails at the conflict");
    for (const std::vector<Bound>& solution : known_) {
        ensures(std::any_of(clause.begin(), clause.end(),
                            [&](Literal literal) { return holdsIn(solution, literal); }),
                "what is learnt rules out no solution");
    }
}

void Audit::wentBack(const Trail& trail, const Literals& clause) const
{
    ensures(!trail.fails(clause[0]) && !trail.holds(clause[0]),
            "the first literal learnt is open once the engine has gone back");
    ensures(failsThroughout(trail, std::span(clause).subspan(1)),
            "the other literals learnt still fail");
}

} // namespace suppertide::engine
