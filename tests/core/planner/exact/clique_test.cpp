// Tasks that are apart two by two, each two for a reason of their own.
#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <vector>

#include "core/planner/planner.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

/// Tasks so long, and a last one that ends all; each minute until then costs one.
Problem tasksOf(const std::vector<std::int64_t>& lengths, std::int64_t horizon)
{
    Problem problem;
    problem.horizon = planTime(horizon);
    for (std::size_t i = 0; i <= lengths.size(); ++i) {
        Task task;
        task.id = "t" + std::to_string(i);
        task.duration = Minutes{i < lengths.size() ? lengths[i] : 0};
        task.window = interval(0, horizon);
        problem.tasks.push_back(std::move(task));
    }
    const TaskIndex last{lengths.size()};
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        Lag lag;
        lag.id = "end" + std::to_string(i);
        lag.from = {TaskIndex{i}, Edge::End};
        lag.to = {last, Edge::Start};
        lag.min = Minutes{0};
        problem.lags.push_back(std::move(lag));
    }
    Task first;
    first.id = "first";
    first.window = interval(0, 0);
    problem.tasks.push_back(std::move(first));
    Lag all;
    all.id = "all";
    all.from = {TaskIndex{lengths.size() + 1}, Edge::Start};
    all.to = {last, Edge::Start};
    all.min = Minutes{0};
    all.loss = 1;
    problem.lags.push_back(std::move(all));
    return problem;
}

void use(Problem& problem, CountIndex count, std::size_t task, std::int64_t amount)
{
    Demand demand;
    demand.id = "d" + std::to_string(problem.demands.size());
    demand.from = {TaskIndex{task}, Edge::Start};
    demand.to = {TaskIndex{task}, Edge::End};
    demand.count = count;
    demand.amount = amount;
    problem.demands.push_back(std::move(demand));
}

/// By a count that has room for one of the two, and for no other task.
void keepApart(Problem& problem, std::size_t one, std::size_t other)
{
    problem.counts.push_back({"c" + std::to_string(problem.counts.size()), 1});
    const CountIndex count{problem.counts.size() - 1};
    use(problem, count, one, 1);
    use(problem, count, other, 1);
}

PlannerOutcome answerOf(const Problem& problem, std::int64_t steps)
{
    PlannerLimits limits;
    limits.wallClock = std::chrono::minutes{10};
    limits.steps = steps;
    return solve(problem, limits, {}, {});
}

constexpr std::int64_t few = 4'000; // steps; trying the orders takes millions

TEST(Clique, TakesAsLongAsAllItsTasksOneAfterAnother)
{
    const std::vector<std::int64_t> lengths{7, 5, 6, 4, 8, 5, 6, 7, 4};
    Problem problem = tasksOf(lengths, 200);
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        for (std::size_t j = i + 1; j < lengths.size(); ++j) {
            if (i == 0 && j == 4) { // these two by a lag, by way of a third
                problem.lags.push_back({"far1",
                                        {TaskIndex{0}, Edge::Start},
                                        {TaskIndex{1}, Edge::Start},
                                        Minutes{7},
                                        {},
                                        0});
                problem.lags.push_back({"far2",
                                        {TaskIndex{1}, Edge::Start},
                                        {TaskIndex{4}, Edge::Start},
                                        Minutes{5},
                                        {},
                                        0});
                continue;
            }
            keepApart(problem, i, j);
        }
    }
    const PlannerOutcome outcome = answerOf(problem, few);
    EXPECT_EQ(outcome.schedule.status, ScheduleStatus::Optimal);
    EXPECT_EQ(outcome.schedule.cost, 52);
}

TEST(Clique, LeavesOutATaskThatMayOverlapAnother)
{
    const std::vector<std::int64_t> lengths{7, 5, 6, 4, 8, 5, 6, 7, 4};
    Problem problem = tasksOf(lengths, 200);
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        for (std::size_t j = i + 1; j < lengths.size(); ++j) {
            if (i != 3 || j != 8) {
                keepApart(problem, i, j);
            }
        }
    }
    const PlannerOutcome outcome = answerOf(problem, few);
    EXPECT_EQ(outcome.schedule.status, ScheduleStatus::Optimal);
    EXPECT_EQ(outcome.schedule.cost, 48);
}

using Starts = std::vector<std::int64_t>; // of all tasks

