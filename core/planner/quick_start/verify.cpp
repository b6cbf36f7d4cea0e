#include "core/planner/quick_start/verify.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <string>

#include "core/problem/oven_curve.h"
#include "core/problem/timetable.h"

namespace suppertide::quick_start {

namespace {

struct Taken
{
    Interval during;
    std::int64_t amount = 0;
};

bool fits(const std::vector<Taken>& taken, std::int64_t capacity)
{
    return std::all_of(taken.begin(), taken.end(), [&](const Taken& peak) {
        std::int64_t load = 0;
        for (const Taken& other : taken) {
            load += other.during.contains(peak.during.start) ? other.amount : 0;
        }
        return load <= capacity;
    });
}

bool startsHold(const Problem& problem, const Schedule& schedule, const Timetable& times)
{
    for (const ChoiceIndex choice : problem.choices.indices()) {
        if (!schedule.options[choice]) {
            return false;
        }
    }
    for (const TaskIndex task : problem.tasks.indices()) {
        if (times.isPresent(task) != schedule.starts[task].has_value()) {
            return false;
        }
        const auto during = times.interval(task);
        const Interval& window = problem.tasks[task].window;
        if (during && (during->start < window.start || during->end > window.end)) {
            return false;
        }
    }
    return std::all_of(problem.lags.begin(), problem.lags.end(), [&](const Lag& lag) {
        const auto from = times.time(lag.from);
        const auto to = times.time(lag.to);
        if (!from || !to) {
            return true;
        }
        const Minutes gap = *to - *from;
        return (!lag.min || gap >= *lag.min) && (!lag.max || gap <= *lag.max);
    });
}

bool demandsHold(const Problem& problem, const Schedule& schedule, const Timetable& times)
{
    std::vector<std::vector<Taken>> counts(problem.counts.size());
    std::map<std::pair<PoolIndex, UnitIndex>, std::vector<Taken>> units;
    for (const DemandIndex index : problem.demands.indices()) {
        const Demand& demand = problem.demands[index];
        const auto held = times.held(demand.from, demand.to);
        if (!held) {
            continue;
        }
        if (demand.count) {
            counts[demand.count->value()].push_back({*held, demand.amount});
            continue;
        }
        const auto unit = schedule.units[index];
        if (!unit || problem.pools[*demand.pool].units[*unit].size < demand.minSize ||
            (demand.units &&
             std::find(demand.units->begin(), demand.units->end(), *unit) == demand.units->end())) {
            return false;
        }
        units[{*demand.pool, *unit}].push_back({*held, 1});
    }
    for (const CountIndex count : problem.counts.indices()) {
        if (!fits(counts[count.value()], problem.counts[count].capacity)) {
            return false;
        }
    }
    return std::all_of(units.begin(), units.end(),
                       [](const auto& unit) { return fits(unit.second, 1); });
}

bool cookMay(const Cook& cook, const std::vector<Interval>& table, const Task& task,
             const Interval& during)
{
    const auto& skills = cook.skills;
    const auto& skill = task.hands->skill;
    const bool able = !skill || std::find(skills.begin(), skills.end(), *skill) != skills.end();
    const bool free = std::any_of(cook.free.begin(), cook.free.end(),
                                  [&](const Interval& one) { return one.contains(during); });
    const bool seated =
        !task.atTable && std::any_of(table.begin(), table.end(),
                                     [&](const Interval& one) { return one.overlaps(during); });
    return able && free && !seated;
}

bool handsHold(const Problem& problem, const Schedule& schedule, const Timetable& times)
{
    IndexedVector<CookIndex, std::vector<Taken>> work(problem.cooks.size());
    IndexedVector<CookIndex, std::vector<Interval>> table;
    for (const Cook& cook : problem.cooks) {
        table.push_back(times.atTable(cook));
    }
    for (const TaskIndex index : problem.tasks.indices()) {
        const Task& task = problem.tasks[index];
        const auto during = times.interval(index);
        const std::vector<CookIndex>& cooks = schedule.cooks[index];
        if (!during || !task.needsCooks()) {
            if (!cooks.empty()) {
                return false;
            }
            continue;
        }
        for (std::size_t i = 0; i < cooks.size(); ++i) {
            const bool twice =
                std::find(cooks.begin(), cooks.begin() + static_cast<std::ptrdiff_t>(i),
                          cooks[i]) != cooks.begin() + static_cast<std::ptrdiff_t>(i);
            if (twice || !cookMay(problem.cooks[cooks[i]], table[cooks[i]], task, *during)) {
                return false;
            }
            work[cooks[i]].push_back({*during, task.hands->attention.percent()});
        }
        if (cooks.size() != static_cast<std::size_t>(task.hands->cooks)) {
            return false;
        }
    }
    return std::all_of(work.begin(), work.end(), [](const auto& one) { return fits(one, 100); });
}

bool stayHolds(const OvenDemand& demand, const Interval& held, const OvenCurve& curve)
{
    if (demand.mode == modeOff && curve.firstOn(held)) {
        return false;
    }
    const auto minutes = curve.turningMinutes(held);
    return std::all_of(minutes.begin(), minutes.end(), [&](PlanTime at) {
        const std::int64_t milliC = curve.milliC(at);
        return std::int64_t{demand.acceptLow} * 1000 <= milliC &&
               milliC <= std::int64_t{demand.acceptHigh} * 1000;
    });
}

bool programHolds(const Oven& oven, const OvenProgram& program, PlanTime horizon)
{
    for (std::size_t i = 0; i < program.size(); ++i) {
        const int setting = program[i].setC.value_or(oven.minC);
        if ((i > 0 && program[i - 1].at >= program[i].at) || program[i].at < planTime(0) ||
            program[i].at > horizon ||
            (program[i].setC && (setting < oven.minC || setting > oven.maxC))) {
            return false;
        }
    }
    return true;
}

struct Stay
{
    const OvenDemand* demand;
    Interval held;
    OvenIndex oven;
};

bool staysAgree(const std::vector<Stay>& stays)
{
    for (const Stay& one : stays) {
        for (const Stay& other : stays) {
            const bool together = one.oven == other.oven;
            const bool modes = one.demand->mode && other.demand->mode &&
                               one.demand->mode != other.demand->mode &&
                               one.held.overlaps(other.held);
            const bool group = one.demand->group && one.demand->group == other.demand->group;
            if ((together && modes) || (!together && group)) {
                return false;
            }
        }
    }
    return true;
}

bool ovensHold(const Problem& problem, const Schedule& schedule, const Timetable& times)
{
    std::vector<Stay> stays;
    std::vector<std::vector<Taken>> shelves(problem.ovens.size());
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        const OvenDemand& demand = problem.ovenDemands[index];
        const auto held = times.held(demand.from, demand.to);
        const auto oven = schedule.ovens[index];
        if (!held) {
            continue;
        }
        if (!oven || (demand.ovens && std::find(demand.ovens->begin(), demand.ovens->end(),
                                                *oven) == demand.ovens->end())) {
            return false;
        }
        const OvenCurve curve(problem.ovens[*oven], schedule.programs[*oven]);
        if (!stayHolds(demand, *held, curve)) {
            return false;
        }
        stays.push_back({&demand, *held, *oven});
        shelves[oven->value()].push_back({*held, demand.shelves});
    }
    for (const OvenIndex oven : problem.ovens.indices()) {
        if (!fits(shelves[oven.value()], problem.ovens[oven].shelves) ||
            !programHolds(problem.ovens[oven], schedule.programs[oven], problem.horizon)) {
            return false;
        }
    }
    return staysAgree(stays);
}

std::int64_t quietCost(const Problem& problem, const Timetable& times)
{
    std::int64_t cost = 0;
    for (const Quiet& quiet : problem.costs.quiet) {
        Interval when = quiet.when;
        if (quiet.before) {
            const auto before = times.time({*quiet.before, Edge::Start});
            if (!before) {
                continue;
            }
            when = {*before - quiet.minutes, *before};
        }
        for (const TaskIndex index : problem.tasks.indices()) {
            const auto during = times.interval(index);
            const auto& hands = problem.tasks[index].hands;
            if (during && hands) {
                cost += quiet.rate * hands->attention.percent() * hands->cooks *
                        during->common(when).length().count();
            }
        }
    }
    return cost;
}

std::int64_t ovenCost(const Problem& problem, const Schedule& schedule, const Timetable& times)
{
    std::int64_t cost = 0;
    for (const OvenIndex oven : problem.ovens.indices()) {
        const OvenCurve curve(problem.ovens[oven], schedule.programs[oven]);
        cost += problem.costs.ovenChange * curve.changes() +
                problem.costs.ovenOnMinute * curve.onBefore(problem.horizon).count();
        for (const PlanTime at : curve.switchedOn()) {
            cost += problem.costs.ovenSwitchOn;
            bool isWithin = false;
            for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
                const OvenDemand& demand = problem.ovenDemands[index];
                const auto held = times.held(demand.from, demand.to);
                isWithin = isWithin || (schedule.ovens[index] == oven && held && held->start < at &&
                                        at < held->end);
            }
            cost += isWithin ? problem.costs.ovenSwitchOnWithin : 0;
        }
    }
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        const OvenDemand& demand = problem.ovenDemands[index];
        const auto held = times.held(demand.from, demand.to);
        const auto oven = schedule.ovens[index];
        if (held && oven && demand.prefer) {
            const OvenCurve curve(problem.ovens[*oven], schedule.programs[*oven]);
            const std::int64_t inForce =
                curve.setting(held->start).value_or(problem.ovens[*oven].ambientC);
            cost += problem.costs.preferC * std::abs(inForce - *demand.prefer);
        }
    }
    return cost;
}

