#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>

#include "core/base/contracts.h"
#include "core/exchange/problem_json.h"

namespace suppertide {

namespace {

using Json = nlohmann::ordered_json;

std::string_view nameOf(ScheduleStatus status)
{
    switch (status) {
    case ScheduleStatus::Optimal:
        return "optimal";
    case ScheduleStatus::Feasible:
        return "feasible";
    case ScheduleStatus::Infeasible:
        return "infeasible";
    case ScheduleStatus::Unknown:
        return "unknown";
    }
    return "";
}

Json toJson(const OvenProgram& program)
{
    Json result = Json::array();
    for (const ProgramEntry& entry : program) {
        result.push_back(
            Json::array({minuteOf(entry.at), entry.setC ? Json(*entry.setC) : Json(nullptr)}));
    }
    return result;
}

/// {id of an entry: id of what it was given} for all entries that were given something.
template <typename Index, typename Given, typename Items, typename IdOfGiven>
Json assigned(const IndexedVector<Index, Given>& given, const Items& items, IdOfGiven idOfGiven)
{
    Json result = Json::object();
    for (const Index index : given.indices()) {
        if (given[index]) {
            result[items[index].id] = idOfGiven(index);
        }
    }
    return result;
}

Json cooksOf(const Schedule& schedule, const Problem& problem)
{
    Json result = Json::object();
    for (const TaskIndex task : problem.tasks.indices()) {
        const auto& none = schedule.namedWithoutCooks;
        if (schedule.cooks[task].empty() && std::ranges::find(none, task) == none.end()) {
            continue;
        }
        Json names = Json::array();
        for (const CookIndex cook : schedule.cooks[task]) {
            names.push_back(problem.cooks[cook].id);
        }
        result[problem.tasks[task].id] = std::move(names);
    }
    return result;
}

Json programsOf(const Schedule& schedule, const Problem& problem)
{
    Json result = Json::object();
    for (const OvenIndex oven : problem.ovens.indices()) {
        if (!schedule.programs[oven].empty()) {
            result[problem.ovens[oven].id] = toJson(schedule.programs[oven]);
        }
    }
    return result;
}

} // namespace

std::string writeSchedule(const Schedule& schedule, const Problem& problem)
{
    expects(schedule.starts.size() == problem.tasks.size(), "a schedule of this problem");
    std::string result = fmt::format("{{\"format\": \"suppertide-schedule\", \"version\": 1, "
                                     "\"status\": \"{}\"",
                                     nameOf(schedule.status));
    if (schedule.cost) {
        result += fmt::format(", \"cost\": {}", *schedule.cost);
    }
    if (schedule.bound) {
        result += fmt::format(", \"bound\": {}", *schedule.bound);
    }
    const auto add = [&result](std::string_view key, const Json& value) {
        if (!value.empty()) {
            result += fmt::format(",\n \"{}\": {}", key,
                                  value.dump(-1, ' ', false, Json::error_handler_t::replace));
        }
    };
    if (schedule.status == ScheduleStatus::Infeasible) {
        result += fmt::format(",\n \"conflict\": {}", Json(schedule.conflict).dump());
    } else {
        add("conflict", schedule.conflict);
    }
    add("options", assigned(schedule.options, problem.choices, [&](ChoiceIndex choice) {
            return problem.choices[choice].options[*schedule.options[choice]].id;
        }));
    add("starts", assigned(schedule.starts, problem.tasks,
                           [&](TaskIndex task) { return minuteOf(*schedule.starts[task]); }));
    add("cooks", cooksOf(schedule, problem));
    add("units", assigned(schedule.units, problem.demands, [&](DemandIndex demand) {
            return problem.pools[*problem.demands[demand].pool].units[*schedule.units[demand]].id;
        }));
    add("ovens", assigned(schedule.ovens, problem.ovenDemands, [&](OvenDemandIndex demand) {
            return problem.ovens[*schedule.ovens[demand]].id;
        }));
    add("programs", programsOf(schedule, problem));
    return result + "}\n";
}

} // namespace suppertide
