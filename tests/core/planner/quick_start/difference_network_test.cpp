#include <gtest/gtest.h>

#include <functional>

#include "core/planner/quick_start/difference_network.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::quick_start {

namespace {

using test::forEachSeed;
using test::Random;

constexpr std::int64_t horizon = 12;

Problem anyNetwork(Random& random)
{
    Problem problem;
    problem.horizon = planTime(horizon);
    const std::int64_t tasks = random.between(1, 4);
    for (std::int64_t i = 0; i < tasks; ++i) {
        Task task;
        task.id = "t" + std::to_string(i);
        task.duration = Minutes{random.between(0, 3)};
        const std::int64_t begin = random.between(0, 5);
        task.window = interval(begin, random.between(begin, horizon));
        problem.tasks.push_back(task);
    }
    const auto anyPoint = [&] {
        return TaskPoint{TaskIndex{static_cast<std::size_t>(random.between(0, tasks - 1))},
                         random.oneIn(2) ? Edge::Start : Edge::End};
    };
    for (std::int64_t i = random.between(0, 4); i > 0; --i) {
        Lag lag;
        lag.id = "l" + std::to_string(i);
        lag.from = anyPoint();
        lag.to = anyPoint();
        const std::int64_t min = random.between(-3, 4);
        if (random.oneIn(2)) {
            lag.min = Minutes{min};
        }
        if (random.oneIn(2)) {
            lag.max = Minutes{min + random.between(0, 3)};
        }
        problem.lags.push_back(lag);
    }
    return problem;
}

bool keepsAll(const Problem& problem, const std::vector<std::int64_t>& starts)
{
    for (const TaskIndex task : problem.tasks.indices()) {
        const std::int64_t start = starts[task.value()];
        const std::int64_t end = start + problem.tasks[task].duration.count();
        if (start < minuteOf(problem.tasks[task].window.start) ||
            end > minuteOf(problem.tasks[task].window.end)) {
            return false;
        }
    }
    const auto time = [&](const TaskPoint& point) {
        return starts[point.task.value()] +
               (point.edge == Edge::End ? problem.tasks[point.task].duration.count() : 0);
    };
    for (const Lag& lag : problem.lags) {
        const std::int64_t gap = time(lag.to) - time(lag.from);
        if ((lag.min && gap < lag.min->count()) || (lag.max && gap > lag.max->count())) {
            return false;
        }
    }
    return true;
}

void forEachStarts(const Problem& problem, std::vector<std::int64_t>& starts,
                   const std::function<void()>& visit)
{
    if (starts.size() == problem.tasks.size()) {
        if (keepsAll(problem, starts)) {
            visit();
        }
        return;
    }
    for (std::int64_t start = 0; start <= horizon; ++start) {
        starts.push_back(start);
        forEachStarts(problem, starts, visit);
        starts.pop_back();
    }
}

} // namespace

TEST(DifferenceNetwork, KnowsExactlyTheStartsAndGapsThatCanBe)
{
    int holding = 0;
    forEachSeed(150, [&](Random& random) {
        const Problem problem = anyNetwork(random);
        const DifferenceNetwork network(problem,
                                        IndexedVector<TaskIndex, bool>(problem.tasks.size(), true));
        const std::size_t n = problem.tasks.size();
        std::vector<std::int64_t> least(n, never);
        std::vector<std::int64_t> most(n, -never);
        std::vector<std::int64_t> gap(n * n, never);
        std::vector<std::int64_t> starts;
        bool holds = false;
        forEachStarts(problem, starts, [&] {
            holds = true;
            for (std::size_t a = 0; a < n; ++a) {
                least[a] = std::min(least[a], starts[a]);
                most[a] = std::max(most[a], starts[a]);
                for (std::size_t b = 0; b < n; ++b) {
                    gap[a * n + b] = std::min(gap[a * n + b], starts[b] - starts[a]);
                }
            }
        });
        ASSERT_EQ(network.holds(), holds);
        if (!holds) {
            return;
        }
        ++holding;
        for (std::size_t a = 0; a < n; ++a) {
            EXPECT_EQ(network.bounds(TaskIndex{a}).est, least[a]);
            EXPECT_EQ(network.bounds(TaskIndex{a}).lst, most[a]);
        }
        for (const TiedTasks& tied : network.tied()) {
            for (std::size_t i = 0; i < tied.tasks.size(); ++i) {
                for (std::size_t j = 0; j < tied.tasks.size(); ++j) {
                    const std::size_t a = tied.tasks[i].value();
                    const std::size_t b = tied.tasks[j].value();
                    EXPECT_EQ(std::max(tied.between(i, j), least[b] - most[a]), gap[a * n + b]);
                }
            }
        }
    });
    EXPECT_GT(holding, 40);
}

} // namespace suppertide::quick_start