std::int64_t sessionCost(const Problem& problem, const Schedule& schedule, const Timetable& times)
{
    std::vector<std::vector<Interval>> work(problem.cooks.size());
    for (const TaskIndex task : problem.tasks.indices()) {
        for (const CookIndex cook : schedule.cooks[task]) {
            work[cook.value()].push_back(*times.interval(task));
        }
    }
    std::int64_t sessions = 0;
    for (auto& theirs : work) {
        std::sort(theirs.begin(), theirs.end());
        std::optional<PlanTime> latest;
        for (const Interval& during : theirs) {
            sessions += !latest || during.start > *latest + problem.costs.sessionGap ? 1 : 0;
            latest = latest ? std::max(*latest, during.end) : during.end;
        }
    }
    return problem.costs.session * sessions;
}

} // namespace

bool scheduleHolds(const Problem& problem, const Schedule& schedule)
{
    const Timetable times(problem, schedule);
    return startsHold(problem, schedule, times) && demandsHold(problem, schedule, times) &&
           handsHold(problem, schedule, times) && ovensHold(problem, schedule, times);
}

std::int64_t scheduleCost(const Problem& problem, const Schedule& schedule)
{
    const Timetable times(problem, schedule);
    std::int64_t cost = quietCost(problem, times) + ovenCost(problem, schedule, times) +
                        sessionCost(problem, schedule, times);
    for (const Lag& lag : problem.lags) {
        const auto from = times.time(lag.from);
        const auto to = times.time(lag.to);
        if (from && to && lag.min) {
            cost += lag.loss * (*to - *from - *lag.min).count();
        }
    }
    for (const ChoiceIndex choice : problem.choices.indices()) {
        cost += problem.choices[choice].options[*schedule.options[choice]].cost;
    }
    for (const BeforeStart& before : problem.costs.before) {
        const auto start = times.time({before.task, Edge::Start});
        if (start && *start != before.start) {
            cost += problem.costs.beforeMoved +
                    problem.costs.beforeRate * std::abs((*start - before.start).count());
        }
    }
    return cost;
}

} // namespace suppertide::quick_start
