// Conflicts of tiny problems of the whole format, proven once more by another solver: what is in
// the conflict cannot hold together, and without any one of it the rest can.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>

#include "core/planner/planner.h"
#include "tests/core/planner/oracle/leave_out.h"
#include "tests/core/planner/oracle/second_reading.h"
#include "tests/support/problem/tiny_problem.h"

namespace suppertide {

namespace {

using test::Random;

struct Tally
{
    int conflicts = 0;
    std::size_t requirements = 0;
    int undecided = 0;
    std::vector<std::string> faults;
};

/// Absent: the other solver does not decide in its steps.
std::optional<bool> canHold(const Problem& problem, const std::set<std::string>& requirements)
{
    Problem only = test::withOnly(problem, requirements);
    only.costs = {};
    test::SecondReading reading(only);
    const auto least = reading.leastCost(0);
    return least.decided ? std::optional{least.cost.has_value()} : std::nullopt;
}

void judge(const Problem& problem, const Schedule& schedule, Tally& tally, const std::string& name)
{
    const std::set<std::string> conflict(schedule.conflict.begin(), schedule.conflict.end());
    const std::set<std::string> all = test::requirementsOf(problem);
    const auto fault = [&](const std::string& what) {
        tally.faults.push_back(name + ": " + what + " of " +
                               fmt::format("{}", fmt::join(conflict, " ")));
    };
    if (conflict.size() != schedule.conflict.size() ||
        !std::includes(all.begin(), all.end(), conflict.begin(), conflict.end())) {
        fault("no requirement, or one twice,");
        return;
    }
    ++tally.conflicts;
    tally.requirements += conflict.size();
    const auto together = canHold(problem, conflict);
    tally.undecided += together ? 0 : 1;
    if (together.value_or(false)) {
        fault("a schedule that keeps all");
    }
    for (const std::string& left : conflict) {
        std::set<std::string> rest = conflict;
        rest.erase(left);
        const auto without = canHold(problem, rest);
        tally.undecided += without ? 0 : 1;
        if (!without.value_or(true)) {
            fault(left + " can be spared");
        }
    }
}

} // namespace

// SUPPERTIDE_TINY_PROBLEMS=5000 looks at more of them.
TEST(MinimalConflict, OfTinyProblemsOfTheWholeFormat)
{
    const char* wanted = std::getenv("SUPPERTIDE_TINY_PROBLEMS"); // NOLINT(concurrency-mt-unsafe)
    const int count = wanted == nullptr ? 400 : std::atoi(wanted);
    Tally tally;
    test::forEachSeed(count, [&](Random& random) {
        const Problem problem = test::anyTinyProblem(random);
        PlannerLimits limits;
        limits.wallClock = std::chrono::minutes{10};
        limits.steps = 60'000;
        const Schedule schedule = solve(problem, limits).schedule;
        if (schedule.status == ScheduleStatus::Infeasible) {
            judge(problem, schedule, tally, fmt::format("SUPPERTIDE_SEED={}", random.seed()));
        }
    });
    fmt::print("{} conflicts of {:.1f} requirements; {} not decided\n", tally.conflicts,
               static_cast<double>(tally.requirements) / std::max(1, tally.conflicts),
               tally.undecided);
    EXPECT_THAT(tally.faults, testing::IsEmpty());
    EXPECT_GT(tally.conflicts, count / 4);
    EXPECT_LT(tally.undecided, count / 20);
}

} // namespace suppertide
