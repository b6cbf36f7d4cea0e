#include <fmt/format.h>

#include <array>
#include <limits>
#include <unordered_set>

#include "core/exchange/id_table.h"
#include "core/exchange/json_reader.h"
#include "core/exchange/problem_json.h"
#include "core/exchange/problem_reading.h"

namespace suppertide {

namespace {

constexpr std::int64_t largest = std::numeric_limits<std::int64_t>::max();

/// Looks up one option for a choice or one unit for a demand: each has its own small list.
template <typename Index, typename Item>
Index findIn(const IndexedVector<Index, Item>& list, std::string_view what, const JsonCursor& at)
{
    const std::string id = at.text();
    for (const Index index : list.indices()) {
        if (list[index].id == id) {
            return index;
        }
    }
    at.fault(fmt::format("there is no {} “{}”", what, id));
    return Index{};
}

class ScheduleReader
{
public:
    ScheduleReader(const Problem& problem, JsonFault& fault) : problem_(&problem), fault_(&fault)
    {
        fill(tasks_, problem.tasks);
        fill(demands_, problem.demands);
        fill(cooks_, problem.cooks);
        fill(ovens_, problem.ovens);
        fill(ovenDemands_, problem.ovenDemands);
        fill(choices_, problem.choices);
    }

    Schedule read(const JsonValue& tree)
    {
        JsonFields top = JsonCursor{tree, "", *fault_}.fields();
        readHeader(top, "suppertide-schedule");
        Schedule schedule = emptyScheduleFor(*problem_);
        schedule.status = readStatus(top.required("status"));
        readClaims(top, schedule);
        readOptions(top, schedule);
        readMap(top, "starts", tasks_, [&](TaskIndex task, const JsonCursor& at) {
            schedule.starts[task] = planTime(at.whole(-mostInProblem, mostInProblem));
        });
        readMap(top, "cooks", tasks_, [&](TaskIndex task, const JsonCursor& at) {
            schedule.cooks[task] = readCooks(at);
            if (schedule.cooks[task].empty()) {
                schedule.namedWithoutCooks.push_back(task);
            }
        });
        readUnits(top, schedule);
        readMap(top, "ovens", ovenDemands_, [&](OvenDemandIndex demand, const JsonCursor& at) {
            schedule.ovens[demand] = ovens_.read(at);
        });
        readMap(top, "programs", ovens_, [&](OvenIndex oven, const JsonCursor& at) {
            schedule.programs[oven] = readProgram(at);
        });
        if (const auto planted = top.optional("planted_conflict")) {
            static_cast<void>(readConflict(*planted)); // of use only to who made the problem
        }
        top.done();
        return schedule;
    }

private:
    template <typename Index, typename Item>
    void fill(IdTable<Index>& table, const IndexedVector<Index, Item>& list)
    {
        static const JsonValue::Object none;
        for (const Item& item : list) {
            table.add(item.id, JsonFields{none, item.id, *fault_});
        }
    }

    template <typename Index, typename ReadOne>
    static void readMap(JsonFields& top, std::string_view key, const IdTable<Index>& ids,
                        ReadOne readOne)
    {
        if (const auto map = top.optional(key)) {
            map->forEachEntry([&](const std::string& id, const JsonCursor& at) {
                const Index index = ids.find(id, at);
                if (!at.isFaulty()) {
                    readOne(index, at);
                }
            });
        }
    }

    static ScheduleStatus readStatus(const JsonCursor& at)
    {
        static constexpr std::array statuses{
            std::pair{"optimal", ScheduleStatus::Optimal},
            std::pair{"feasible", ScheduleStatus::Feasible},
            std::pair{"infeasible", ScheduleStatus::Infeasible},
            std::pair{"unknown", ScheduleStatus::Unknown},
        };
        const std::string text = at.text();
        for (const auto& [name, status] : statuses) {
            if (text == name) {
                return status;
            }
        }
        at.fault("expected “optimal”, “feasible”, “infeasible” or “unknown”");
        return ScheduleStatus::Unknown;
    }

    void readClaims(JsonFields& top, Schedule& schedule) const
    {
        const bool isOptimal = schedule.status == ScheduleStatus::Optimal;
        const bool isSolved = isOptimal || schedule.status == ScheduleStatus::Feasible;
        if (isSolved || top.has("cost")) {
            schedule.cost = top.required("cost").whole(0, largest);
        }
        if (isOptimal || top.has("bound")) {
            schedule.bound = top.required("bound").whole(0, largest);
        }
        if (schedule.status == ScheduleStatus::Infeasible || top.has("conflict")) {
            schedule.conflict = readConflict(top.required("conflict"));
        }
    }

