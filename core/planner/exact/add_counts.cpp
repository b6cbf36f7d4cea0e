#include <algorithm>

#include "core/planner/engine/timetable.h"
#include "core/planner/exact/pairs.h"
#include "core/planner/exact/parts.h"

namespace suppertide::exact {

namespace {

/// Amounts are cut to this many; larger problems are left to others.
constexpr std::int64_t mostAmount = 1'000'000;

} // namespace

void addCounts(Model& model)
{
    const Problem& problem = model.problem();
    std::vector<std::vector<engine::TimetableItem>> items(problem.counts.size());
    for (const Demand& demand : problem.demands) {
        if (!demand.count || demand.amount == 0) {
            continue;
        }
        const std::int64_t capacity = problem.counts[*demand.count].capacity;
        const std::int64_t amount = std::min(demand.amount, capacity + 1);
        if (amount > mostAmount) {
            model.refuse();
            return;
        }
        const Stretch held =
            model.stretch(demand.from, demand.to, model.selector("demand:" + demand.id));
        if (model.isNever(held.held)) {
            continue;
        }
        items[demand.count->value()].push_back(
            {held.from, held.to, static_cast<Bound>(amount), held.held});
    }
    std::set<std::pair<Variable, Variable>> paired;
    for (const CountIndex count : problem.counts.indices()) {
        auto& here = items[count.value()];
        std::int64_t sum = 0;
        for (const engine::TimetableItem& item : here) {
            sum += item.amount;
        }
        const std::int64_t capacity = problem.counts[count].capacity;
        if (sum <= capacity) {
            continue;
        }
        addPairs(model, here, static_cast<Bound>(capacity), paired);
        engine::TimetablePropagator::post(model.engine(), std::move(here),
                                          static_cast<Bound>(capacity));
    }
}

} // namespace suppertide::exact
