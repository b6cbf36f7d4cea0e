#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "core/exchange/problem_json.h"

namespace suppertide {

namespace {

using Json = nlohmann::ordered_json;

/// Text that is not UTF-8 cannot come from a file of ours; it is written with replacement marks.
std::string asText(const Json& value)
{
    return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// "[[0, 600], [900, 4320]]"
Json toJson(const Interval& when)
{
    return Json::array({minuteOf(when.start), minuteOf(when.end)});
}

Json toJson(const std::vector<Interval>& intervals)
{
    Json result = Json::array();
    for (const Interval& each : intervals) {
        result.push_back(toJson(each));
    }
    return result;
}

/// A whole number, or one with up to three decimals: the double next to it prints as just that.
Json toJson(std::int64_t thousandths)
{
    if (thousandths % 1000 == 0) {
        return thousandths / 1000;
    }
    return static_cast<double>(thousandths) / 1000.0;
}

template <typename T>
void addUnless(Json& object, const char* key, const T& value, const T& absent)
{
    if (value != absent) {
        object[key] = value;
    }
}

template <typename T>
void addIf(Json& object, const char* key, const std::optional<T>& value)
{
    if (value) {
        object[key] = *value;
    }
}

class ProblemWriter
{
public:
    explicit ProblemWriter(const Problem& problem) : problem_(&problem) {}

    [[nodiscard]] std::string write() const
    {
        std::string result = "{\"format\": \"suppertide-problem\", \"version\": 1";
        if (!problem_->name.empty()) {
            result += fmt::format(",\n \"name\": {}", asText(problem_->name));
        }
        result += fmt::format(",\n \"horizon\": {}", minuteOf(problem_->horizon));
        add(result, "tasks", problem_->tasks, [this](const Task& task) { return one(task); });
        add(result, "lags", problem_->lags, [this](const Lag& lag) { return one(lag); });
        add(result, "counts", problem_->counts, [](const Count& count) {
            return Json{{"id", count.id}, {"capacity", count.capacity}};
        });
        add(result, "pools", problem_->pools, [](const Pool& pool) { return one(pool); });
        add(result, "demands", problem_->demands, [this](const Demand& d) { return one(d); });
        add(result, "cooks", problem_->cooks, [this](const Cook& cook) { return one(cook); });
        add(result, "ovens", problem_->ovens, [](const Oven& oven) { return one(oven); });
        add(result, "oven_demands", problem_->ovenDemands,
            [this](const OvenDemand& demand) { return one(demand); });
        add(result, "choices", problem_->choices, [this](const Choice& c) { return one(c); });
        if (problem_->costs != Costs{}) {
            result += fmt::format(",\n \"costs\": {}", asText(costs()));
        }
        return result + "}\n";
    }

private:
    template <typename List, typename WriteOne>
    static void add(std::string& text, std::string_view key, const List& list, WriteOne writeOne)
    {
        if (list.empty()) {
            return;
        }
        text += fmt::format(",\n \"{}\": [", key);
        const char* separator = "\n  ";
        for (const auto& item : list) {
            text += separator + asText(writeOne(item));
            separator = ",\n  ";
        }
        text += "]";
    }

    [[nodiscard]] Json point(const TaskPoint& at) const
    {
        return Json::array({problem_->tasks[at.task].id, at.edge == Edge::Start ? "start" : "end"});
    }
    [[nodiscard]] Interval wholeHorizon() const { return {planTime(0), problem_->horizon}; }

    /// The ids of some entries of a list.
    template <typename Index, typename Item>
    static Json ids(const std::vector<Index>& chosen, const IndexedVector<Index, Item>& list)
    {
        Json result = Json::array();
        for (const Index index : chosen) {
            result.push_back(list[index].id);
        }
        return result;
    }

    [[nodiscard]] Json one(const Task& task) const
    {
        Json result{{"id", task.id}, {"duration", task.duration.count()}};
        if (task.window != wholeHorizon()) {
            result["window"] = toJson(task.window);
        }
        if (task.hands) {
            Json hands{{"attention", task.hands->attention.percent()}};
            addUnless(hands, "cooks", task.hands->cooks, 1);
            addIf(hands, "skill", task.hands->skill);
            result["hands"] = std::move(hands);
        }
        addUnless(result, "at_table", task.atTable, false);
        return result;
    }

    [[nodiscard]] Json one(const Lag& lag) const
    {
        Json result{{"id", lag.id}, {"from", point(lag.from)}, {"to", point(lag.to)}};
        if (lag.min) {
            result["min"] = lag.min->count();
        }
        if (lag.max) {
            result["max"] = lag.max->count();
        }
        addUnless(result, "loss", lag.loss, std::int64_t{0});
        return result;
    }

    [[nodiscard]] static Json one(const Pool& pool)
    {
        Json units = Json::array();
        for (const PoolUnit& unit : pool.units) {
            Json each{{"id", unit.id}};
            addUnless(each, "size", unit.size, std::int64_t{0});
            units.push_back(std::move(each));
        }
        return {{"id", pool.id}, {"units", std::move(units)}};
    }

    [[nodiscard]] Json one(const Demand& demand) const
    {
        Json result{{"id", demand.id}, {"from", point(demand.from)}, {"to", point(demand.to)}};
        if (demand.count) {
            result["count"] = problem_->counts[*demand.count].id;
            addUnless(result, "amount", demand.amount, std::int64_t{1});
        }
        if (demand.pool) {
            const Pool& pool = problem_->pools[*demand.pool];
            result["pool"] = pool.id;
            addUnless(result, "min_size", demand.minSize, std::int64_t{0});
            if (demand.units) {
                result["units"] = ids(*demand.units, pool.units);
            }
        }
        return result;
    }

    [[nodiscard]] Json one(const Cook& cook) const
    {
        Json result{{"id", cook.id}};
        addUnless(result, "skills", cook.skills, {});
        if (cook.free != std::vector{wholeHorizon()}) {
            result["free"] = toJson(cook.free);
        }
        if (!cook.table.empty()) {
            result["table"] = toJson(cook.table);
        }
        for (const TableAfter& after : cook.tableAfter) {
            result["table_after"].push_back(
                {{"event", problem_->tasks[after.event].id}, {"minutes", after.minutes.count()}});
        }
        return result;
    }

    [[nodiscard]] static Json one(const Oven& oven)
    {
        return {{"id", oven.id},
                {"shelves", oven.shelves},
                {"min_c", oven.minC},
                {"max_c", oven.maxC},
                {"start_c", oven.startC},
                {"ambient_c", oven.ambientC},
                {"heat_c_per_min", toJson(oven.heatMilliCPerMin)},
                {"cool_c_per_min", toJson(oven.coolMilliCPerMin)}};
    }

    [[nodiscard]] Json one(const OvenDemand& demand) const
    {
        Json result{{"id", demand.id}, {"from", point(demand.from)}, {"to", point(demand.to)}};
        addUnless(result, "shelves", demand.shelves, std::int64_t{1});
        result["accept"] = Json::array({demand.acceptLow, demand.acceptHigh});
        addIf(result, "prefer", demand.prefer);
        if (demand.ovens) {
            result["ovens"] = ids(*demand.ovens, problem_->ovens);
        }
        addIf(result, "group", demand.group);
        addIf(result, "mode", demand.mode);
        return result;
    }

    [[nodiscard]] Json one(const Choice& choice) const
    {
        Json options = Json::array();
        for (const Option& option : choice.options) {
            Json each{{"id", option.id}, {"tasks", ids(option.tasks, problem_->tasks)}};
            addUnless(each, "cost", option.cost, std::int64_t{0});
            options.push_back(std::move(each));
        }
        return {{"id", choice.id}, {"options", std::move(options)}};
    }

    [[nodiscard]] Json one(const Quiet& quiet) const
    {
        if (quiet.before) {
            return {{"before", problem_->tasks[*quiet.before].id},
                    {"minutes", quiet.minutes.count()},
                    {"rate", quiet.rate}};
        }
        return {{"from", minuteOf(quiet.when.start)},
                {"to", minuteOf(quiet.when.end)},
                {"rate", quiet.rate}};
    }

    [[nodiscard]] Json costs() const
    {
        const Costs& costs = problem_->costs;
        constexpr std::int64_t none = 0;
        Json result = Json::object();
        for (const Quiet& quiet : costs.quiet) {
            result["quiet"].push_back(one(quiet));
        }
        addUnless(result, "oven_change", costs.ovenChange, none);
        addUnless(result, "oven_on_minute", costs.ovenOnMinute, none);
        addUnless(result, "oven_switch_on", costs.ovenSwitchOn, none);
        addUnless(result, "oven_switch_on_within", costs.ovenSwitchOnWithin, none);
        addUnless(result, "prefer_c", costs.preferC, none);
        addUnless(result, "session", costs.session, none);
        addUnless(result, "session_gap", costs.sessionGap.count(), none);
        if (!costs.before.empty() || costs.beforeRate != 0 || costs.beforeMoved != 0) {
            Json starts = Json::object();
            for (const BeforeStart& each : costs.before) {
                starts[problem_->tasks[each.task].id] = minuteOf(each.start);
            }
            result["before"] = {{"starts", std::move(starts)}, {"rate", costs.beforeRate}};
            addUnless(result["before"], "moved", costs.beforeMoved, none);
        }
        return result;
    }

    const Problem* problem_;
};

} // namespace

std::string writeProblem(const Problem& problem)
{
    return ProblemWriter(problem).write();
}

} // namespace suppertide
