#include "core/advice/requirement.h"

#include <algorithm>

namespace suppertide {

namespace {

template <typename Index, typename T>
std::optional<Index> indexOfId(const IndexedVector<Index, T>& list, std::string_view id)
{
    for (const Index index : list.indices()) {
        if (list[index].id == id) {
            return index;
        }
    }
    return std::nullopt;
}

template <typename Index>
std::optional<Requirement> as(const std::optional<Index>& index)
{
    return index ? std::optional(Requirement{*index}) : std::nullopt;
}

/// Compares what one requirement says and needs in two problems.
class Comparison
{
public:
    Comparison(const Problem& before, const Problem& after) : before_(before), after_(after) {}

    [[nodiscard]] bool isSame(ChoiceIndex one, ChoiceIndex other) const
    {
        const auto& options = before_.choices[one].options;
        return std::ranges::equal(options, after_.choices[other].options, {}, &Option::id,
                                  &Option::id);
    }
    [[nodiscard]] bool isSame(const WindowOf& one, const WindowOf& other) const
    {
        return before_.tasks[one.task].window == after_.tasks[other.task].window &&
               isAsLong(one.task, other.task);
    }
    [[nodiscard]] bool isSame(LagIndex one, LagIndex other) const
    {
        const Lag& a = before_.lags[one];
        const Lag& b = after_.lags[other];
        return a.min == b.min && a.max == b.max && isAsLong(a.from.task, b.from.task) &&
               isAsLong(a.to.task, b.to.task);
    }
    [[nodiscard]] bool isSame(DemandIndex one, DemandIndex other) const
    {
        const Demand& a = before_.demands[one];
        const Demand& b = after_.demands[other];
        if (a.amount != b.amount || a.minSize != b.minSize || a.units != b.units ||
            a.count.has_value() != b.count.has_value() || !isHeldAsLong(a, b)) {
            return false;
        }
        if (a.count) {
            return before_.counts[*a.count].capacity == after_.counts[*b.count].capacity;
        }
        return std::ranges::equal(before_.pools[*a.pool].units, after_.pools[*b.pool].units, {},
                                  &PoolUnit::size, &PoolUnit::size);
    }
    [[nodiscard]] bool isSame(OvenDemandIndex one, OvenDemandIndex other) const
    {
        const OvenDemand& a = before_.ovenDemands[one];
        const OvenDemand& b = after_.ovenDemands[other];
        return a.acceptLow == b.acceptLow && a.acceptHigh == b.acceptHigh &&
               a.shelves == b.shelves && a.mode == b.mode && a.ovens == b.ovens &&
               a.group == b.group && before_.ovens == after_.ovens && isHeldAsLong(a, b);
    }
    [[nodiscard]] bool isSame(const HandsOf& one, const HandsOf& other) const
    {
        const auto isAlike = [](const Cook& a, const Cook& b) {
            return a.free == b.free && a.skills == b.skills &&
                   a.tableAfter.size() == b.tableAfter.size();
        };
        return before_.tasks[one.task].hands == after_.tasks[other.task].hands &&
               isAsLong(one.task, other.task) &&
               std::ranges::equal(before_.cooks, after_.cooks, isAlike);
    }

private:
    [[nodiscard]] bool isAsLong(TaskIndex one, TaskIndex other) const
    {
        return before_.tasks[one].duration == after_.tasks[other].duration;
    }
    template <typename AnyDemand>
    [[nodiscard]] bool isHeldAsLong(const AnyDemand& one, const AnyDemand& other) const
    {
        return isAsLong(one.from.task, other.from.task) && isAsLong(one.to.task, other.to.task);
    }

    const Problem& before_;
    const Problem& after_;
};

} // namespace

std::optional<Requirement> findRequirement(const Problem& problem, const std::string& name)
{
    const std::size_t colon = name.find(':');
    if (colon == std::string::npos) {
        return std::nullopt;
    }
    const std::string_view kind = std::string_view(name).substr(0, colon);
    const std::string_view id = std::string_view(name).substr(colon + 1);
    if (kind == "lag") {
        return as(indexOfId(problem.lags, id));
    }
    if (kind == "demand") {
        return as(indexOfId(problem.demands, id));
    }
    if (kind == "oven") {
        return as(indexOfId(problem.ovenDemands, id));
    }
    if (kind == "choice") {
        return as(indexOfId(problem.choices, id));
    }
    const auto task = indexOfId(problem.tasks, id);
    if (task && kind == "window") {
        return Requirement{WindowOf{*task}};
    }
    if (task && kind == "hands") {
        return Requirement{HandsOf{*task}};
    }
    return std::nullopt;
}

std::vector<Requirement> requirementsOf(const Problem& problem,
                                        const std::vector<std::string>& names)
{
    std::vector<Requirement> requirements;
    for (const std::string& name : names) {
        if (const auto found = findRequirement(problem, name)) {
            requirements.push_back(*found);
        }
    }
    return requirements;
}

std::vector<TaskIndex> tasksOf(const Problem& problem, const Requirement& requirement)
{
    struct Named
    {
        const Problem& problem;

        std::vector<TaskIndex> operator()(ChoiceIndex choice) const
        {
            std::vector<TaskIndex> tasks;
            for (const Option& option : problem.choices[choice].options) {
                tasks.insert(tasks.end(), option.tasks.begin(), option.tasks.end());
            }
            return tasks;
        }
        std::vector<TaskIndex> operator()(const WindowOf& window) const { return {window.task}; }
        std::vector<TaskIndex> operator()(const HandsOf& hands) const { return {hands.task}; }
        std::vector<TaskIndex> operator()(LagIndex lag) const
        {
            return {problem.lags[lag].from.task, problem.lags[lag].to.task};
        }
        std::vector<TaskIndex> operator()(DemandIndex demand) const
        {
            return {problem.demands[demand].from.task, problem.demands[demand].to.task};
        }
        std::vector<TaskIndex> operator()(OvenDemandIndex demand) const
        {
            return {problem.ovenDemands[demand].from.task, problem.ovenDemands[demand].to.task};
        }
    };
    return std::visit(Named{problem}, requirement);
}

bool touches(const Problem& before, const std::vector<std::string>& conflict, const Problem& after)
{
    const Comparison comparison(before, after);
    return std::ranges::any_of(conflict, [&](const std::string& name) {
        const auto one = findRequirement(before, name);
        const auto other = findRequirement(after, name);
        if (!one || !other) {
            return one.has_value();
        }
        return !std::visit(
            [&](const auto& requirement) {
                using Kind = std::decay_t<decltype(requirement)>;
                return comparison.isSame(requirement, std::get<Kind>(*other));
            },
            *one);
    });
}

} // namespace suppertide
