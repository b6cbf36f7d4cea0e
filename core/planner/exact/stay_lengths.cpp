#include "core/planner/exact/stay_lengths.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace suppertide::exact {

namespace {

/// The start of `to` is no earlier than so many minutes after that of `from`.
struct Apart
{
    TaskIndex from;
    TaskIndex to;
    std::int64_t minutes = 0;
};

std::int64_t offsetOf(const Problem& problem, const TaskPoint& point)
{
    return point.edge == Edge::End ? problem.tasks[point.task].duration.count() : 0;
}

std::vector<Apart> readLags(const Problem& problem)
{
    std::vector<Apart> result;
    for (const Lag& lag : problem.lags) {
        const std::int64_t from = offsetOf(problem, lag.from);
        const std::int64_t to = offsetOf(problem, lag.to);
        if (lag.min) {
            result.push_back({lag.from.task, lag.to.task, from + lag.min->count() - to});
        }
        if (lag.max) {
            result.push_back({lag.to.task, lag.from.task, to - lag.max->count() - from});
        }
    }
    return result;
}

/// By task: the option that it comes with, numbered through; absent: it is always present.
IndexedVector<TaskIndex, std::optional<std::size_t>> optionsOf(const Problem& problem)
{
    IndexedVector<TaskIndex, std::optional<std::size_t>> result(problem.tasks.size());
    std::size_t number = 0;
    for (const Choice& choice : problem.choices) {
        for (const Option& option : choice.options) {
            for (const TaskIndex task : option.tasks) {
                result[task] = number;
            }
            ++number;
        }
    }
    return result;
}

using Options = IndexedVector<TaskIndex, std::optional<std::size_t>>;

/// How much later at least the one point is than the other; absent: it may be at any time.
std::optional<std::int64_t> leastBetween(const Problem& problem, const std::vector<Apart>& lags,
                                         const Options& options, const TaskPoint& from,
                                         const TaskPoint& to)
{
    const auto isPresent = [&](TaskIndex task) {
        return !options[task] || options[task] == options[from.task] ||
               options[task] == options[to.task];
    };
    IndexedVector<TaskIndex, std::optional<std::int64_t>> starts(problem.tasks.size());
    starts[from.task] = 0;
    // As often as there are tasks at most: lags that no plan keeps would raise them for ever.
    bool isRaised = true;
    for (std::size_t round = 0; isRaised && round < problem.tasks.size(); ++round) {
        isRaised = false;
        for (const Apart& lag : lags) {
            const auto start = starts[lag.from];
            if (!start || !isPresent(lag.to)) {
                continue;
            }
            const std::int64_t least = *start + lag.minutes;
            if (!starts[lag.to] || *starts[lag.to] < least) {
                starts[lag.to] = least;
                isRaised = true;
            }
        }
    }
    const auto start = starts[to.task];
    return start ? std::optional{*start + offsetOf(problem, to) - offsetOf(problem, from)}
                 : std::nullopt;
}

} // namespace

IndexedVector<OvenDemandIndex, StayLength> stayLengths(const Problem& problem)
{
    const std::vector<Apart> lags = readLags(problem);
    const Options options = optionsOf(problem);
    const std::int64_t horizon = minuteOf(problem.horizon);
    IndexedVector<OvenDemandIndex, StayLength> result(problem.ovenDemands.size());
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        const OvenDemand& demand = problem.ovenDemands[index];
        const auto least = leastBetween(problem, lags, options, demand.from, demand.to);
        const auto back = leastBetween(problem, lags, options, demand.to, demand.from);
        result[index].least = std::clamp<std::int64_t>(least.value_or(0), 0, horizon);
        if (back && *back <= 0) {
            result[index].most = -*back;
        }
    }
    return result;
}

} // namespace suppertide::exact
