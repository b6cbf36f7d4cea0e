#include "core/planner/exact/least_lengths.h"

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

} // namespace

IndexedVector<OvenDemandIndex, std::int64_t> leastLengths(const Problem& problem)
{
    const std::vector<Apart> lags = readLags(problem);
    const auto options = optionsOf(problem);
    IndexedVector<OvenDemandIndex, std::int64_t> result(problem.ovenDemands.size(), 0);
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        const OvenDemand& demand = problem.ovenDemands[index];
        const auto isPresent = [&](TaskIndex task) {
            return !options[task] || options[task] == options[demand.from.task] ||
                   options[task] == options[demand.to.task];
        };
        IndexedVector<TaskIndex, std::optional<std::int64_t>> starts(problem.tasks.size());
        starts[demand.from.task] = 0;
        // As often as there are tasks at most: lags that no plan keeps would raise them for ever.
        bool isRaised = true;
        for (std::size_t round = 0; isRaised && round < problem.tasks.size(); ++round) {
            isRaised = false;
            for (const Apart& lag : lags) {
                const auto from = starts[lag.from];
                if (!from || !isPresent(lag.to)) {
                    continue;
                }
                const std::int64_t least = *from + lag.minutes;
                if (!starts[lag.to] || *starts[lag.to] < least) {
                    starts[lag.to] = least;
                    isRaised = true;
                }
            }
        }
        if (const auto to = starts[demand.to.task]) {
            const std::int64_t length =
                *to + offsetOf(problem, demand.to) - offsetOf(problem, demand.from);
            result[index] = std::clamp<std::int64_t>(length, 0, minuteOf(problem.horizon));
        }
    }
    return result;
}

} // namespace suppertide::exact
