#include "ui/models/task_places.h"

#include <algorithm>

namespace suppertide::ui {

std::string ovenLane(const Problem& problem, OvenIndex oven)
{
    return "oven:" + problem.ovens[oven].id;
}

std::string unitLane(const Problem& problem, PoolIndex pool, UnitIndex unit)
{
    return "unit:" + problem.pools[pool].id + "/" + problem.pools[pool].units[unit].id;
}

std::string countLane(const Problem& problem, CountIndex count)
{
    return "count:" + problem.counts[count].id;
}

std::string cookLane(const Problem& problem, CookIndex cook)
{
    return "cook:" + problem.cooks[cook].id;
}

TaskPlaces::TaskPlaces(const Plan& plan)
    : plan_(plan), problem_(plan.formulation->problem), times_(problem_, plan.schedule),
      places_(problem_.tasks.size())
{
    placeOvens();
    placeDemands();
    placeCooks();
}

bool TaskPlaces::isShown(TaskIndex task) const
{
    const TaskRole role = plan_.formulation->tasks[task].role;
    return role != TaskRole::Watch && problem_.tasks[task].duration.count() > 0 &&
           times_.interval(task).has_value();
}

bool TaskPlaces::isUsed(const std::string& lane) const
{
    const auto standsThere = [&](const Placement& place) { return place.lane == lane; };
    return std::any_of(places_.begin(), places_.end(),
                       [&](const std::vector<Placement>& places) {
                           return std::any_of(places.begin(), places.end(), standsThere);
                       }) ||
           std::any_of(spans_.begin(), spans_.end(),
                       [&](const HeldSpan& span) { return span.lane == lane; });
}

std::optional<TaskIndex> TaskPlaces::inOven(OvenDemandIndex demand) const
{
    const std::vector<TaskIndex> tasks = tasksIn(demand);
    return tasks.empty() ? std::nullopt : std::optional(tasks.front());
}

/// Putting in and taking out are deeds of a minute at the ends of a demand; what stands in the oven
/// is the step between them. A demand without such a step shows its own two ends.
std::vector<TaskIndex> TaskPlaces::tasksIn(OvenDemandIndex demand) const
{
    const OvenDemand& wanted = problem_.ovenDemands[demand];
    const TaskSource& from = plan_.formulation->tasks[wanted.from.task];
    std::vector<TaskIndex> tasks;
    for (const TaskIndex task : problem_.tasks.indices()) {
        const TaskSource& source = plan_.formulation->tasks[task];
        if (source.role == TaskRole::Step && isShown(task) && source.step && from.step &&
            source.dish == from.dish && source.step == from.step && source.batch == from.batch &&
            source.variants == from.variants) {
            tasks.push_back(task);
        }
    }
    if (tasks.empty() && isShown(wanted.from.task) && wanted.from.edge == Edge::Start) {
        tasks.push_back(wanted.from.task);
    }
    return tasks;
}

void TaskPlaces::put(TaskIndex task, Placement place)
{
    std::vector<Placement>& places = places_[task];
    const bool isThere = std::any_of(places.begin(), places.end(), [&](const Placement& other) {
        return other.lane == place.lane;
    });
    if (!isThere) {
        places.push_back(std::move(place));
    }
}

void TaskPlaces::placeOvens()
{
    for (const OvenIndex oven : problem_.ovens.indices()) {
        placeOven(oven);
    }
}

/// Shelves are given from the foot up, to each demand the lowest that are free all its time.
void TaskPlaces::placeOven(OvenIndex oven)
{
    struct Taken
    {
        Interval when;
        int row = 0;
        int rows = 1;
    };
    std::vector<std::pair<Interval, OvenDemandIndex>> inside;
    for (const OvenDemandIndex demand : problem_.ovenDemands.indices()) {
        const OvenDemand& wanted = problem_.ovenDemands[demand];
        const auto when = times_.held(wanted.from, wanted.to);
        if (when && wanted.shelves > 0 && plan_.schedule.ovens[demand] == oven) {
            inside.emplace_back(*when, demand);
        }
    }
    std::sort(inside.begin(), inside.end());
    const int shelves = static_cast<int>(std::max<std::int64_t>(1, problem_.ovens[oven].shelves));
    std::vector<Taken> taken;
    for (const auto& [when, demand] : inside) {
        const int rows =
            static_cast<int>(std::min<std::int64_t>(problem_.ovenDemands[demand].shelves, shelves));
        int row = 0;
        const auto isFree = [&, span = when](int low) {
            return std::none_of(taken.begin(), taken.end(), [&](const Taken& other) {
                return other.when.overlaps(span) && other.row < low + rows &&
                       low < other.row + other.rows;
            });
        };
        while (row + rows < shelves && !isFree(row)) {
            ++row;
        }
        if (!isFree(row)) {
            row = 0; // more is wanted than there is: the clash is drawn on it
        }
        taken.push_back({when, row, rows});
        for (const TaskIndex task : tasksIn(demand)) {
            put(task, {ovenLane(problem_, oven), row, rows});
        }
    }
}

void TaskPlaces::placeDemands()
{
    for (const DemandIndex index : problem_.demands.indices()) {
        const Demand& demand = problem_.demands[index];
        const auto when = times_.held(demand.from, demand.to);
        const auto& unit = plan_.schedule.units[index];
        if (!when || !demand.pool || !unit) {
            continue;
        }
        const std::string lane = unitLane(problem_, *demand.pool, *unit);
        Interval between = *when;
        if (demand.from.edge == Edge::Start && isShown(demand.from.task)) {
            put(demand.from.task, {lane, 0, 1});
            between.start = times_.interval(demand.from.task)->end;
        }
        if (demand.to.edge == Edge::End && isShown(demand.to.task)) {
            put(demand.to.task, {lane, 0, 1});
            between.end = times_.interval(demand.to.task)->start;
        }
        if (!between.empty() && demand.from.task != demand.to.task) {
            spans_.push_back({index, lane, between});
        }
    }
}

void TaskPlaces::placeCooks()
{
    for (const TaskIndex task : problem_.tasks.indices()) {
        if (!isShown(task)) {
            continue;
        }
        for (const CookIndex cook : plan_.schedule.cooks[task]) {
            put(task, {cookLane(problem_, cook), 0, 1});
        }
    }
}

} // namespace suppertide::ui