    [[nodiscard]] std::vector<std::string> readConflict(const JsonCursor& list) const
    {
        std::vector<std::string> result;
        std::unordered_set<std::string> seen;
        list.forEachItem([&](const JsonCursor& at) {
            result.push_back(at.text());
            if (!isRequirement(result.back())) {
                at.fault(fmt::format("there is no requirement “{}”", result.back()));
            }
            if (!seen.insert(result.back()).second) {
                at.fault("stands twice in this list");
            }
        });
        return result;
    }

    /// "lag:l1", "demand:d2", "oven:e1", "window:t9", "hands:t1" (if it needs any), "choice:m1".
    [[nodiscard]] bool isRequirement(const std::string& name) const
    {
        const std::size_t colon = name.find(':');
        if (colon == std::string::npos) {
            return false;
        }
        const std::string kind = name.substr(0, colon);
        const std::string id = name.substr(colon + 1);
        const auto stands = [&id](const auto& list) {
            return std::ranges::any_of(list, [&id](const auto& item) { return item.id == id; });
        };
        const auto needsCooks = [&id](const Task& task) {
            return task.id == id && task.needsCooks();
        };
        return (kind == "lag" && stands(problem_->lags)) ||
               (kind == "demand" && stands(problem_->demands)) ||
               (kind == "oven" && stands(problem_->ovenDemands)) ||
               (kind == "window" && stands(problem_->tasks)) ||
               (kind == "choice" && stands(problem_->choices)) ||
               (kind == "hands" && std::ranges::any_of(problem_->tasks, needsCooks));
    }

    void readOptions(JsonFields& top, Schedule& schedule) const
    {
        readMap(top, "options", choices_, [&](ChoiceIndex choice, const JsonCursor& at) {
            schedule.options[choice] =
                findIn(problem_->choices[choice].options, "option of this choice", at);
        });
    }

    [[nodiscard]] std::vector<CookIndex> readCooks(const JsonCursor& list) const
    {
        std::vector<CookIndex> result;
        std::unordered_set<CookIndex> seen;
        list.forEachItem([&](const JsonCursor& at) {
            result.push_back(cooks_.read(at));
            if (!seen.insert(result.back()).second) {
                at.fault("stands twice in this list");
            }
        });
        return result;
    }

    void readUnits(JsonFields& top, Schedule& schedule) const
    {
        readMap(top, "units", demands_, [&](DemandIndex demand, const JsonCursor& at) {
            const auto& pool = problem_->demands[demand].pool;
            if (!pool) {
                at.fault("this demand is of a count, not of a pool");
                return;
            }
            schedule.units[demand] = findIn(problem_->pools[*pool].units, "unit in this pool", at);
        });
    }

    [[nodiscard]] OvenProgram readProgram(const JsonCursor& list) const
    {
        OvenProgram result;
        list.forEachItem([&](const JsonCursor& at) {
            const auto parts = at.exactly(2, "[minute, °C or null]");
            ProgramEntry entry{planTime(parts[0].whole(0, minuteOf(problem_->horizon))), {}};
            if (!parts[1].isNull()) {
                entry.setC = static_cast<int>(parts[1].whole(-mostInProblem, mostInProblem));
            }
            if (!result.empty() && entry.at <= result.back().at) {
                at.fault("the minutes of a program must rise");
            }
            result.push_back(entry);
        });
        return result;
    }

    const Problem* problem_;
    JsonFault* fault_;
    IdTable<TaskIndex> tasks_{"task"};
    IdTable<DemandIndex> demands_{"demand"};
    IdTable<CookIndex> cooks_{"cook"};
    IdTable<OvenIndex> ovens_{"oven"};
    IdTable<OvenDemandIndex> ovenDemands_{"oven demand"};
    IdTable<ChoiceIndex> choices_{"choice"};
};

} // namespace

Result<Schedule> readSchedule(std::string_view text, const Problem& problem)
{
    const Result<JsonValue> tree = parseJson(text);
    if (!tree) {
        return unreadable("schedule", tree.error());
    }
    JsonFault fault;
    Schedule schedule = ScheduleReader(problem, fault).read(*tree);
    if (fault.first()) {
        return unreadable("schedule", *fault.first());
    }
    return schedule;
}

Result<Schedule> loadSchedule(const std::string& file, const Problem& problem)
{
    const Result<std::string> text = readTextFile(file);
    return text ? readSchedule(*text, problem) : text.error();
}

} // namespace suppertide
