// Pools: has every demand a unit that fits, and serves every unit one demand at a time?
#include <algorithm>

#include "core/check/judges.h"

namespace suppertide {

Verdict judgeDemand(const Evidence& evidence, DemandIndex demand)
{
    const Problem& problem = evidence.problem();
    const Demand& what = problem.demands[demand];
    if (!what.pool) {
        return {};
    }
    const auto& unit = evidence.schedule().units[demand];
    const auto held = evidence.held(what);
    Verdict verdict;
    const auto fail = [&](BrokenHow how, std::int64_t asked = 0, std::int64_t allowed = 0) {
        Broken broken{BrokenKind::Demand, how, what.id};
        broken.tasks = evidence.inOrderOfStart({what.from.task, what.to.task});
        broken.when = held;
        broken.asked = asked;
        broken.allowed = allowed;
        verdict.push_back(std::move(broken));
    };
    if (unit && !evidence.times().bothPresent(what.from, what.to)) {
        fail(BrokenHow::NotPresent);
    }
    if (!held) {
        return verdict;
    }
    if (!unit) {
        fail(BrokenHow::Missing);
        return verdict;
    }
    const std::int64_t size = problem.pools[*what.pool].units[*unit].size;
    if (size < what.minSize) {
        fail(BrokenHow::TooSmall, what.minSize, size);
    }
    if (what.units && std::ranges::find(*what.units, *unit) == what.units->end()) {
        fail(BrokenHow::NotAllowed);
    }
    return verdict;
}

Verdict judgeUnit(const Evidence& evidence, const UnitPlace& place)
{
    struct Holder
    {
        Interval when;
        DemandIndex demand;
    };
    const Problem& problem = evidence.problem();
    std::vector<Holder> holders;
    for (const DemandIndex index : evidence.ties().demandsOfPool[place.pool]) {
        const auto held = evidence.held(problem.demands[index]);
        if (held && evidence.schedule().units[index] == place.unit) {
            holders.push_back({*held, index});
        }
    }
    std::ranges::stable_sort(holders, {}, [](const Holder& holder) { return holder.when.start; });
    Verdict verdict;
    for (auto first = holders.begin(); first != holders.end(); ++first) {
        for (auto second = first + 1;
             second != holders.end() && second->when.start < first->when.end; ++second) {
            const Pool& pool = problem.pools[place.pool];
            Broken broken{BrokenKind::Unit, BrokenHow::DoubleUse,
                          pool.id + "/" + pool.units[place.unit].id};
            const Demand& one = problem.demands[first->demand];
            const Demand& other = problem.demands[second->demand];
            broken.tasks = evidence.inOrderOfStart(
                {one.from.task, one.to.task, other.from.task, other.to.task});
            broken.when = first->when.common(second->when);
            broken.asked = 2;
            broken.allowed = 1;
            verdict.push_back(std::move(broken));
        }
    }
    return verdict;
}

} // namespace suppertide
