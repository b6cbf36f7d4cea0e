#include "core/planner/engine/search.h"

#include <algorithm>

namespace suppertide::engine {

namespace {

constexpr std::int64_t restartUnit = 50; // conflicts

/// 1 1 2 1 1 2 4 1 1 2 1 1 2 4 8 …, from position 1.
std::int64_t luby(std::int64_t position)
{
    std::int64_t size = 1;
    while (size < position) {
        size = 2 * size + 1;
    }
    while (size != position) {
        size /= 2;
        if (position > size) {
            position -= size;
        }
    }
    return (size + 1) / 2;
}

} // namespace

std::optional<Literal> Search::pick(Effort effort)
{
    const Trail& trail = engine_->trail();
    if (effort.resolvesFirst && first_) {
        if (const auto literal = first_(trail)) {
            return literal;
        }
    }
    if (effort.byActivity) {
        if (const auto named = engine_->activity().next(trail)) {
            if (named->variable().index >= aims_.size()) {
                return named;
            }
            return aims_[named->variable().index] <= named->bound ? *named : ~*named;
        }
    }
    return brancher_(trail);
}

bool Search::assume(const Literals& assumptions)
{
    while (static_cast<std::size_t>(engine_->trail().level()) < assumptions.size()) {
        const Literal next = assumptions[static_cast<std::size_t>(engine_->trail().level())];
        if (engine_->trail().holds(next)) {
            engine_->skipLevel();
            continue;
        }
        if (engine_->trail().fails(next)) {
            core_ = engine_->decisionsAgainst(next);
            core_.push_back(next);
            return false;
        }
        engine_->decide(next);
        return true;
    }
    return true;
}

void Search::keepSolution()
{
    const Trail& trail = engine_->trail();
    values_.resize(trail.views() / 2);
    for (std::uint32_t i = 0; i < values_.size(); ++i) {
        values_[i] = trail.least(Variable{i});
    }
}

void Search::forgetIfMany()
{
    if (engine_->learnt() > mostLearnt_) {
        engine_->backTo(0);
        engine_->forget();
        mostLearnt_ += mostLearnt_ / 20;
    }
}

Search::End Search::run(const Literals& assumptions, Effort effort)
{
    const std::int64_t giveUpAt = engine_->conflicts() + effort.conflicts;
    std::int64_t restartAt = engine_->conflicts() + restartUnit * luby(++restarts_);
    std::int64_t counted = engine_->steps();
    const auto ended = [&](End end) {
        engine_->backTo(0);
        return end;
    };
    engine_->backTo(0);
    core_.clear();
    while (true) {
        const bool holds = engine_->propagate();
        if (!holds && !engine_->learn()) {
            return ended(End::Infeasible);
        }
        const std::int64_t steps = engine_->steps();
        if (!mayGoOn_(steps - counted) || engine_->conflicts() >= giveUpAt) {
            return ended(End::Given);
        }
        counted = steps;
        if (!holds) {
            continue;
        }
        if (engine_->conflicts() >= restartAt) {
            restartAt = engine_->conflicts() + restartUnit * luby(++restarts_);
            engine_->backTo(static_cast<std::int32_t>(
                std::min(assumptions.size(), static_cast<std::size_t>(engine_->trail().level()))));
            forgetIfMany();
        }
        const std::size_t level = static_cast<std::size_t>(engine_->trail().level());
        if (level < assumptions.size()) {
            if (!assume(assumptions)) {
                return ended(End::Infeasible);
            }
            continue;
        }
        if (const auto literal = pick(effort)) {
            engine_->decide(*literal);
            continue;
        }
        keepSolution();
        return ended(End::Found);
    }
}

} // namespace suppertide::engine
