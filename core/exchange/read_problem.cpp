#include <fmt/format.h>

#include <unordered_set>

#include "core/exchange/id_table.h"
#include "core/exchange/json_reader.h"
#include "core/exchange/problem_json.h"
#include "core/exchange/problem_reading.h"

namespace suppertide {

namespace {

constexpr int coldestC = -273; // absolute zero, rounded up
constexpr int hottestC = 2000;

/// Reads the lists in the order in which they refer to each other.
class ProblemReader
{
public:
    explicit ProblemReader(JsonFault& fault) : fault_(&fault) {}

    Problem read(const JsonValue& tree)
    {
        JsonFields top = JsonCursor{tree, "", *fault_}.fields();
        readHeader(top, "suppertide-problem");
        if (const auto name = top.optional("name")) {
            problem_.name = name->anyText();
        }
        problem_.horizon = planTime(top.required("horizon").whole(1, mostInProblem));
        readList(top, "tasks", problem_.tasks, tasks_, [this](auto& f) { return readTask(f); });
        IdTable<LagIndex> lags("lag");
        readList(top, "lags", problem_.lags, lags, [this](auto& f) { return readLag(f); });
        readList(top, "counts", problem_.counts, counts_, readCount);
        readList(top, "pools", problem_.pools, pools_, [this](auto& f) { return readPool(f); });
        IdTable<DemandIndex> demands("demand");
        readList(top, "demands", problem_.demands, demands,
                 [this](auto& f) { return readDemand(f); });
        IdTable<CookIndex> cooks("cook");
        readList(top, "cooks", problem_.cooks, cooks, [this](auto& f) { return readCook(f); });
        readList(top, "ovens", problem_.ovens, ovens_, readOven);
        IdTable<OvenDemandIndex> ovenDemands("oven demand");
        readList(top, "oven_demands", problem_.ovenDemands, ovenDemands,
                 [this](auto& f) { return readOvenDemand(f); });
        IdTable<ChoiceIndex> choices("choice");
        readList(top, "choices", problem_.choices, choices,
                 [this](auto& f) { return readChoice(f); });
        if (const auto costs = top.optional("costs")) {
            readCosts(costs->fields());
        }
        top.done();
        return std::move(problem_);
    }

private:
    /// Every entry has an id of its own; `readOne` takes its other keys.
    template <typename Index, typename Item, typename ReadOne>
    static void readList(const JsonCursor& list, IndexedVector<Index, Item>& items,
                         IdTable<Index>& ids, ReadOne readOne)
    {
        list.forEachItem([&](const JsonCursor& at) {
            JsonFields fields = at.fields();
            std::string id = fields.takeId();
            ids.add(id, fields);
            Item item = readOne(fields);
            item.id = std::move(id);
            fields.done();
            items.push_back(std::move(item));
        });
    }
    template <typename Index, typename Item, typename ReadOne>
    static void readList(JsonFields& top, std::string_view key, IndexedVector<Index, Item>& items,
                         IdTable<Index>& ids, ReadOne readOne)
    {
        if (const auto list = top.optional(key)) {
            readList(*list, items, ids, readOne);
        }
    }

    static std::int64_t amountOr(JsonFields& fields, std::string_view key, std::int64_t absent)
    {
        const auto value = fields.optional(key);
        return value ? value->whole(0, mostInProblem) : absent;
    }
    static std::optional<std::string> optionalText(JsonFields& fields, std::string_view key)
    {
        const auto value = fields.optional(key);
        return value ? std::optional{value->text()} : std::nullopt;
    }
    static std::int64_t requiredAmount(JsonFields& fields, std::string_view key)
    {
        return fields.required(key).whole(0, mostInProblem);
    }
    static int requiredDegrees(JsonFields& fields, std::string_view key)
    {
        return degrees(fields.required(key));
    }
    static int degrees(const JsonCursor& at)
    {
        return static_cast<int>(at.whole(coldestC, hottestC));
    }

