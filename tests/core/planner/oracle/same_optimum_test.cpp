// The planner against a second reading of the format by another solver, on tiny problems of
// everything that the format has: the same ones are feasible, and the best costs the same.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <string>
#include <vector>

#include "core/check/check.h"
#include "core/planner/planner.h"
#include "tests/core/planner/oracle/second_reading.h"
#include "tests/support/problem/tiny_problem.h"

namespace suppertide {

namespace {

using test::Random;

PlannerOutcome planned(const Problem& problem, std::uint64_t seed)
{
    PlannerLimits limits;
    limits.wallClock = std::chrono::minutes{10};
    limits.steps = 60'000;
    limits.seed = seed;
    return solve(problem, limits);
}

/// What came of all of them; printed, so that a table can be made.
struct Tally
{
    int feasible = 0;
    int infeasible = 0;
    int undecided = 0; // by the other solver, in its steps
    int same = 0;      // the best was found, or that there is none
    int proven = 0;
    int withOvens = 0;
    std::vector<std::string> differences;
};

/// What differs; empty: nothing.
std::string difference(const Problem& problem, const Schedule& schedule,
                       std::optional<std::int64_t> least)
{
    if (!least) {
        return schedule.cost ? fmt::format("a schedule of {}, but there is none", *schedule.cost)
                             : "";
    }
    if (!schedule.cost) {
        return fmt::format("{}, but there is a schedule of {}",
                           schedule.status == ScheduleStatus::Infeasible ? "infeasible" : "none",
                           *least);
    }
    if (*schedule.cost != *least) {
        return fmt::format("a schedule of {}, but the best costs {}", *schedule.cost, *least);
    }
    if (schedule.bound.value_or(0) > *least) {
        return fmt::format("a bound of {}, but the best costs {}", *schedule.bound, *least);
    }
    return check(problem, schedule).empty() ? "" : "the schedule breaks something";
}

void compare(Random& random, Tally& tally)
{
    const Problem problem = test::anyTinyProblem(random);
    const Schedule schedule = planned(problem, random.seed()).schedule;
    test::SecondReading reading(problem);
    const auto [decided, least] = reading.leastCost(schedule.cost);
    if (!decided) {
        ++tally.undecided;
        return;
    }
    tally.withOvens += problem.ovenDemands.empty() ? 0 : 1;
    (least ? tally.feasible : tally.infeasible) += 1;
    tally.proven +=
        schedule.status == ScheduleStatus::Optimal || schedule.status == ScheduleStatus::Infeasible
            ? 1
            : 0;
    tally.same += schedule.cost == least ? 1 : 0;
    const std::string differs = difference(problem, schedule, least);
    if (!differs.empty()) {
        tally.differences.push_back(fmt::format("SUPPERTIDE_SEED={}: {}", random.seed(), differs));
    }
}

} // namespace

// SUPPERTIDE_TINY_PROBLEMS=5000 compares more of them.
TEST(SameOptimum, OfTinyProblemsOfTheWholeFormat)
{
    const char* wanted = std::getenv("SUPPERTIDE_TINY_PROBLEMS");
    const int count = wanted == nullptr ? 520 : std::atoi(wanted);
    Tally tally;
    test::forEachSeed(count, [&](Random& random) { compare(random, tally); });
    fmt::print("{} feasible, {} infeasible, {} undecided; {} with ovens; {} the same best, {} of "
               "them proven\n",
               tally.feasible, tally.infeasible, tally.undecided, tally.withOvens, tally.same,
               tally.proven);
    EXPECT_THAT(tally.differences, testing::IsEmpty());
    EXPECT_EQ(tally.same, tally.feasible + tally.infeasible);
    EXPECT_EQ(tally.proven, tally.feasible + tally.infeasible);
    EXPECT_GE(tally.feasible, count / 4);
    EXPECT_GE(tally.infeasible, count / 4);
    EXPECT_LE(tally.undecided, count / 20);
}

} // namespace suppertide