std::int64_t timeOf(const Problem& problem, const Starts& starts, const TaskPoint& point)
{
    const std::int64_t length = problem.tasks[point.task].duration.count();
    return starts[point.task.value()] + (point.edge == Edge::End ? length : 0);
}

bool keepsLags(const Problem& problem, const Starts& starts)
{
    return std::ranges::all_of(problem.lags, [&](const Lag& lag) {
        const std::int64_t gap =
            timeOf(problem, starts, lag.to) - timeOf(problem, starts, lag.from);
        return (!lag.min || gap >= lag.min->count()) && (!lag.max || gap <= lag.max->count());
    });
}

std::int64_t usedAt(const Problem& problem, const Starts& starts, CountIndex count,
                    std::int64_t minute)
{
    std::int64_t used = 0;
    for (const Demand& demand : problem.demands) {
        const bool isIn = demand.count == count && timeOf(problem, starts, demand.from) <= minute &&
                          minute < timeOf(problem, starts, demand.to);
        used += isIn ? demand.amount : 0;
    }
    return used;
}

bool keepsCounts(const Problem& problem, const Starts& starts)
{
    for (const CountIndex count : problem.counts.indices()) {
        for (std::int64_t minute = 0; minute < minuteOf(problem.horizon); ++minute) {
            if (usedAt(problem, starts, count, minute) > problem.counts[count].capacity) {
                return false;
            }
        }
    }
    return true;
}

/// The earliest end of all tasks, of those from one on at any starts.
std::optional<std::int64_t> leastFrom(const Problem& problem, std::size_t task, std::size_t tasks,
                                      Starts& starts)
{
    if (task == tasks) {
        starts[tasks] = 0;
        for (std::size_t i = 0; i < tasks; ++i) {
            starts[tasks] =
                std::max(starts[tasks], timeOf(problem, starts, {TaskIndex{i}, Edge::End}));
        }
        return keepsLags(problem, starts) && keepsCounts(problem, starts)
                   ? std::optional{starts[tasks]}
                   : std::nullopt;
    }
    std::optional<std::int64_t> least;
    const std::int64_t last =
        minuteOf(problem.horizon) - problem.tasks[TaskIndex{task}].duration.count();
    for (starts[task] = 0; starts[task] <= last; ++starts[task]) {
        const auto found = leastFrom(problem, task + 1, tasks, starts);
        least = !least || (found && *found < *least) ? found : least;
    }
    return least;
}

Problem anyProblem(Random& random, std::size_t tasks)
{
    std::vector<std::int64_t> lengths;
    for (std::size_t i = 0; i < tasks; ++i) {
        lengths.push_back(random.between(1, 4));
    }
    Problem problem = tasksOf(lengths, 13);
    for (int i = 0; i < 3; ++i) {
        problem.counts.push_back({"c" + std::to_string(i), 3});
        for (std::size_t task = 0; task < tasks; ++task) {
            use(problem, CountIndex{problem.counts.size() - 1}, task, random.between(0, 3));
        }
    }
    for (std::int64_t i = random.between(0, 3); i > 0; --i) {
        const auto any = [&] {
            return TaskPoint{TaskIndex{static_cast<std::size_t>(
                                 random.between(0, static_cast<std::int64_t>(tasks) - 1))},
                             Edge::Start};
        };
        Lag lag{"l" + std::to_string(i), any(), any(), {}, {}, 0};
        if (random.oneIn(2)) {
            lag.min = Minutes{random.between(0, 5)};
        } else {
            lag.max = Minutes{random.between(0, 5)};
        }
        problem.lags.push_back(std::move(lag));
    }
    return problem;
}

TEST(Clique, RulesNothingOutThatHolds)
{
    int found = 0;
    forEachSeed(300, [&](Random& random) {
        constexpr std::size_t tasks = 4;
        const Problem problem = anyProblem(random, tasks);
        Starts starts(tasks + 2, 0);
        const auto least = leastFrom(problem, 0, tasks, starts);
        const PlannerOutcome outcome = answerOf(problem, 1'000'000);
        if (!least) {
            EXPECT_EQ(outcome.schedule.status, ScheduleStatus::Infeasible);
            return;
        }
        ++found;
        EXPECT_EQ(outcome.schedule.status, ScheduleStatus::Optimal);
        EXPECT_EQ(outcome.schedule.cost, least);
    });
    EXPECT_GT(found, 100);
}

} // namespace

} // namespace suppertide
