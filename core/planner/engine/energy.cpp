#include "core/planner/engine/energy.h"

#include <algorithm>
#include <limits>

namespace suppertide::engine {

namespace {

constexpr std::size_t nobody = std::numeric_limits<std::size_t>::max();

} // namespace

void EnergyPropagator::post(Engine& engine, std::vector<EnergyItem> items, Bound capacity,
                            std::int32_t deepest)
{
    std::vector<View> views;
    for (const EnergyItem& item : items) {
        views.push_back(item.start.variable.plus());
        views.push_back(item.start.variable.minus());
    }
    std::sort(views.begin(), views.end());
    views.erase(std::unique(views.begin(), views.end()), views.end());
    engine.add(std::make_unique<EnergyPropagator>(std::move(items), capacity, deepest), views);
}

Bound EnergyPropagator::leastIn(std::size_t index, const Window& window) const
{
    const Bound length = items_[index].length;
    return std::max(
        0, std::min({length, window.until - window.from, bounds_[index].est + length - window.from,
                     window.until - bounds_[index].lst}));
}

/// Why the items need so much in the window; `spare` of it need not be explained.
Literals EnergyPropagator::because(const Window& window, std::size_t without,
                                   std::int64_t spare) const
{
    Literals result;
    for (std::size_t i = 0; i < items_.size(); ++i) {
        const EnergyItem& item = items_[i];
        Bound least = i == without ? 0 : leastIn(i, window);
        const auto less = static_cast<Bound>(std::min<std::int64_t>(least, spare / item.amount));
        least -= less;
        spare -= std::int64_t{less} * item.amount;
        if (least > 0) {
            result.push_back(atLeast(item.start, window.from + least - item.length));
            result.push_back(atMost(item.start, window.until - least));
        }
    }
    return result;
}

/// `room` is what the others leave for the item.
bool EnergyPropagator::pushOut(Engine& engine, const Window& window, std::size_t index,
                               std::int64_t room)
{
    const EnergyItem& item = items_[index];
    const auto most = static_cast<Bound>(room / item.amount);
    if (most >= std::min(item.length, window.until - window.from)) {
        return true;
    }
    // From `first` to `last` the item would be more than `most` minutes in the window.
    const Bound first = window.from - item.length + most + 1;
    const Bound last = window.until - most - 1;
    const std::int64_t spare = std::int64_t{most + 1} * item.amount - room - 1;
    const Trail& trail = engine.trail();
    if (trail.least(item.start) >= first && trail.least(item.start) <= last) {
        Literals why = because(window, index, spare);
        why.push_back(atLeast(item.start, first));
        if (!engine.imply(atLeast(item.start, last + 1), why)) {
            return false;
        }
    }
    if (trail.most(item.start) <= last && trail.most(item.start) >= first) {
        Literals why = because(window, index, spare);
        why.push_back(atMost(item.start, last));
        return engine.imply(atMost(item.start, first - 1), why);
    }
    return true;
}

bool EnergyPropagator::fits(Engine& engine, const Window& window)
{
    const std::int64_t all = std::int64_t{capacity_} * (window.until - window.from);
    std::int64_t needed = 0;
    Bound largest = 0;
    for (std::size_t i = 0; i < items_.size(); ++i) {
        needed += std::int64_t{leastIn(i, window)} * items_[i].amount;
        largest = std::max(largest, items_[i].length * items_[i].amount);
    }
    if (needed > all) {
        return engine.fail(because(window, nobody, needed - all - 1));
    }
    if (all - needed >= largest) {
        return true;
    }
    for (std::size_t i = 0; i < items_.size(); ++i) {
        const bool meets =
            bounds_[i].est < window.until && bounds_[i].lst + items_[i].length > window.from;
        const std::int64_t own = std::int64_t{leastIn(i, window)} * items_[i].amount;
        if (meets && bounds_[i].est != bounds_[i].lst &&
            !pushOut(engine, window, i, all - needed + own)) {
            return false;
        }
    }
    return true;
}

bool EnergyPropagator::propagate(Engine& engine)
{
    if (engine.trail().level() > deepest_) {
        return true;
    }
    std::vector<Bound> begins;
    std::vector<Bound> ends;
    bounds_.clear();
    for (const EnergyItem& item : items_) {
        const Bound est = engine.trail().least(item.start);
        const Bound lst = engine.trail().most(item.start);
        bounds_.push_back({est, lst});
        begins.push_back(est);
        ends.push_back(lst + item.length);
    }
    for (std::vector<Bound>* times : {&begins, &ends}) {
        std::sort(times->begin(), times->end());
        times->erase(std::unique(times->begin(), times->end()), times->end());
    }
    for (const Bound from : begins) {
        for (const Bound until : ends) {
            if (until > from && !fits(engine, {from, until})) {
                return false;
            }
        }
    }
    return true;
}

} // namespace suppertide::engine
