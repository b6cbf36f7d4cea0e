#include <gtest/gtest.h>

#include <algorithm>

#include "core/planner/quick_start/difference_network.h"
#include "core/planner/quick_start/proof.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::quick_start {

namespace {

using test::forEachSeed;
using test::Random;

Problem anyLags(Random& random)
{
    Problem problem;
    problem.horizon = planTime(60);
    const std::int64_t tasks = random.between(2, 6);
    for (std::int64_t i = 0; i < tasks; ++i) {
        Task task;
        task.id = "t" + std::to_string(i);
        task.duration = Minutes{random.between(0, 10)};
        const std::int64_t begin = random.oneIn(2) ? random.between(0, 20) : 0;
        task.window = interval(begin, random.oneIn(2) ? random.between(begin, 60) : 60);
        problem.tasks.push_back(task);
    }
    for (std::int64_t i = random.between(1, 8); i > 0; --i) {
        Lag lag;
        lag.id = "l" + std::to_string(i);
        lag.from.task = TaskIndex{static_cast<std::size_t>(random.between(0, tasks - 1))};
        lag.to.task = TaskIndex{static_cast<std::size_t>(random.between(0, tasks - 1))};
        const std::int64_t min = random.between(-10, 15);
        lag.min = Minutes{min};
        if (random.oneIn(2)) {
            lag.max = Minutes{min + random.between(-1, 10)};
        }
        problem.lags.push_back(lag);
    }
    return problem;
}

/// Only the named requirements are kept.
Problem only(const Problem& problem, const std::vector<std::string>& names)
{
    const auto named = [&](const std::string& name) {
        return std::find(names.begin(), names.end(), name) != names.end();
    };
    Problem result = problem;
    for (Task& task : result.tasks) {
        if (!named("window:" + task.id)) {
            task.window = {planTime(0), problem.horizon};
        }
    }
    result.lags.clear();
    for (const Lag& lag : problem.lags) {
        if (named("lag:" + lag.id)) {
            result.lags.push_back(lag);
        }
    }
    return result;
}

bool holds(const Problem& problem)
{
    return DifferenceNetwork(problem, IndexedVector<TaskIndex, bool>(problem.tasks.size(), true))
        .holds();
}

} // namespace

TEST(Proof, FindsAConflictOfLagsExactlyIfThereIsOneAndItIsMinimal)
{
    int conflicts = 0;
    forEachSeed(300, [&](Random& random) {
        const Problem problem = anyLags(random);
        const auto conflict = provenConflict(problem);
        ASSERT_EQ(conflict.has_value(), !holds(problem));
        if (!conflict) {
            return;
        }
        ++conflicts;
        EXPECT_FALSE(holds(only(problem, *conflict)));
        for (std::size_t i = 0; i < conflict->size(); ++i) {
            std::vector<std::string> fewer = *conflict;
            fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
            EXPECT_TRUE(holds(only(problem, fewer)));
        }
    });
    EXPECT_GT(conflicts, 50);
}

} // namespace suppertide::quick_start
