// Ties: which lags, demands, cooks and ovens of a problem hang on which task, count, pool and
// group. Made once for a problem; says nothing about a schedule. Used by the judges, and by
// LiveCheck to know what a move touches.
#pragma once

#include <optional>
#include <vector>

#include "core/problem/problem.h"

namespace suppertide {

/// A unit of a pool, and its number when the units of all pools are counted through.
struct UnitPlace
{
    PoolIndex pool;
    UnitIndex unit;
};

struct Ties
{
    explicit Ties(const Problem& problem);

    IndexedVector<TaskIndex, std::vector<LagIndex>> lagsOf;
    IndexedVector<TaskIndex, std::vector<DemandIndex>> demandsOf;
    IndexedVector<TaskIndex, std::vector<OvenDemandIndex>> ovenDemandsOf;
    IndexedVector<TaskIndex, std::vector<CookIndex>> seatedAfter; // cooks at table after this event
    IndexedVector<CountIndex, std::vector<DemandIndex>> demandsOfCount;
    IndexedVector<PoolIndex, std::vector<DemandIndex>> demandsOfPool;
    IndexedVector<OvenDemandIndex, std::vector<OvenDemandIndex>> sameGroup; // itself included
    std::vector<UnitPlace> units;
    IndexedVector<PoolIndex, std::size_t> firstUnit; // where a pool begins in `units`
};

} // namespace suppertide
