#include "core/planner/quick_start/finish.h"

#include <algorithm>

#include "core/assign/cook_sweep.h"
#include "core/base/contracts.h"
#include "core/planner/quick_start/verify.h"
#include "core/problem/timetable.h"

namespace suppertide::quick_start {

namespace {

/// Beyond so many possible pairs of cook and work, dealing them out anew takes longer than
/// planning.
constexpr std::size_t mostPairs = 1500;

/// Cooks for the fewest sessions, where that can be told.
void reassignCooks(const PartialPlan& plan, Schedule& schedule)
{
    const Problem& problem = plan.instance().problem();
    if (problem.cooks.size() > mostCooks ||
        problem.cooks.size() * plan.instance().work.size() > mostPairs) {
        return;
    }
    const Timetable times(problem, schedule);
    std::vector<CookWork> work;
    for (const Work& item : plan.instance().work) {
        CookWork one;
        one.during = *times.interval(item.task);
        one.attention = item.attention;
        one.cooks = static_cast<int>(item.cooks);
        for (const CookIndex index : problem.cooks.indices()) {
            const Cook& cook = problem.cooks[index];
            const bool able =
                std::find(item.able.begin(), item.able.end(), index) != item.able.end();
            const bool free =
                std::any_of(cook.free.begin(), cook.free.end(), [&](const Interval& interval) {
                    return interval.contains(one.during);
                });
            const std::vector<Interval> table = times.atTable(cook);
            const bool seated =
                !item.atTable &&
                std::any_of(table.begin(), table.end(), [&](const Interval& interval) {
                    return interval.overlaps(one.during);
                });
            one.faults.push_back(able && free && !seated ? 0 : 1);
        }
        work.push_back(std::move(one));
    }
    const CookSweepResult found = sweepCooks(work, problem.cooks.size(), problem.costs.sessionGap);
    if (found.broken > 0) {
        return;
    }
    for (const WorkIndex index : plan.instance().work.indices()) {
        std::vector<CookIndex>& cooks = schedule.cooks[plan.instance().work[index].task];
        cooks.clear();
        for (const std::size_t cook : found.cooks[index.value()]) {
            cooks.emplace_back(cook);
        }
    }
}

} // namespace

Schedule finished(const PartialPlan& plan, CostMeter& meter)
{
    const Instance& instance = plan.instance();
    const Problem& problem = instance.problem();
    Schedule schedule = emptyScheduleFor(problem);
    schedule.options = instance.options();
    for (const TaskIndex task : problem.tasks.indices()) {
        if (const auto start = startOf(plan, task)) {
            schedule.starts[task] = planTime(*start);
        }
    }
    for (const WorkIndex work : instance.work.indices()) {
        schedule.cooks[instance.work[work].task] = plan.cooks(work);
    }
    for (const HoldIndex index : instance.held.indices()) {
        const Hold& hold = instance.held[index];
        const auto servant = plan.servant(index);
        if (!servant || hold.kind == HoldKind::Count) {
            continue;
        }
        if (hold.kind == HoldKind::Oven) {
            schedule.ovens[*hold.ovenDemand] = OvenIndex{*servant};
            continue;
        }
        const PoolIndex pool = *problem.demands[*hold.demand].pool;
        schedule.units[*hold.demand] = UnitIndex{*servant - instance.firstUnit[pool]};
    }
    for (const OvenIndex oven : problem.ovens.indices()) {
        schedule.programs[oven] = meter.program(plan, oven);
    }
    Schedule fewer = schedule;
    reassignCooks(plan, fewer);
    const std::int64_t own = scheduleCost(problem, schedule);
    const std::int64_t reassigned = scheduleCost(problem, fewer);
    if (reassigned < own) {
        schedule = std::move(fewer);
    }
    schedule.cost = std::min(own, reassigned);
    schedule.status = ScheduleStatus::Feasible;
    ensures(scheduleHolds(problem, schedule), "what the planner returns breaks no requirement");
    return schedule;
}

} // namespace suppertide::quick_start
