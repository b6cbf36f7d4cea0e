#include "core/planner/quick_start/proof.h"

#include <algorithm>
#include <set>

#include "core/assign/oven_pairs.h"
#include "core/planner/quick_start/difference_network.h"

namespace suppertide::quick_start {

namespace {

/// start(to) ≥ start(from) + least, as long as its requirement is on; task count: the time 0.
struct Arc
{
    std::size_t from = 0;
    std::size_t to = 0;
    Minute least = 0;
    std::optional<std::size_t> requirement; // absent: holds whatever is left out
};

struct Arcs
{
    std::size_t nodes = 0;
    std::vector<Arc> arcs;
    std::vector<std::string> names; // of the requirements
};

/// A task of an option is there in any schedule only if the choice has no other option.
IndexedVector<TaskIndex, bool> alwaysPresent(const Problem& problem)
{
    IndexedVector<TaskIndex, bool> result(problem.tasks.size(), true);
    for (const Choice& choice : problem.choices) {
        for (const Option& option : choice.options) {
            for (const TaskIndex task : option.tasks) {
                result[task] = false;
            }
        }
    }
    return result;
}

Arcs arcsOf(const Problem& problem, const IndexedVector<TaskIndex, bool>& present)
{
    Arcs result;
    result.nodes = problem.tasks.size() + 1;
    const std::size_t zero = problem.tasks.size();
    const auto bounded = [](Minute minutes) { return std::clamp(minutes, -never / 4, never / 4); };
    for (const TaskIndex index : problem.tasks.indices()) {
        if (!present[index]) {
            continue;
        }
        const Task& task = problem.tasks[index];
        const Minute duration = task.duration.count();
        result.arcs.push_back({zero, index.value(), 0, std::nullopt});
        result.arcs.push_back({index.value(), zero, duration - minuteOf(problem.horizon), {}});
        result.names.push_back("window:" + task.id);
        const std::size_t requirement = result.names.size() - 1;
        result.arcs.push_back({zero, index.value(), minuteOf(task.window.start), requirement});
        result.arcs.push_back(
            {index.value(), zero, duration - minuteOf(task.window.end), requirement});
    }
    const auto offset = [&](const TaskPoint& point) {
        return point.edge == Edge::End ? problem.tasks[point.task].duration.count() : 0;
    };
    for (const Lag& lag : problem.lags) {
        if (!present[lag.from.task] || !present[lag.to.task]) {
            continue;
        }
        result.names.push_back("lag:" + lag.id);
        const std::size_t requirement = result.names.size() - 1;
        const std::size_t from = lag.from.task.value();
        const std::size_t to = lag.to.task.value();
        const Minute shift = offset(lag.from) - offset(lag.to);
        if (lag.min) {
            result.arcs.push_back({from, to, bounded(lag.min->count()) + shift, requirement});
        }
        if (lag.max) {
            result.arcs.push_back({to, from, -bounded(lag.max->count()) - shift, requirement});
        }
    }
    return result;
}

/// The requirements of a cycle that adds up to more than 0 (Bellman, Ford); absent: there is none.
std::optional<std::vector<std::size_t>> positiveCycle(const Arcs& network,
                                                      const std::vector<bool>& on)
{
    std::vector<Minute> start(network.nodes, 0);
    std::vector<std::optional<std::size_t>> reason(network.nodes);
    const std::size_t none = network.nodes;
    std::size_t raised = 0;
    for (std::size_t round = 0; round <= network.nodes; ++round) {
        raised = none;
        for (std::size_t i = 0; i < network.arcs.size(); ++i) {
            const Arc& arc = network.arcs[i];
            if ((!arc.requirement || on[*arc.requirement]) &&
                start[arc.from] + arc.least > start[arc.to]) {
                start[arc.to] = std::min(never, start[arc.from] + arc.least);
                reason[arc.to] = i;
                raised = arc.to;
            }
        }
        if (raised == none) {
            return std::nullopt;
        }
    }
    std::size_t node = raised;
    for (std::size_t i = 0; i < network.nodes; ++i) {
        node = network.arcs[*reason[node]].from;
    }
    std::set<std::size_t> requirements;
    const std::size_t first = node;
    do {
        const Arc& arc = network.arcs[*reason[node]];
        if (arc.requirement) {
            requirements.insert(*arc.requirement);
        }
        node = arc.from;
    } while (node != first);
    return std::vector<std::size_t>(requirements.begin(), requirements.end());
}

bool someCooksCan(const Problem& problem, const Task& task)
{
    int able = 0;
    for (const Cook& cook : problem.cooks) {
        const auto& skill = task.hands->skill;
        const bool skilled = !skill || std::find(cook.skills.begin(), cook.skills.end(), *skill) !=
                                           cook.skills.end();
        const bool longEnough =
            std::any_of(cook.free.begin(), cook.free.end(),
                        [&](const Interval& free) { return free.length() >= task.duration; });
        able += skilled && longEnough ? 1 : 0;
    }
    return able >= task.hands->cooks;
}

/// Something is held in any schedule: the two ends lie in one task that is always there.
bool surelyHeld(const Problem& problem, const IndexedVector<TaskIndex, bool>& present,
                const TaskPoint& from, const TaskPoint& to)
{
    return from.task == to.task && present[from.task] && from.edge == Edge::Start &&
           to.edge == Edge::End && problem.tasks[from.task].duration.count() > 0;
}

bool someUnitServes(const Problem& problem, const Demand& demand)
{
    if (demand.count) {
        return demand.amount <= problem.counts[*demand.count].capacity;
    }
    const auto& units = problem.pools[*demand.pool].units;
    for (const UnitIndex unit : units.indices()) {
        const bool named = !demand.units || std::find(demand.units->begin(), demand.units->end(),
                                                      unit) != demand.units->end();
        if (named && units[unit].size >= demand.minSize) {
            return true;
        }
    }
    return false;
}

bool someOvenServes(const Problem& problem, const OvenDemand& demand, Minutes duration)
{
    const OvenStay stay = ovenStay(demand, {planTime(0), planTime(0) + duration});
    for (const OvenIndex oven : problem.ovens.indices()) {
        const bool named = !demand.ovens || std::find(demand.ovens->begin(), demand.ovens->end(),
                                                      oven) != demand.ovens->end();
        if (named && ovenSuits(problem.ovens[oven], stay) &&
            demand.shelves <= problem.ovens[oven].shelves) {
            return true;
        }
    }
    return false;
}

} // namespace

std::optional<std::vector<std::string>> lagConflict(const Problem& problem,
                                                    const IndexedVector<TaskIndex, bool>& present)
{
    const Arcs network = arcsOf(problem, present);
    std::vector<bool> on(network.names.size(), true);
    auto cycle = positiveCycle(network, on);
    if (!cycle) {
        return std::nullopt;
    }
    on.assign(on.size(), false);
    for (const std::size_t requirement : *cycle) {
        on[requirement] = true;
    }
    for (const std::size_t requirement : *cycle) {
        on[requirement] = false;
        on[requirement] = !positiveCycle(network, on).has_value();
    }
    std::vector<std::string> result;
    for (std::size_t i = 0; i < on.size(); ++i) {
        if (on[i]) {
            result.push_back(network.names[i]);
        }
    }
    return result;
}

std::optional<std::vector<std::string>> provenConflict(const Problem& problem)
{
    if (auto conflict = lagConflict(problem, alwaysPresent(problem))) {
        return conflict;
    }
    const auto present = alwaysPresent(problem);
    for (const TaskIndex index : problem.tasks.indices()) {
        const Task& task = problem.tasks[index];
        if (present[index] && task.needsCooks() && !someCooksCan(problem, task)) {
            return std::vector<std::string>{"hands:" + task.id};
        }
    }
    for (const Demand& demand : problem.demands) {
        if (surelyHeld(problem, present, demand.from, demand.to) &&
            !someUnitServes(problem, demand)) {
            return std::vector<std::string>{"demand:" + demand.id};
        }
    }
    for (const OvenDemand& demand : problem.ovenDemands) {
        if (surelyHeld(problem, present, demand.from, demand.to) &&
            !someOvenServes(problem, demand, problem.tasks[demand.from.task].duration)) {
            return std::vector<std::string>{"oven:" + demand.id};
        }
    }
    return std::nullopt;
}

std::int64_t provenBound(const Problem& problem)
{
    std::int64_t bound = 0;
    for (const Choice& choice : problem.choices) {
        std::int64_t least = choice.options[OptionIndex{0}].cost;
        for (const Option& option : choice.options) {
            least = std::min(least, option.cost);
        }
        bound += least;
    }
    const auto present = alwaysPresent(problem);
    int cooks = 0;
    for (const TaskIndex index : problem.tasks.indices()) {
        const Task& task = problem.tasks[index];
        if (present[index] && task.needsCooks()) {
            cooks = std::max(cooks, task.hands->cooks);
        }
    }
    return bound + problem.costs.session * cooks;
}

} // namespace suppertide::quick_start
