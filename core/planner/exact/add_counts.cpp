#include <algorithm>

#include "core/planner/engine/energy.h"
#include "core/planner/engine/timetable.h"
#include "core/planner/exact/pairs.h"
#include "core/planner/exact/parts.h"

namespace suppertide::exact {

namespace {

/// Amounts are cut to this many; larger problems are left to others.
constexpr std::int64_t mostAmount = 1'000'000;

/// With more items the windows are too many.
constexpr std::size_t mostForEnergy = 60;
/// Level 1 assumes a limit of the cost.
constexpr std::int32_t deepestForEnergy = 1;

void addEnergy(Model& model, const std::vector<engine::TimetableItem>& items, Bound capacity)
{
    std::vector<engine::EnergyItem> sure;
    for (const engine::TimetableItem& item : items) {
        const bool fixed = item.start.variable == item.end.variable;
        const Bound length = item.end.plus - item.start.plus;
        if (fixed && length > 0 && item.amount <= capacity && model.isAlways(*item.present)) {
            sure.push_back({item.start, length, item.amount});
        }
    }
    if (sure.size() > 2 && sure.size() <= mostForEnergy) {
        engine::EnergyPropagator::post(model.engine(), std::move(sure), capacity, deepestForEnergy);
    }
}

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
        addEnergy(model, here, static_cast<Bound>(capacity));
        engine::TimetablePropagator::post(model.engine(), std::move(here),
                                          static_cast<Bound>(capacity));
    }
}

} // namespace suppertide::exact
