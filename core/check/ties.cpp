#include "core/check/ties.h"

#include <string_view>
#include <unordered_map>

namespace suppertide {

namespace {

/// Every lag or demand under each of the one or two tasks that it names.
template <typename Index, typename Thing>
void tie(IndexedVector<TaskIndex, std::vector<Index>>& ties,
         const IndexedVector<Index, Thing>& things)
{
    for (const Index index : things.indices()) {
        const Thing& thing = things[index];
        ties[thing.from.task].push_back(index);
        if (thing.to.task != thing.from.task) {
            ties[thing.to.task].push_back(index);
        }
    }
}

} // namespace

Ties::Ties(const Problem& problem)
    : lagsOf(problem.tasks.size()), demandsOf(problem.tasks.size()),
      ovenDemandsOf(problem.tasks.size()), seatedAfter(problem.tasks.size()),
      demandsOfCount(problem.counts.size()), demandsOfPool(problem.pools.size()),
      sameGroup(problem.ovenDemands.size())
{
    tie(lagsOf, problem.lags);
    tie(demandsOf, problem.demands);
    tie(ovenDemandsOf, problem.ovenDemands);
    for (const CookIndex cook : problem.cooks.indices()) {
        for (const TableAfter& after : problem.cooks[cook].tableAfter) {
            seatedAfter[after.event].push_back(cook);
        }
    }
    for (const DemandIndex demand : problem.demands.indices()) {
        if (const auto& count = problem.demands[demand].count) {
            demandsOfCount[*count].push_back(demand);
        }
        if (const auto& pool = problem.demands[demand].pool) {
            demandsOfPool[*pool].push_back(demand);
        }
    }
    std::unordered_map<std::string_view, std::vector<OvenDemandIndex>> groups;
    for (const OvenDemandIndex demand : problem.ovenDemands.indices()) {
        if (const auto& group = problem.ovenDemands[demand].group) {
            groups[*group].push_back(demand);
        }
    }
    for (const auto& [name, members] : groups) {
        for (const OvenDemandIndex member : members) {
            sameGroup[member] = members;
        }
    }
    for (const PoolIndex pool : problem.pools.indices()) {
        firstUnit.push_back(units.size());
        for (const UnitIndex unit : problem.pools[pool].units.indices()) {
            units.push_back({pool, unit});
        }
    }
}

} // namespace suppertide
