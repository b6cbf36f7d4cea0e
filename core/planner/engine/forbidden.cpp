#include "core/planner/engine/forbidden.h"

#include <algorithm>

namespace suppertide::engine {

void ForbiddenPropagator::post(Engine& engine, Variable variable, std::vector<ValueRange> ranges,
                               Literal enabler)
{
    std::erase_if(ranges, [](const ValueRange& range) { return range.last < range.first; });
    if (ranges.empty() || engine.trail().fails(enabler)) {
        return;
    }
    std::sort(ranges.begin(), ranges.end(),
              [](const ValueRange& a, const ValueRange& b) { return a.first < b.first; });
    std::vector<ValueRange> merged;
    for (const ValueRange& range : ranges) {
        if (!merged.empty() && range.first <= merged.back().last + 1) {
            merged.back().last = std::max(merged.back().last, range.last);
        } else {
            merged.push_back(range);
        }
    }
    engine.add(std::make_unique<ForbiddenPropagator>(variable, std::move(merged), enabler),
               {variable.plus(), variable.minus(), enabler.view});
}

const ValueRange* ForbiddenPropagator::rangeOf(Bound value) const
{
    const auto after = std::upper_bound(
        ranges_.begin(), ranges_.end(), value,
        [](Bound wanted, const ValueRange& range) { return wanted < range.first; });
    if (after == ranges_.begin() || std::prev(after)->last < value) {
        return nullptr;
    }
    return &*std::prev(after);
}

bool ForbiddenPropagator::propagate(Engine& engine)
{
    const Trail& trail = engine.trail();
    if (trail.fails(enabler_)) {
        return true;
    }
    const ValueRange* low = rangeOf(trail.least(variable_));
    const ValueRange* high = rangeOf(trail.most(variable_));
    if (!trail.holds(enabler_)) {
        return low == nullptr || low != high ||
               engine.imply(~enabler_,
                            {atLeast(variable_, low->first), atMost(variable_, low->last)});
    }
    if (low != nullptr && !engine.imply(atLeast(variable_, low->last + 1),
                                        {atLeast(variable_, low->first), enabler_})) {
        return false;
    }
    return high == nullptr || engine.imply(atMost(variable_, high->first - 1),
                                           {atMost(variable_, high->last), enabler_});
}

} // namespace suppertide::engine
