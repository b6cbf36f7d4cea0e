#include "core/plan/tie_graph.h"

#include <algorithm>
#include <deque>

namespace suppertide {

namespace {

/// Tasks whose bound has changed and not yet been handed on; in a circle of ties that contradict
/// each other nobody has more turns than there are tasks.
class Turns
{
public:
    explicit Turns(std::size_t tasks) : waiting_(tasks, false), turns_(tasks, 0) {}

    void add(TaskIndex task)
    {
        if (!waiting_[task] && turns_[task] <= turns_.size()) {
            waiting_[task] = true;
            ++turns_[task];
            queue_.push_back(task);
        }
    }
    [[nodiscard]] std::optional<TaskIndex> next()
    {
        if (queue_.empty()) {
            return std::nullopt;
        }
        const TaskIndex task = queue_.front();
        queue_.pop_front();
        waiting_[task] = false;
        return task;
    }

private:
    std::deque<TaskIndex> queue_;
    IndexedVector<TaskIndex, bool> waiting_;
    IndexedVector<TaskIndex, std::size_t> turns_;
};

Minutes offset(const Problem& problem, const TaskPoint& point)
{
    return point.edge == Edge::End ? problem.tasks[point.task].duration : Minutes{0};
}

} // namespace

TieGraph::TieGraph(const Problem& problem, const IndexedVector<TaskIndex, bool>& present)
    : problem_(problem), present_(present), after_(problem.tasks.size()),
      before_(problem.tasks.size())
{
    for (const Lag& lag : problem.lags) {
        if (!present_[lag.from.task] || !present_[lag.to.task] || lag.from.task == lag.to.task) {
            continue;
        }
        const Minutes between = offset(problem, lag.from) - offset(problem, lag.to);
        if (lag.min) {
            add(lag.from.task, lag.to.task, *lag.min + between);
        }
        if (lag.max) {
            add(lag.to.task, lag.from.task, -*lag.max - between);
        }
    }
}

void TieGraph::add(TaskIndex earlier, TaskIndex later, Minutes gap)
{
    after_[earlier].push_back({later, gap});
    before_[later].push_back({earlier, gap});
}

Interval TieGraph::window(TaskIndex task) const
{
    const Task& what = problem_.tasks[task];
    return {what.window.start, what.window.end - what.duration};
}

Starts TieGraph::latestStarts(const Starts& fixed) const
{
    Starts starts = fixed;
    Turns turns(problem_.tasks.size());
    for (const TaskIndex task : problem_.tasks.indices()) {
        if (!present_[task]) {
            starts[task].reset();
            continue;
        }
        if (!fixed[task]) {
            starts[task] = window(task).end;
        }
        turns.add(task);
    }
    while (const auto task = turns.next()) {
        for (const Tie& tie : before_[*task]) {
            if (!fixed[tie.other] && *starts[tie.other] + tie.gap > *starts[*task]) {
                starts[tie.other] = *starts[*task] - tie.gap;
                turns.add(tie.other);
            }
        }
    }
    return starts;
}

Starts TieGraph::earliestStarts(const Starts& fixed) const
{
    Starts starts = fixed;
    Turns turns(problem_.tasks.size());
    for (const TaskIndex task : problem_.tasks.indices()) {
        if (!present_[task]) {
            starts[task].reset();
            continue;
        }
        if (!fixed[task]) {
            starts[task] = window(task).start;
        }
        turns.add(task);
    }
    while (const auto task = turns.next()) {
        for (const Tie& tie : after_[*task]) {
            if (!fixed[tie.other] && *starts[*task] + tie.gap > *starts[tie.other]) {
                starts[tie.other] = *starts[*task] + tie.gap;
                turns.add(tie.other);
            }
        }
    }
    return starts;
}

void TieGraph::follow(Starts& starts, const std::vector<TaskIndex>& moved, bool later,
                      const IndexedVector<TaskIndex, bool>& pinned) const
{
    Turns turns(problem_.tasks.size());
    for (const TaskIndex task : moved) {
        turns.add(task);
    }
    const auto isMoved = [&](TaskIndex task) {
        return std::ranges::find(moved, task) != moved.end();
    };
    while (const auto task = turns.next()) {
        for (const Tie& tie : later ? after_[*task] : before_[*task]) {
            auto& other = starts[tie.other];
            if (!other || pinned[tie.other] || isMoved(tie.other)) {
                continue;
            }
            const Interval allowed = window(tie.other);
            const PlanTime wanted = later ? std::min(*starts[*task] + tie.gap, allowed.end)
                                          : std::max(*starts[*task] - tie.gap, allowed.start);
            if (later ? wanted > *other : wanted < *other) {
                other = wanted;
                turns.add(tie.other);
            }
        }
    }
}

std::vector<TaskIndex> TieGraph::rigidGroup(TaskIndex task) const
{
    std::vector<TaskIndex> group{task};
    for (std::size_t i = 0; i < group.size(); ++i) {
        for (const Tie& tie : after_[group[i]]) {
            const bool isRigid = std::ranges::any_of(before_[group[i]], [&](const Tie& back) {
                return back.other == tie.other && back.gap == -tie.gap;
            });
            if (isRigid && std::ranges::find(group, tie.other) == group.end()) {
                group.push_back(tie.other);
            }
        }
    }
    return group;
}

} // namespace suppertide
