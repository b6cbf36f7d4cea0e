#include "core/planner/exact/reading.h"

#include <algorithm>
#include <utility>

#include "core/base/contracts.h"
#include "core/planner/quick_start/verify.h"
#include "core/problem/timetable.h"

namespace suppertide::exact {

namespace {

void readUnits(const Model& model, const std::vector<Bound>& values, const Timetable& times,
               Schedule& schedule)
{
    struct Held
    {
        DemandIndex demand;
        Interval during;
        const std::vector<UnitIndex>* units;
    };
    const Problem& problem = model.problem();
    std::vector<Held> all;
    for (const DemandIndex index : problem.demands.indices()) {
        const Demand& demand = problem.demands[index];
        const auto during = times.held(demand.from, demand.to);
        if (!demand.pool || !during) {
            continue;
        }
        for (const Model::UnitClass& unitClass : model.units[index]) {
            if (holds(values, unitClass.chosen)) {
                all.push_back({index, *during, &unitClass.units});
            }
        }
    }
    std::sort(all.begin(), all.end(), [](const Held& a, const Held& b) {
        return std::pair(a.during.start, a.demand) < std::pair(b.during.start, b.demand);
    });
    std::vector<std::vector<PlanTime>> freeFrom(problem.pools.size());
    for (const PoolIndex pool : problem.pools.indices()) {
        freeFrom[pool.value()].resize(problem.pools[pool].units.size());
    }
    for (const Held& held : all) {
        for (const UnitIndex unit : *held.units) {
            PlanTime& free = freeFrom[problem.demands[held.demand].pool->value()][unit.value()];
            if (free <= held.during.start) {
                free = held.during.end;
                schedule.units[held.demand] = unit;
                break;
            }
        }
    }
}

/// False: an oven cannot keep what is in it.
bool readOvens(const Model& model, const std::vector<Bound>& values, const Timetable& times,
               OvenPrograms& programs, std::int64_t below, Schedule& schedule)
{
    const Problem& problem = model.problem();
    const auto limits = ovenLimits(model, values, below);
    std::vector<std::vector<OvenStay>> stays(problem.ovens.size());
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        const OvenDemand& demand = problem.ovenDemands[index];
        const auto during = times.held(demand.from, demand.to);
        if (!during) {
            continue;
        }
        for (const auto& [oven, chosen] : model.ovens[index]) {
            if (holds(values, chosen)) {
                schedule.ovens[index] = oven;
                stays[oven.value()].push_back(ovenStay(demand, *during));
            }
        }
    }
    for (const OvenIndex oven : problem.ovens.indices()) {
        const KnownProgram best = programs.of(oven, std::move(stays[oven.value()]), limits[oven]);
        if (!best.program) {
            return false;
        }
        schedule.programs[oven] = *best.program;
    }
    return true;
}

} // namespace

bool holds(const std::vector<Bound>& values, Literal literal)
{
    const Bound value = values[literal.variable().index];
    return ((literal.view & 1U) == 0 ? value : -value) <= literal.bound;
}

IndexedVector<OvenIndex, std::int64_t>
ovenLimits(const Model& model, const std::vector<Bound>& values, std::int64_t below)
{
    const std::int64_t spare = below - values[model.cost().index];
    IndexedVector<OvenIndex, std::int64_t> limits(model.problem().ovens.size(), spare);
    for (const OvenIndex oven : model.ovenLeast.indices()) {
        limits[oven] += values[model.ovenLeast[oven].index];
    }
    return limits;
}

std::optional<Schedule> scheduleOf(const Model& model, const std::vector<Bound>& values,
                                   OvenPrograms& programs, std::int64_t below)
{
    const Problem& problem = model.problem();
    Schedule schedule = emptyScheduleFor(problem);
    for (const ChoiceIndex choice : problem.choices.indices()) {
        for (const OptionIndex option : problem.choices[choice].options.indices()) {
            if (holds(values, model.option(choice, option))) {
                schedule.options[choice] = option;
            }
        }
    }
    for (const TaskIndex task : problem.tasks.indices()) {
        if (!holds(values, model.present(task))) {
            continue;
        }
        schedule.starts[task] = planTime(values[model.start(task).index]);
        for (const auto& [cook, chosen] : model.cooks[task]) {
            if (holds(values, chosen)) {
                schedule.cooks[task].push_back(cook);
            }
        }
    }
    const Timetable times(problem, schedule);
    readUnits(model, values, times, schedule);
    if (!readOvens(model, values, times, programs, below, schedule)) {
        return std::nullopt;
    }
    if (!quick_start::scheduleHolds(problem, schedule)) {
        return std::nullopt;
    }
    schedule.cost = quick_start::scheduleCost(problem, schedule);
    schedule.status = ScheduleStatus::Feasible;
    return schedule;
}

std::vector<Bound> aimsOf(const Model& model, const Schedule& schedule)
{
    const Problem& problem = model.problem();
    std::vector<Bound> aims(model.engine().trail().views() / 2, 0);
    const auto aim = [&](Literal literal, bool wanted) {
        const bool positive = (literal.view & 1U) != 0;
        aims[literal.variable().index] = positive == wanted ? 1 : 0;
    };
    for (const ChoiceIndex choice : problem.choices.indices()) {
        for (const OptionIndex option : problem.choices[choice].options.indices()) {
            aim(model.option(choice, option), schedule.options[choice] == option);
        }
    }
    for (const TaskIndex task : problem.tasks.indices()) {
        const auto& start = schedule.starts[task];
        const Variable variable = model.start(task);
        aims[variable.index] =
            start ? static_cast<Bound>(minuteOf(*start)) : model.engine().trail().least(variable);
        for (const auto& [cook, chosen] : model.cooks[task]) {
            const auto& mine = schedule.cooks[task];
            aim(chosen, std::find(mine.begin(), mine.end(), cook) != mine.end());
        }
    }
    for (const DemandIndex demand : problem.demands.indices()) {
        for (const Model::UnitClass& unitClass : model.units[demand]) {
            const auto& unit = schedule.units[demand];
            aim(unitClass.chosen, unit && std::find(unitClass.units.begin(), unitClass.units.end(),
                                                    *unit) != unitClass.units.end());
        }
    }
    for (const OvenDemandIndex demand : problem.ovenDemands.indices()) {
        for (const auto& [oven, chosen] : model.ovens[demand]) {
            aim(chosen, schedule.ovens[demand] == oven);
        }
    }
    if (model.differences) {
        for (const StartDifferences::Difference& difference : model.differences->all()) {
            aims[difference.variable.index] =
                aims[difference.to.index] - aims[difference.from.index];
        }
    }
    return aims;
}

} // namespace suppertide::exact