    struct Bounds
    {
        std::int64_t low;
        std::int64_t high;
    };
    static Bounds readBounds(const JsonCursor& at, std::int64_t least, std::int64_t most)
    {
        const auto ends = at.exactly(2, "[low, high]");
        const Bounds bounds{ends[0].whole(least, most), ends[1].whole(least, most)};
        if (bounds.low > bounds.high) {
            at.fault(fmt::format("{} is above {}", bounds.low, bounds.high));
        }
        return bounds;
    }
    [[nodiscard]] std::int64_t horizon() const { return minuteOf(problem_.horizon); }
    [[nodiscard]] Interval wholeHorizon() const { return {planTime(0), problem_.horizon}; }

    /// Rising intervals that are not empty and do not overlap; they may meet.
    [[nodiscard]] std::vector<Interval> readIntervals(const JsonCursor& list) const
    {
        std::vector<Interval> result;
        list.forEachItem([&](const JsonCursor& at) {
            const auto [low, high] = readBounds(at, 0, horizon());
            const Interval next = interval(low, high);
            if (next.empty()) {
                at.fault("the interval is empty");
            }
            if (!result.empty() && next.start < result.back().end) {
                at.fault("intervals must rise and not overlap");
            }
            result.push_back(next);
        });
        return result;
    }

    /// Different entries of a table.
    template <typename Index>
    static std::vector<Index> readDistinct(const JsonCursor& list, const IdTable<Index>& table,
                                           std::size_t least)
    {
        std::vector<Index> result;
        std::unordered_set<Index> seen;
        list.forEachItem(
            [&](const JsonCursor& at) {
                result.push_back(table.read(at));
                if (!seen.insert(result.back()).second) {
                    at.fault("stands twice in this list");
                }
            },
            least);
        return result;
    }

    [[nodiscard]] TaskPoint readPoint(const JsonCursor& at) const
    {
        const auto parts = at.exactly(2, R"([task, "start" or "end"])");
        TaskPoint result{tasks_.read(parts[0]), Edge::Start};
        const std::string edge = parts[1].anyText();
        if (edge == "end") {
            result.edge = Edge::End;
        } else if (edge != "start") {
            parts[1].fault(R"(expected "start" or "end")");
        }
        return result;
    }

    [[nodiscard]] Task readTask(JsonFields& fields) const
    {
        Task task;
        task.duration = Minutes{requiredAmount(fields, "duration")};
        task.window = wholeHorizon();
        if (const auto window = fields.optional("window")) {
            const auto [low, high] = readBounds(*window, 0, horizon());
            task.window = interval(low, high);
        }
        if (const auto hands = fields.optional("hands")) {
            task.hands = readHands(hands->fields());
        }
        if (const auto atTable = fields.optional("at_table")) {
            task.atTable = atTable->boolean();
        }
        return task;
    }

    static Hands readHands(JsonFields fields)
    {
        Hands hands;
        hands.attention =
            Attention::percent(static_cast<int>(fields.required("attention").whole(0, 100)));
        if (const auto cooks = fields.optional("cooks")) {
            hands.cooks = static_cast<int>(cooks->whole(1, mostInProblem));
        }
        hands.skill = optionalText(fields, "skill");
        fields.done();
        return hands;
    }

    [[nodiscard]] Lag readLag(JsonFields& fields) const
    {
        Lag lag;
        lag.from = readPoint(fields.required("from"));
        lag.to = readPoint(fields.required("to"));
        const auto bound = [&fields](std::string_view key) -> std::optional<Minutes> {
            const auto value = fields.optional(key);
            return value ? std::optional{Minutes{value->whole(-mostInProblem, mostInProblem)}}
                         : std::nullopt;
        };
        lag.min = bound("min");
        lag.max = bound("max");
        lag.loss = amountOr(fields, "loss", 0);
        return lag;
    }

