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
    insert(watches_[fails.view], {fails.bound, clause, blocker});
}

void Clauses::insert(std::vector<Watch>& watches, const Watch& watch)
{
    watches.insert(std::ranges::upper_bound(watches, watch.threshold, {}, &Watch::threshold),
                   watch);
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
    const auto from = std::ranges::lower_bound(watches, trail.most(view), {}, &Watch::threshold);
    const auto to = std::ranges::lower_bound(from, watches.end(), before, {}, &Watch::threshold);
    std::optional<std::uint32_t> conflict;
    auto kept = from;
    moved_.clear();
    for (auto watch = from; watch != to; ++watch) {
        if (conflict || trail.holds(watch->blocker)) {
            *kept++ = *watch;
            continue;
        }
        Clause& clause = clauses_[watch->clause];
        const Literal failed = ~Literal{view, watch->threshold};
        if (clause.literals[0] == failed) {
            std::swap(clause.literals[0], clause.literals[1]);
        }
        const Literal first = clause.literals[0];
        if (trail.holds(first)) {
            *kept = {watch->threshold, watch->clause, first};
            ++kept;
            continue;
        }
        if (rewatch(clause, trail)) {
            moved_.push_back({watch->clause, clause.literals[1], first});
            continue;
        }
        *kept++ = *watch;
        if (trail.fails(first)) {
            conflict = watch->clause;
        } else {
            trail.push(first, {Reason::Kind::Clause, watch->clause});
        }
    }
    watches.erase(kept, to);
    for (const Moved& moved : moved_) {
        watch(moved.clause, moved.to, moved.blocker);
    }
    return conflict;
}

} // namespace suppertide::engine
