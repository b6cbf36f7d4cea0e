#include "core/planner/engine/engine.h"

#include <algorithm>
#include <utility>

#include "core/base/contracts.h"
#include "core/planner/engine/analysis.h"

namespace suppertide::engine {

Variable Engine::newVariable(Bound least, Bound most)
{
    const Variable result = trail_.add(least, most);
    clauses_.grow(trail_.views());
    edges_.grow(trail_.views());
    listeners_.resize(trail_.views());
    infeasible_ = infeasible_ || least > most;
    return result;
}

void Engine::addClause(Literals literals)
{
    expects(trail_.level() == 0, "clauses are added before the search");
    std::sort(literals.begin(), literals.end());
    literals.erase(std::unique(literals.begin(), literals.end()), literals.end());
    if (std::any_of(literals.begin(), literals.end(),
                    [&](Literal literal) { return trail_.holds(literal); })) {
        return;
    }
    std::erase_if(literals, [&](Literal literal) { return trail_.fails(literal); });
    if (literals.empty()) {
        infeasible_ = true;
    } else if (literals.size() == 1) {
        trail_.push(literals[0], {});
    } else {
        clauses_.add(std::move(literals), false, 0);
    }
}

void Engine::addEdge(const Term& from, const Term& to, Bound least, std::optional<Literal> enabler)
{
    expects(trail_.level() == 0, "edges are added before the search");
    const Bound weight = least + from.plus - to.plus;
    if (enabler && trail_.fails(*enabler)) {
        return;
    }
    if (enabler && trail_.holds(*enabler)) {
        enabler.reset();
    }
    if (from.variable == to.variable) {
        if (weight > 0) {
            addClause(enabler ? Literals{~*enabler} : Literals{});
        }
        return;
    }
    edges_.add(from.variable, to.variable, weight, enabler);
    const auto newest = static_cast<std::uint32_t>(edges_.halves().size() - 1);
    infeasible_ = infeasible_ || !followEdge(newest - 1) || !followEdge(newest);
}

void Engine::adopt(std::unique_ptr<Propagator> propagator, const std::vector<View>& listensTo)
{
    const auto index = static_cast<std::uint32_t>(propagators_.size());
    propagator->index_ = index;
    for (const View view : listensTo) {
        if (listeners_[view].empty() || listeners_[view].back() != index) {
            listeners_[view].push_back(index);
        }
    }
    queue_[static_cast<std::size_t>(propagator->order())].push_back(index);
    queued_.push_back(true);
    propagators_.push_back(std::move(propagator));
}

bool Engine::push(Literal literal, Reason reason)
{
    ++steps_;
    if (trail_.size() >= room_) {
        throw OutOfRoom();
    }
    trail_.push(literal, reason);
    return true;
}

bool Engine::imply(Literal literal, const Literals& because)
{
    if (trail_.holds(literal)) {
        return true;
    }
    if (audit_.isOn()) {
        audit_.explanation(trail_, static_cast<EventIndex>(trail_.events().size()), literal,
                           because);
    }
    if (trail_.fails(literal)) {
        conflict_ = because;
        conflict_.push_back(~literal);
        return false;
    }
    return push(literal, trail_.level() == 0 ? Reason{} : trail_.store(because));
}

void Engine::implyLater(Literal literal, const Propagator& propagator)
{
    if (!trail_.holds(literal)) {
        push(literal, {Reason::Kind::Asked, propagator.index_});
    }
}

bool Engine::fail(Literals because)
{
    conflict_ = std::move(because);
    return false;
}

bool Engine::pushEdge(std::uint32_t half)
{
    const Edges::Half& edge = edges_.halves()[half];
    const Literal literal{edge.to, trail_.most(edge.from) + edge.weight};
    if (trail_.holds(literal)) {
        return true;
    }
    if (trail_.fails(literal)) {
        conflict_.clear();
        edges_.explain(half, literal.bound, conflict_);
        conflict_.push_back(~literal);
        return false;
    }
    push(literal, {Reason::Kind::Edge, half});
    if (++edgePushes_ > trail_.views()) {
        const auto newest = static_cast<EventIndex>(trail_.events().size() - 1);
        if (auto cycle = edges_.cycleAt(trail_, newest)) {
            return fail(*std::move(cycle));
        }
    }
    return true;
}

/// The edge pushes if it is enabled, and rules its enabler out if it cannot hold.
bool Engine::followEdge(std::uint32_t half)
{
    const Edges::Half& edge = edges_.halves()[half];
    if (!edge.enabler || trail_.holds(*edge.enabler)) {
        return pushEdge(half);
    }
    if (trail_.fails(*edge.enabler)) {
        return true;
    }
    const Literal literal{edge.to, trail_.most(edge.from) + edge.weight};
    if (!trail_.fails(literal)) {
        return true;
    }
    return imply(~*edge.enabler, {{edge.from, trail_.most(edge.from)}, ~literal});
}

/// Every event is explained, not only those of which a conflict asks why.
void Engine::auditEvent(EventIndex index) const
{
    const Event& event = trail_.events()[static_cast<std::size_t>(index)];
    const bool isDecision = event.reason.kind == Reason::Kind::Decision;
    if (isDecision && event.level > 0) {
        return;
    }
    Literals because; // none for what holds whatever is decided
    explainFrom(index, {event.view, event.after}, because);
    audit_.explanation(trail_, index, {event.view, event.after}, because);
}

bool Engine::takeIn(EventIndex index)
{
    if (audit_.isOn()) {
        auditEvent(index);
    }
    const Event event = trail_.events()[static_cast<std::size_t>(index)];
    for (const Edges::Arc& arc : edges_.outOf(event.view)) {
        const Literal pushed{arc.to, event.after + arc.weight};
        const bool idle = trail_.holds(pushed) ||
                          (arc.mayBeOff && !trail_.fails(pushed) && !trail_.holds(arc.enabler));
        if (!idle && !followEdge(arc.half)) {
            return false;
        }
    }
    for (const std::uint32_t half : edges_.enabledBy(event.view)) {
        const Literal enabler = *edges_.halves()[half].enabler;
        if (trail_.holds(enabler) && enabler.bound < event.before && !pushEdge(half)) {
            return false;
        }
    }
    if (const auto clause = clauses_.propagate(trail_, event.view, event.before)) {
        conflict_.clear();
        for (const Literal literal : clauses_.at(*clause).literals) {
            conflict_.push_back(~literal);
        }
        clauses_.bump(*clause);
        return false;
    }
    for (const std::uint32_t listener : listeners_[event.view]) {
        if (!queued_[listener]) {
            queued_[listener] = true;
            queue_[static_cast<std::size_t>(propagators_[listener]->order())].push_back(listener);
        }
    }
    return true;
}

bool Engine::runPropagators()
{
    for (auto& queue : queue_) {
        if (queue.empty()) {
            continue;
        }
        const std::uint32_t index = queue.back();
        queue.pop_back();
        queued_[index] = false;
        ++steps_;
        return propagators_[index]->propagate(*this);
    }
    return true;
}

void Engine::clearQueue()
{
    for (auto& queue : queue_) {
        for (const std::uint32_t index : queue) {
            queued_[index] = false;
        }
        queue.clear();
    }
    next_ = trail_.events().size();
}

bool Engine::propagate()
{
    edgePushes_ = 0;
    if (infeasible_) {
        return fail({});
    }
    const auto isQueued = [](const auto& queue) { return !queue.empty(); };
    while (true) {
        bool holds = true;
        if (next_ < trail_.events().size()) {
            holds = takeIn(static_cast<EventIndex>(next_++));
        } else if (std::any_of(queue_.begin(), queue_.end(), isQueued)) {
            holds = runPropagators();
        } else {
            return true;
        }
        if (!holds) {
            clearQueue();
            return false;
        }
    }
}

void Engine::decide(Literal literal)
{
    trail_.openLevel();
    push(literal, {});
}

void Engine::backTo(std::int32_t level)
{
    if (level < trail_.level()) {
        trail_.backTo(level);
        activity_.reopen(trail_.events().size());
        for (Propagator* propagator : told_) {
            propagator->wentBack(trail_.events().size());
        }
        clearQueue();
    }
}

void Engine::explainFrom(EventIndex index, Literal needed, Literals& because) const
{
    const Event& event = trail_.events()[static_cast<std::size_t>(index)];
    switch (event.reason.kind) {
    case Reason::Kind::Decision:
        return;
    case Reason::Kind::Clause: {
        const Literals& literals = clauses_.at(event.reason.at).literals;
        for (std::size_t i = 1; i < literals.size(); ++i) {
            because.push_back(~literals[i]);
        }
        return;
    }
    case Reason::Kind::Stored: {
        const Literal* first = trail_.storedBegin(event.reason.at);
        because.insert(because.end(), first, first + trail_.storedCount(event.reason.at));
        return;
    }
    case Reason::Kind::Edge:
        edges_.explain(event.reason.at, needed.bound, because);
        return;
    case Reason::Kind::Asked:
        propagators_[event.reason.at]->explain(trail_, index, needed, because);
        return;
    }
}

void Engine::explain(EventIndex index, Literal needed, Literals& because) const
{
    const std::size_t before = because.size();
    explainFrom(index, needed, because);
    if (audit_.isOn()) {
        audit_.explanation(trail_, index, needed, std::span(because).subspan(before));
    }
}

bool Engine::learn()
{
    ++conflicts_;
    if (audit_.isOn()) {
        audit_.conflict(trail_, conflict_);
    }
    Analysis analysis(*this);
    const auto learnt = analysis.learn(conflict_);
    if (!learnt) {
        infeasible_ = true;
        return false;
    }
    if (audit_.isOn()) {
        audit_.learnt(trail_, learnt->literals);
    }
    backTo(learnt->level);
    if (audit_.isOn()) {
        audit_.wentBack(trail_, learnt->literals);
    }
    activity_.decay();
    clauses_.decay();
    const Literal first = learnt->literals[0];
    if (learnt->literals.size() == 1) {
        push(first, {});
        return true;
    }
    const std::uint32_t clause = clauses_.add(learnt->literals, true, learnt->levels);
    push(first, {Reason::Kind::Clause, clause});
    return true;
}

Literals Engine::decisionsAgainst(Literal literal) const
{
    return Analysis::decisionsBehind(*this, ~literal);
}

} // namespace suppertide::engine
