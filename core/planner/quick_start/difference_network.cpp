#include "core/planner/quick_start/difference_network.h"

#include <algorithm>
#include <deque>

namespace suppertide::quick_start {

namespace {

Minute offsetOf(const Problem& problem, const TaskPoint& point)
{
    return point.edge == Edge::End ? problem.tasks[point.task].duration.count() : 0;
}

/// Bounds of lags may be any number; beyond the longest time there is they all mean the same.
Minute bounded(Minute minutes)
{
    return std::clamp(minutes, -never / 4, never / 4);
}

} // namespace

DifferenceNetwork::DifferenceNetwork(const Problem& problem,
                                     const IndexedVector<TaskIndex, bool>& present)
    : present_(present), after_(problem.tasks.size()), before_(problem.tasks.size()),
      bounds_(problem.tasks.size())
{
    addEdges(problem);
    holds_ = tighten(problem);
    if (holds_) {
        tie(problem);
    }
}

void DifferenceNetwork::addEdges(const Problem& problem)
{
    const auto add = [&](TaskIndex from, TaskIndex to, Minute least) {
        after_[from].push_back({to, least});
        before_[to].push_back({from, least});
    };
    for (const Lag& lag : problem.lags) {
        if (!present_[lag.from.task] || !present_[lag.to.task]) {
            continue;
        }
        const Minute shift = offsetOf(problem, lag.from) - offsetOf(problem, lag.to);
        if (lag.min) {
            add(lag.from.task, lag.to.task, bounded(lag.min->count()) + shift);
        }
        if (lag.max) {
            add(lag.to.task, lag.from.task, -bounded(lag.max->count()) - shift);
        }
    }
}

bool DifferenceNetwork::raiseEarliest()
{
    std::deque<TaskIndex> queue;
    IndexedVector<TaskIndex, bool> queued(bounds_.size(), false);
    IndexedVector<TaskIndex, std::size_t> raised(bounds_.size(), 0);
    for (const TaskIndex task : bounds_.indices()) {
        if (present_[task]) {
            queue.push_back(task);
            queued[task] = true;
        }
    }
    while (!queue.empty()) {
        const TaskIndex task = queue.front();
        queue.pop_front();
        queued[task] = false;
        for (const auto& edge : after_[task]) {
            ++work_;
            const Minute est = bounds_[task].est + edge.least;
            if (est <= bounds_[edge.to].est) {
                continue;
            }
            bounds_[edge.to].est = est;
            if (est > bounds_[edge.to].lst || ++raised[edge.to] > bounds_.size()) {
                return false;
            }
            if (!queued[edge.to]) {
                queue.push_back(edge.to);
                queued[edge.to] = true;
            }
        }
    }
    return true;
}

bool DifferenceNetwork::lowerLatest()
{
    std::deque<TaskIndex> queue;
    IndexedVector<TaskIndex, bool> queued(bounds_.size(), false);
    for (const TaskIndex task : bounds_.indices()) {
        if (present_[task]) {
            queue.push_back(task);
            queued[task] = true;
        }
    }
    while (!queue.empty()) {
        const TaskIndex task = queue.front();
        queue.pop_front();
        queued[task] = false;
        for (const auto& edge : before_[task]) {
            ++work_;
            const Minute lst = bounds_[task].lst - edge.least;
            if (lst >= bounds_[edge.to].lst) {
                continue;
            }
            bounds_[edge.to].lst = lst;
            if (lst < bounds_[edge.to].est) {
                return false;
            }
            if (!queued[edge.to]) {
                queue.push_back(edge.to);
                queued[edge.to] = true;
            }
        }
    }
    return true;
}

bool DifferenceNetwork::tighten(const Problem& problem)
{
    for (const TaskIndex index : problem.tasks.indices()) {
        const Task& task = problem.tasks[index];
        const Minute duration = task.duration.count();
        bounds_[index].est = std::max<Minute>(0, minuteOf(task.window.start));
        bounds_[index].lst =
            std::min(minuteOf(problem.horizon), minuteOf(task.window.end)) - duration;
        if (present_[index] && bounds_[index].est > bounds_[index].lst) {
            return false;
        }
    }
    return raiseEarliest() && lowerLatest();
}

/// Tasks that cannot move tie nothing together: what they ask for is in the bounds.
void DifferenceNetwork::tie(const Problem& problem)
{
    const auto moves = [&](TaskIndex task) {
        return present_[task] && bounds_[task].est < bounds_[task].lst;
    };
    IndexedVector<TaskIndex, bool> seen(problem.tasks.size(), false);
    for (const TaskIndex first : problem.tasks.indices()) {
        if (seen[first] || !present_[first]) {
            continue;
        }
        TiedTasks group;
        group.tasks.push_back(first);
        seen[first] = true;
        for (std::size_t i = 0; moves(first) && i < group.tasks.size(); ++i) {
            const TaskIndex task = group.tasks[i];
            for (const auto* edges : {&after_[task], &before_[task]}) {
                for (const auto& edge : *edges) {
                    if (!seen[edge.to] && moves(edge.to)) {
                        seen[edge.to] = true;
                        group.tasks.push_back(edge.to);
                    }
                }
            }
        }
        close(group);
        tied_.push_back(std::move(group));
    }
}

/// Longest paths between all pairs (Floyd, Warshall).
void DifferenceNetwork::close(TiedTasks& group)
{
    const std::size_t n = group.tasks.size();
    group.least.assign(n * n, -never);
    IndexedVector<TaskIndex, std::size_t> position(n == 1 ? 0 : bounds_.size());
    for (std::size_t i = 0; i < n; ++i) {
        group.least[i * n + i] = 0;
        if (n > 1) {
            position[group.tasks[i]] = i + 1;
        }
    }
    for (std::size_t i = 0; n > 1 && i < n; ++i) {
        for (const auto& edge : after_[group.tasks[i]]) {
            if (position[edge.to] > 0) {
                Minute& least = group.least[i * n + position[edge.to] - 1];
                least = std::max(least, edge.least);
            }
        }
    }
    for (std::size_t k = 0; k < n; ++k) {
        for (std::size_t i = 0; i < n; ++i) {
            const Minute first = group.least[i * n + k];
            if (first <= -never / 2) {
                continue;
            }
            work_ += static_cast<std::int64_t>(n) / 8;
            for (std::size_t j = 0; j < n; ++j) {
                group.least[i * n + j] =
                    std::max(group.least[i * n + j], first + group.least[k * n + j]);
            }
        }
    }
}

} // namespace suppertide::quick_start
