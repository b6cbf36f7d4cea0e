#include "core/planner/exact/start_differences.h"

#include <algorithm>

#include "core/planner/engine/linear.h"

namespace suppertide::exact {

namespace {

using engine::Bound;
using engine::Engine;
using engine::Literals;
using engine::Term;
using engine::Trail;
using engine::Variable;

/// difference = to − from
void tie(Engine& engine, Variable difference, Variable from, Variable to)
{
    engine::LinearPropagator::post(engine,
                                   {{difference.plus(), 1}, {from.plus(), 1}, {to.minus(), 1}}, 0);
    engine::LinearPropagator::post(engine,
                                   {{difference.minus(), 1}, {from.minus(), 1}, {to.plus(), 1}}, 0);
}

} // namespace

StartDifferences::StartDifferences(Engine& engine, std::vector<Variable> starts)
{
    std::ranges::sort(starts, {}, &Variable::index);
    starts.erase(std::unique(starts.begin(), starts.end()), starts.end());
    if (starts.size() > mostStarts) {
        return;
    }
    count_ = starts.size();
    between_.resize(count_ * count_);
    for (std::size_t i = 0; i < count_; ++i) {
        placeOf_.resize(std::max<std::size_t>(placeOf_.size(), starts[i].index + 1), -1);
        placeOf_[starts[i].index] = static_cast<std::int32_t>(i);
    }
    for (std::size_t i = 0; i < count_; ++i) {
        for (std::size_t j = i + 1; j < count_; ++j) {
            const Trail& trail = engine.trail();
            const Bound least = trail.least(starts[j]) - trail.most(starts[i]);
            const Bound most = trail.most(starts[j]) - trail.least(starts[i]);
            const Variable difference = engine.newVariable(least, most);
            tie(engine, difference, starts[i], starts[j]);
            between_[i * count_ + j] = difference;
            all_.push_back({difference, starts[i], starts[j]});
        }
    }
}

bool StartDifferences::knows(const Term& from, const Term& to) const
{
    const auto has = [&](Variable variable) {
        return variable.index < placeOf_.size() && placeOf_[variable.index] >= 0;
    };
    return from.variable == to.variable || (has(from.variable) && has(to.variable));
}

Term StartDifferences::term(const Term& from, const Term& to) const
{
    const auto i = static_cast<std::size_t>(placeOf_[from.variable.index]);
    const auto j = static_cast<std::size_t>(placeOf_[to.variable.index]);
    return isForward(from, to) ? Term{between_[i * count_ + j], to.plus - from.plus}
                               : Term{between_[j * count_ + i], from.plus - to.plus};
}

Bound StartDifferences::least(const Trail& trail, const Term& from, const Term& to) const
{
    if (from.variable == to.variable) {
        return to.plus - from.plus;
    }
    const Term between = term(from, to);
    return isForward(from, to) ? trail.least(between) : -trail.most(between);
}

Bound StartDifferences::most(const Trail& trail, const Term& from, const Term& to) const
{
    return -least(trail, to, from);
}

Bound StartDifferences::leastAlways(const Trail& trail, const Term& from, const Term& to) const
{
    return -mostAlways(trail, to, from);
}

Bound StartDifferences::mostAlways(const Trail& trail, const Term& from, const Term& to) const
{
    if (from.variable == to.variable) {
        return to.plus - from.plus;
    }
    const Term between = term(from, to);
    return isForward(from, to) ? trail.mostAlways(between.variable.plus()) + between.plus
                               : trail.mostAlways(between.variable.minus()) - between.plus;
}

void StartDifferences::sayAtLeast(const Term& from, const Term& to, std::int64_t minutes,
                                  Literals& because) const
{
    if (from.variable == to.variable) {
        return;
    }
    const auto bound = static_cast<Bound>(minutes);
    const Term between = term(from, to);
    because.push_back(isForward(from, to) ? engine::atLeast(between, bound)
                                          : engine::atMost(between, -bound));
}

void StartDifferences::sayAtMost(const Term& from, const Term& to, std::int64_t minutes,
                                 Literals& because) const
{
    sayAtLeast(to, from, -minutes, because);
}

} // namespace suppertide::exact
