#include "core/planner/engine/clauses.h"

#include <algorithm>
#include <utility>

namespace suppertide::engine {

namespace {

constexpr double rescaleAbove = 1e20;
constexpr std::int32_t keptAlways = 2; // levels of a clause that is never forgotten

} // namespace

void Clauses::watch(std::uint32_t clause, Literal literal, Literal blocker)
{
    const Literal fails = ~literal;
    watches_[fails.view].push_back({fails.bound, clause, blocker});
}

std::uint32_t Clauses::add(Literals literals, bool learnt, std::int32_t levels)
{
    std::uint32_t index = 0;
    if (free_.empty()) {
        index = static_cast<std::uint32_t>(clauses_.size());
        clauses_.emplace_back();
    } else {
        index = free_.back();
        free_.pop_back();
    }
    Clause& clause = clauses_[index];
    clause = {std::move(literals), learnt ? increment_ : 0, levels, learnt, false};
    learnt_ += learnt ? 1 : 0;
    watch(index, clause.literals[0], clause.literals[1]);
    watch(index, clause.literals[1], clause.literals[0]);
    return index;
}

void Clauses::bump(std::uint32_t index)
{
    Clause& clause = clauses_[index];
    if (!clause.learnt) {
        return;
    }
    clause.activity += increment_;
    if (clause.activity > rescaleAbove) {
        for (Clause& other : clauses_) {
            other.activity /= rescaleAbove;
        }
        increment_ /= rescaleAbove;
    }
}

void Clauses::forget()
{
    std::vector<std::uint32_t> candidates;
    for (std::uint32_t i = 0; i < clauses_.size(); ++i) {
        const Clause& clause = clauses_[i];
        if (clause.learnt && !clause.gone && clause.levels > keptAlways &&
            clause.literals.size() > 2) {
            candidates.push_back(i);
        }
    }
    std::sort(candidates.begin(), candidates.end(), [&](std::uint32_t a, std::uint32_t b) {
        return std::pair(clauses_[a].activity, a) < std::pair(clauses_[b].activity, b);
    });
    candidates.resize(candidates.size() / 2);
    for (const std::uint32_t index : candidates) {
        clauses_[index].gone = true;
        clauses_[index].literals.clear();
    }
    for (std::vector<Watch>& watches : watches_) {
        std::erase_if(watches, [&](const Watch& watch) { return clauses_[watch.clause].gone; });
    }
    learnt_ -= candidates.size();
    free_.insert(free_.end(), candidates.begin(), candidates.end());
}

/// Finds another literal than the second to watch.
bool Clauses::rewatch(Clause& clause, const Trail& trail)
{
    for (std::size_t i = 2; i < clause.literals.size(); ++i) {
        if (!trail.fails(clause.literals[i])) {
            std::swap(clause.literals[1], clause.literals[i]);
            return true;
        }
    }
    return false;
}

std::optional<std::uint32_t> Clauses::propagate(Trail& trail, View view, Bound before)
{
    std::vector<Watch>& watches = watches_[view];
    const Bound now = trail.most(view);
    std::optional<std::uint32_t> conflict;
    std::size_t kept = 0;
    for (std::size_t i = 0; i < watches.size(); ++i) {
        const Watch watch = watches[i];
        watches[kept++] = watch;
        if (conflict || watch.threshold < now || watch.threshold >= before ||
            trail.holds(watch.blocker)) {
            continue;
        }
        Clause& clause = clauses_[watch.clause];
        const Literal failed = ~Literal{view, watch.threshold};
        if (clause.literals[0] == failed) {
            std::swap(clause.literals[0], clause.literals[1]);
        }
        const Literal first = clause.literals[0];
        if (trail.holds(first)) {
            watches[kept - 1].blocker = first;
        } else if (rewatch(clause, trail)) {
            --kept;
            this->watch(watch.clause, clause.literals[1], first);
        } else if (trail.fails(first)) {
            conflict = watch.clause;
        } else {
            trail.push(first, {Reason::Kind::Clause, watch.clause});
        }
    }
    watches.resize(kept);
    return conflict;
}

} // namespace suppertide::engine