    static Count readCount(JsonFields& fields)
    {
        Count count;
        count.capacity = requiredAmount(fields, "capacity");
        return count;
    }

    [[nodiscard]] Pool readPool(JsonFields& fields)
    {
        Pool pool;
        IdTable<UnitIndex> units("unit in this pool");
        readList(fields.required("units"), pool.units, units, [](JsonFields& unit) {
            PoolUnit result;
            result.size = amountOr(unit, "size", 0);
            return result;
        });
        units_.push_back(std::move(units));
        return pool;
    }

    [[nodiscard]] Demand readDemand(JsonFields& fields) const
    {
        Demand demand;
        if (fields.has("count") == fields.has("pool")) {
            fields.fault("expected either “count” or “pool”");
        }
        demand.from = readPoint(fields.required("from"));
        demand.to = readPoint(fields.required("to"));
        if (const auto count = fields.optional("count")) {
            demand.count = counts_.read(*count);
            demand.amount = amountOr(fields, "amount", 1);
            return demand;
        }
        demand.pool = pools_.read(fields.required("pool"));
        demand.minSize = amountOr(fields, "min_size", 0);
        if (const auto units = fields.optional("units"); units && units_.contains(*demand.pool)) {
            demand.units = readDistinct(*units, units_[*demand.pool], 1);
        }
        return demand;
    }

    [[nodiscard]] Cook readCook(JsonFields& fields) const
    {
        Cook cook;
        if (const auto skills = fields.optional("skills")) {
            std::unordered_set<std::string> seen;
            skills->forEachItem([&](const JsonCursor& at) {
                cook.skills.push_back(at.text());
                if (!seen.insert(cook.skills.back()).second) {
                    at.fault("stands twice in this list");
                }
            });
        }
        const auto free = fields.optional("free");
        cook.free = free ? readIntervals(*free) : std::vector{wholeHorizon()};
        if (const auto table = fields.optional("table")) {
            cook.table = readIntervals(*table);
        }
        if (const auto after = fields.optional("table_after")) {
            after->forEachItem([&](const JsonCursor& at) {
                JsonFields entry = at.fields();
                cook.tableAfter.push_back({tasks_.read(entry.required("event")),
                                           Minutes{requiredAmount(entry, "minutes")}});
                entry.done();
            });
        }
        return cook;
    }

    static Oven readOven(JsonFields& fields)
    {
        constexpr std::int64_t fastest = 1'000'000'000; // thousandths of a °C a minute
        Oven oven;
        oven.shelves = requiredAmount(fields, "shelves");
        oven.minC = requiredDegrees(fields, "min_c");
        oven.maxC = requiredDegrees(fields, "max_c");
        oven.startC = requiredDegrees(fields, "start_c");
        oven.ambientC = requiredDegrees(fields, "ambient_c");
        oven.heatMilliCPerMin = fields.required("heat_c_per_min").thousandths(fastest);
        oven.coolMilliCPerMin = fields.required("cool_c_per_min").thousandths(fastest);
        if (oven.minC > oven.maxC) {
            fields.fault("min_c is above max_c");
        }
        return oven;
    }

    [[nodiscard]] OvenDemand readOvenDemand(JsonFields& fields) const
    {
        OvenDemand demand;
        if (const auto ovens = fields.optional("ovens")) {
            demand.ovens = readDistinct(*ovens, ovens_, 1);
        }
        demand.from = readPoint(fields.required("from"));
        demand.to = readPoint(fields.required("to"));
        demand.shelves = amountOr(fields, "shelves", 1);
        const auto [low, high] = readBounds(fields.required("accept"), coldestC, hottestC);
        demand.acceptLow = static_cast<int>(low);
        demand.acceptHigh = static_cast<int>(high);
        if (const auto prefer = fields.optional("prefer")) {
            demand.prefer = degrees(*prefer);
        }
        demand.group = optionalText(fields, "group");
        demand.mode = optionalText(fields, "mode");
        return demand;
    }

