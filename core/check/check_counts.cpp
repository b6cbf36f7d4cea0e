// Counts: is there at every minute as much as is in use?
#include "core/check/judges.h"
#include "core/check/overload.h"

namespace suppertide {

Verdict judgeCount(const Evidence& evidence, CountIndex count)
{
    const Problem& problem = evidence.problem();
    std::vector<Use> uses;
    for (const DemandIndex index : evidence.ties().demandsOfCount[count]) {
        const Demand& demand = problem.demands[index];
        if (const auto held = evidence.held(demand)) {
            uses.push_back({*held, demand.amount, demand.from, demand.to});
        }
    }
    const Count& what = problem.counts[count];
    Verdict verdict;
    for (const Overload& overload : overloads(uses, what.capacity)) {
        Broken broken{BrokenKind::Count, BrokenHow::OverCapacity, what.id};
        broken.tasks = evidence.inOrderOfStart(tasksDuring(uses, overload.when));
        broken.when = overload.when;
        broken.asked = overload.most;
        broken.allowed = what.capacity;
        verdict.push_back(std::move(broken));
    }
    return verdict;
}

} // namespace suppertide
