#include <algorithm>
#include <map>

#include "core/planner/engine/timetable.h"
#include "core/planner/exact/parts.h"

namespace suppertide::exact {

namespace {

bool serves(const Demand& demand, UnitIndex index, const PoolUnit& unit)
{
    const bool listed = !demand.units || std::find(demand.units->begin(), demand.units->end(),
                                                   index) != demand.units->end();
    return listed && unit.size >= demand.minSize;
}

/// Units that serve the same demands are alike: intervals of which no more overlap at any time
/// than there are units can always be dealt out among them.
std::vector<std::vector<UnitIndex>> classesOf(const Pool& pool,
                                              const std::vector<const Demand*>& demands)
{
    std::map<std::vector<bool>, std::vector<UnitIndex>> classes;
    for (const UnitIndex unit : pool.units.indices()) {
        std::vector<bool> serving;
        for (const Demand* demand : demands) {
            serving.push_back(serves(*demand, unit, pool.units[unit]));
        }
        classes[serving].push_back(unit);
    }
    std::vector<std::vector<UnitIndex>> result;
    for (auto& [serving, units] : classes) {
        result.push_back(std::move(units));
    }
    return result;
}

/// Exactly one class for what is held.
void choose(Model& model, const Stretch& held, std::vector<Model::UnitClass>& classes)
{
    if (classes.empty()) {
        model.edge(held.to, held.from, 0, held.held);
        return;
    }
    if (classes.size() == 1) {
        classes[0].chosen = held.held;
        return;
    }
    Literals any;
    for (Model::UnitClass& unitClass : classes) {
        unitClass.chosen = engine::isTrue(model.engine().newBoolean());
        model.implies(unitClass.chosen, {held.held});
        for (const Literal other : any) {
            model.engine().addClause({~other, ~unitClass.chosen});
        }
        any.push_back(unitClass.chosen);
    }
    model.implies(held.held, any);
}

} // namespace

void addPools(Model& model)
{
    const Problem& problem = model.problem();
    for (const PoolIndex pool : problem.pools.indices()) {
        std::vector<DemandIndex> indices;
        std::vector<const Demand*> demands;
        for (const DemandIndex index : problem.demands.indices()) {
            if (problem.demands[index].pool == pool) {
                indices.push_back(index);
                demands.push_back(&problem.demands[index]);
            }
        }
        const auto classes = classesOf(problem.pools[pool], demands);
        std::vector<std::vector<engine::TimetableItem>> items(classes.size());
        std::vector<engine::TimetableItem> together;
        for (std::size_t i = 0; i < indices.size(); ++i) {
            const Demand& demand = *demands[i];
            const Stretch held =
                model.stretch(demand.from, demand.to, model.selector("demand:" + demand.id));
            if (model.isNever(held.held)) {
                continue;
            }
            std::vector<Model::UnitClass> mine;
            std::vector<std::size_t> which;
            for (std::size_t c = 0; c < classes.size(); ++c) {
                if (serves(demand, classes[c][0], problem.pools[pool].units[classes[c][0]])) {
                    mine.push_back({classes[c], model.always()});
                    which.push_back(c);
                }
            }
            choose(model, held, mine);
            for (std::size_t c = 0; c < mine.size(); ++c) {
                items[which[c]].push_back({held.from, held.to, 1, mine[c].chosen});
            }
            together.push_back({held.from, held.to, 1, held.held});
            model.units[indices[i]] = std::move(mine);
        }
        for (std::size_t c = 0; c < classes.size(); ++c) {
            if (items[c].size() > classes[c].size()) {
                engine::TimetablePropagator::post(model.engine(), std::move(items[c]),
                                                  static_cast<Bound>(classes[c].size()));
            }
        }
        const std::size_t all = problem.pools[pool].units.size();
        if (classes.size() > 1 && together.size() > all) {
            engine::TimetablePropagator::post(model.engine(), std::move(together),
                                              static_cast<Bound>(all));
        }
    }
}

} // namespace suppertide::exact