    [[nodiscard]] Choice readChoice(JsonFields& fields)
    {
        Choice choice;
        IdTable<OptionIndex> options("option");
        readList(fields.required("options"), choice.options, options, [this](JsonFields& option) {
            Option result;
            if (const auto tasks = option.optional("tasks")) {
                result.tasks = readDistinct(*tasks, tasks_, 0);
            }
            result.cost = amountOr(option, "cost", 0);
            for (const TaskIndex task : result.tasks) {
                if (!optional_.insert(task).second) {
                    option.fault("one of its tasks stands in another option already");
                }
            }
            return result;
        });
        if (choice.options.empty()) {
            fields.fault("there are no options");
        }
        return choice;
    }

    [[nodiscard]] Quiet readQuiet(const JsonCursor& at) const
    {
        JsonFields fields = at.fields();
        Quiet quiet;
        quiet.rate = requiredAmount(fields, "rate");
        if (fields.has("before") || fields.has("minutes")) {
            quiet.before = tasks_.read(fields.required("before"));
            quiet.minutes = Minutes{requiredAmount(fields, "minutes")};
        } else {
            quiet.when = interval(fields.required("from").whole(0, horizon()),
                                  fields.required("to").whole(0, horizon()));
            if (quiet.when.start > quiet.when.end) {
                at.fault("“from” is after “to”");
            }
        }
        fields.done();
        return quiet;
    }

    void readBefore(JsonFields fields)
    {
        Costs& costs = problem_.costs;
        fields.required("starts").forEachEntry([&](const std::string& id, const JsonCursor& at) {
            costs.before.push_back({tasks_.find(id, at), planTime(at.whole(0, horizon()))});
        });
        costs.beforeRate = requiredAmount(fields, "rate");
        costs.beforeMoved = amountOr(fields, "moved", 0);
        fields.done();
    }

    void readCosts(JsonFields fields)
    {
        Costs& costs = problem_.costs;
        if (const auto before = fields.optional("before")) {
            readBefore(before->fields());
        }
        if (const auto quiet = fields.optional("quiet")) {
            quiet->forEachItem([&](const JsonCursor& at) { costs.quiet.push_back(readQuiet(at)); });
        }
        costs.ovenChange = amountOr(fields, "oven_change", 0);
        costs.ovenOnMinute = amountOr(fields, "oven_on_minute", 0);
        costs.ovenSwitchOn = amountOr(fields, "oven_switch_on", 0);
        costs.ovenSwitchOnWithin = amountOr(fields, "oven_switch_on_within", 0);
        costs.preferC = amountOr(fields, "prefer_c", 0);
        costs.session = amountOr(fields, "session", 0);
        costs.sessionGap = Minutes{amountOr(fields, "session_gap", 0)};
        fields.done();
    }

    JsonFault* fault_;
    Problem problem_;
    IdTable<TaskIndex> tasks_{"task"};
    IdTable<CountIndex> counts_{"count"};
    IdTable<PoolIndex> pools_{"pool"};
    IndexedVector<PoolIndex, IdTable<UnitIndex>> units_;
    IdTable<OvenIndex> ovens_{"oven"};
    std::unordered_set<TaskIndex> optional_; // tasks that some option names
};

} // namespace

Result<Problem> readProblem(std::string_view text)
{
    const Result<JsonValue> tree = parseJson(text);
    if (!tree) {
        return unreadable("problem", tree.error());
    }
    JsonFault fault;
    Problem problem = ProblemReader(fault).read(*tree);
    if (fault.first()) {
        return unreadable("problem", *fault.first());
    }
    return problem;
}

Result<Problem> loadProblem(const std::string& file)
{
    const Result<std::string> text = readTextFile(file);
    return text ? readProblem(*text) : text.error();
}

} // namespace suppertide
