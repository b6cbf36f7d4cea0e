#include "core/planner/engine/session_starts.h"

#include <algorithm>
#include <memory>
#include <utility>

namespace suppertide::engine {

namespace {

/// Of two tasks that start together the one named first comes first: by so much more must the other
/// start later to come after `one`.
Bound laterBy(std::size_t one, std::size_t other)
{
    return other < one ? 1 : 0;
}

} // namespace

SessionStartsPropagator::SessionStartsPropagator(std::vector<CooksJob> jobs, std::int64_t gap)
    : jobs_(std::move(jobs)), gap_(static_cast<Bound>(gap)), blockers_(jobs_.size())
{}

void SessionStartsPropagator::post(Engine& engine, std::vector<CooksJob> jobs, std::int64_t gap)
{
    std::vector<View> views;
    for (const CooksJob& job : jobs) {
        views.insert(views.end(), {job.from.variable.plus(), job.from.variable.minus(),
                                   job.to.variable.plus(), job.to.variable.minus(), job.mine.view,
                                   opposite(job.mine.view), opposite(job.begins.view)});
    }
    std::ranges::sort(views);
    views.erase(std::unique(views.begin(), views.end()), views.end());
    engine.add(std::make_unique<SessionStartsPropagator>(std::move(jobs), gap), views);
}

/// Whether the cook may still do `from` before the job, and until shortly before it.
bool SessionStartsPropagator::mayGoOn(const Trail& trail, std::size_t job, std::size_t from) const
{
    const CooksJob& other = jobs_[from];
    return trail.least(other.from) < trail.most(jobs_[job].from) + laterBy(job, from) &&
           trail.most(other.to) >= trail.least(jobs_[job].from) - gap_ && !trail.fails(other.mine);
}

std::size_t SessionStartsPropagator::nextBlocker(const Trail& trail, std::size_t job,
                                                 std::size_t butNot) const
{
    for (std::size_t from = 0; from < jobs_.size(); ++from) {
        if (from != job && from != butNot && mayGoOn(trail, job, from)) {
            return from;
        }
    }
    return none;
}

void SessionStartsPropagator::lookForBlockers(const Trail& trail, std::size_t job, bool forTwo)
{
    auto& [one, other] = blockers_[job];
    const auto isGone = [&](std::size_t from) {
        return from == none || !mayGoOn(trail, job, from);
    };
    if (isGone(one)) {
        std::swap(one, other);
        if (isGone(one)) {
            one = nextBlocker(trail, job, none);
        }
        other = none;
    }
    if (one != none && forTwo && isGone(other)) {
        other = nextBlocker(trail, job, one);
    }
}

/// Why the job goes on from none, with one left out of account: for each what always holds, if
/// anything does.
Literals SessionStartsPropagator::whyNone(const Trail& trail, std::size_t job,
                                          std::size_t butFor) const
{
    const Bound least = trail.least(jobs_[job].from);
    const Bound most = trail.most(jobs_[job].from);
    Literals because{atLeast(jobs_[job].from, least), atMost(jobs_[job].from, most)};
    for (std::size_t from = 0; from < jobs_.size(); ++from) {
        if (from == job || from == butFor) {
            continue;
        }
        const CooksJob& other = jobs_[from];
        const Literal ended = atMost(other.to, least - gap_ - 1);
        const Literal later = atLeast(other.from, most + laterBy(job, from));
        const auto isAlways = [&](Literal literal) {
            return trail.mostAlways(literal.view) <= literal.bound;
        };
        if (isAlways(ended) || isAlways(later) || isAlways(~other.mine)) {
            continue;
        }
        because.push_back(trail.holds(ended) ? ended : trail.holds(later) ? later : ~other.mine);
    }
    return because;
}

/// If the cook does it, a session begins with it.
bool SessionStartsPropagator::begin(Engine& engine, std::size_t job) const
{
    const Trail& trail = engine.trail();
    const auto& [from, to, mine, begins] = jobs_[job];
    if (!trail.holds(mine) && !trail.fails(begins)) {
        return true;
    }
    Literals because = whyNone(trail, job, none);
    if (trail.holds(mine)) {
        because.push_back(mine);
        return engine.imply(begins, because);
    }
    because.push_back(~begins);
    return engine.imply(~mine, because);
}

/// The job begins no session, so it goes on from the only one that is left.
bool SessionStartsPropagator::goOn(Engine& engine, std::size_t job, std::size_t from) const
{
    const Trail& trail = engine.trail();
    const CooksJob& other = jobs_[from];
    const Literal earlier =
        atMost(other.from, trail.most(jobs_[job].from) + laterBy(job, from) - 1);
    const Literal until = atLeast(other.to, trail.least(jobs_[job].from) - gap_);
    if (trail.holds(other.mine) && trail.holds(earlier) && trail.holds(until)) {
        return true;
    }
    Literals because = whyNone(trail, job, from);
    because.push_back(jobs_[job].mine);
    because.push_back(~jobs_[job].begins);
    return (trail.holds(other.mine) || engine.imply(other.mine, because)) &&
           (trail.holds(earlier) || engine.imply(earlier, because)) &&
           (trail.holds(until) || engine.imply(until, because));
}

bool SessionStartsPropagator::propagate(Engine& engine)
{
    const Trail& trail = engine.trail();
    for (std::size_t job = 0; job < jobs_.size(); ++job) {
        if (trail.fails(jobs_[job].mine) || trail.holds(jobs_[job].begins)) {
            continue;
        }
        const bool goesOn = trail.holds(jobs_[job].mine) && trail.fails(jobs_[job].begins);
        lookForBlockers(trail, job, goesOn);
        const auto& [one, other] = blockers_[job];
        if (one == none) {
            if (!begin(engine, job)) {
                return false;
            }
        } else if (goesOn && other == none && !goOn(engine, job, one)) {
            return false;
        }
    }
    return true;
}

} // namespace suppertide::engine
