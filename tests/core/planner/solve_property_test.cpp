#include <gtest/gtest.h>

#include <algorithm>

#include "core/check/check.h"
#include "core/planner/planner.h"
#include "tests/support/problem/random_evening.h"
#include "tests/support/problem/small_problem.h"
#include "tests/support/problem/tiny_problem.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

PlannerLimits withinSteps(std::int64_t steps, std::uint64_t seed = 1)
{
    PlannerLimits limits;
    limits.wallClock = std::chrono::minutes{10};
    limits.steps = steps;
    limits.seed = seed;
    return limits;
}

bool isSchedule(const Schedule& schedule)
{
    return schedule.status == ScheduleStatus::Feasible ||
           schedule.status == ScheduleStatus::Optimal;
}

void expectHolds(const Problem& problem, const Schedule& schedule)
{
    for (const Broken& broken : check(problem, schedule)) {
        ADD_FAILURE() << broken.name();
    }
    EXPECT_EQ(schedule.cost, costOf(problem, schedule).total());
    EXPECT_LE(schedule.bound.value_or(0), *schedule.cost);
    EXPECT_EQ(schedule.status == ScheduleStatus::Optimal, schedule.bound == schedule.cost);
}

std::int64_t tasksFor(const Random& random)
{
    return 3 + static_cast<std::int64_t>(random.seed() / 16);
}

} // namespace

TEST(Solve, ReturnsOnlyWhatHolds)
{
    int found = 0;
    forEachSeed(300, [&](Random& random) {
        const Problem problem = test::anyEvening(random, tasksFor(random));
        const PlannerOutcome outcome = solve(problem, withinSteps(2000));
        if (isSchedule(outcome.schedule)) {
            expectHolds(problem, outcome.schedule);
            ++found;
        } else if (outcome.schedule.status == ScheduleStatus::Unknown) {
            EXPECT_FALSE(outcome.unplaced.empty());
        }
    });
    EXPECT_GT(found, 60); // of 300, many of which have none
}

TEST(Solve, ReportsEachBetterScheduleAndTheLastIsReturned)
{
    forEachSeed(40, [](Random& random) {
        const Problem problem = test::anyEvening(random, tasksFor(random));
        std::vector<Schedule> reported;
        const PlannerOutcome outcome =
            solve(problem, withinSteps(2000), {}, [&](const PlannerProgress& progress) {
                if (progress.better) {
                    reported.push_back(*progress.better);
                }
            });
        for (std::size_t i = 0; i < reported.size(); ++i) {
            expectHolds(problem, reported[i]);
            EXPECT_TRUE(i == 0 || *reported[i].cost < *reported[i - 1].cost);
        }
        if (!reported.empty()) { // more may have been proven since
            Schedule last = reported.back();
            EXPECT_LE(*last.bound, *outcome.schedule.bound);
            last.bound = outcome.schedule.bound;
            last.status = outcome.schedule.status;
            EXPECT_EQ(last, outcome.schedule);
        }
    });
}

TEST(Solve, IsTheSameForTheSameSeedAndSteps)
{
    forEachSeed(40, [](Random& random) {
        const Problem problem = test::anyEvening(random, tasksFor(random));
        const PlannerOutcome one = solve(problem, withinSteps(3000, random.seed()));
        const PlannerOutcome other = solve(problem, withinSteps(3000, random.seed()));
        EXPECT_EQ(one.schedule, other.schedule);
        EXPECT_EQ(one.unplaced, other.unplaced);
        EXPECT_EQ(one.stepsTaken, other.stepsTaken);
    });
}

TEST(Solve, NeverGetsWorseWithMoreSteps)
{
    forEachSeed(20, [](Random& random) {
        const Problem problem = test::anyEvening(random, tasksFor(random));
        const PlannerOutcome brief = solve(problem, withinSteps(500));
        const PlannerOutcome longer = solve(problem, withinSteps(5000));
        if (isSchedule(brief.schedule)) {
            ASSERT_TRUE(isSchedule(longer.schedule));
            EXPECT_LE(*longer.schedule.cost, *brief.schedule.cost);
        }
    });
}

// A search that is stopped, at whatever step, has proven nothing but what it says.
TEST(Solve, CallsNothingOptimalThatWasStopped)
{
    int stopped = 0;
    int proven = 0;
    forEachSeed(150, [&](Random& random) {
        const Problem problem = test::anyTinyProblem(random);
        const PlannerOutcome whole = solve(problem, withinSteps(20'000));
        for (std::int64_t steps = 1; steps < 1000; steps = 2 * steps + random.between(0, 2)) {
            const PlannerOutcome part = solve(problem, withinSteps(steps));
            stopped += part.stopped ? 1 : 0;
            EXPECT_FALSE(part.stopped && part.schedule.status == ScheduleStatus::Optimal);
            if (part.schedule.status == ScheduleStatus::Infeasible) {
                EXPECT_FALSE(isSchedule(whole.schedule));
            }
            if (part.schedule.status == ScheduleStatus::Optimal) {
                ++proven;
                EXPECT_EQ(part.schedule.cost, whole.schedule.cost);
            }
            if (isSchedule(whole.schedule)) {
                EXPECT_LE(part.schedule.bound.value_or(0), *whole.schedule.cost);
            }
        }
    });
    EXPECT_GT(stopped, 100);
    EXPECT_GT(proven, 100);
}

TEST(Solve, StopsAtOnceIfAskedBefore)
{
    Random random(7);
    std::stop_source stop;
    stop.request_stop();
    const PlannerOutcome outcome =
        solve(test::anyEvening(random, 20), withinSteps(1'000'000), stop.get_token());
    EXPECT_TRUE(outcome.stopped);
    EXPECT_EQ(outcome.stepsTaken, 0);
    EXPECT_EQ(outcome.schedule.status, ScheduleStatus::Unknown);
}

TEST(Solve, StopsWithinAFewStepsAndKeepsTheBest)
{
    forEachSeed(30, [](Random& random) {
        const Problem problem = test::anyEvening(random, tasksFor(random));
        std::stop_source stop;
        std::int64_t asked = 0;
        const PlannerOutcome outcome = solve(problem, withinSteps(100'000), stop.get_token(),
                                             [&](const PlannerProgress& progress) {
                                                 asked = progress.stepsTaken;
                                                 stop.request_stop();
                                             });
        if (isSchedule(outcome.schedule)) {
            EXPECT_LE(outcome.stepsTaken, asked + 200);
            expectHolds(problem, outcome.schedule);
        }
    });
}

TEST(Solve, AgreesOnTheStatusWithMoreThreads)
{
    forEachSeed(10, [](Random& random) {
        const Problem problem = test::anyEvening(random, 4);
        PlannerLimits limits = withinSteps(3000);
        const PlannerOutcome one = solve(problem, limits);
        limits.threads = 3;
        const PlannerOutcome three = solve(problem, limits);
        if (isSchedule(one.schedule)) {
            ASSERT_TRUE(isSchedule(three.schedule));
            EXPECT_LE(*three.schedule.cost, *one.schedule.cost);
            expectHolds(problem, three.schedule);
        }
    });
}

TEST(Solve, ProvesTheSameWithASecondThread)
{
    int proven = 0;
    forEachSeed(40, [&](Random& random) {
        const Problem problem = test::anyEvening(random, random.between(3, 5));
        const PlannerOutcome one = solve(problem, withinSteps(50'000));
        if (one.schedule.status != ScheduleStatus::Optimal) {
            return;
        }
        ++proven;
        PlannerLimits limits = withinSteps(2'000'000);
        limits.threads = 2;
        const PlannerOutcome two = solve(problem, limits);
        EXPECT_EQ(two.schedule.status, ScheduleStatus::Optimal);
        EXPECT_EQ(two.schedule.cost, one.schedule.cost);
        EXPECT_EQ(two.schedule.bound, two.schedule.cost);
        EXPECT_FALSE(two.stopped);
    });
    EXPECT_GT(proven, 10);
}

TEST(Solve, MovesWithTheWholeProblem)
{
    // All times later by the same amount: a schedule exists as before, and costs no more time on.
    forEachSeed(20, [](Random& random) {
        test::SmallProblem made(600);
        const TaskIndex served = made.event("served", 300);
        const TaskIndex roast = made.task("roast", random.between(20, 60));
        made.inOven("e", roast, 170, 190, 180);
        made.oven("o", 1);
        made.lag("l", test::endOf(roast), test::startOf(served), 0, 10);
        const PlannerOutcome before = solve(made.problem, withinSteps(500));
        Problem later = made.problem;
        for (Task& task : later.tasks) {
            task.window.start += Minutes{task.window.start > planTime(0) ? 60 : 0};
            task.window.end = std::min(later.horizon, task.window.end + Minutes{60});
        }
        const PlannerOutcome after = solve(later, withinSteps(500));
        ASSERT_TRUE(isSchedule(before.schedule) && isSchedule(after.schedule));
        EXPECT_EQ(*after.schedule.starts[roast] - *before.schedule.starts[roast], Minutes{60});
        EXPECT_EQ(after.schedule.cost, before.schedule.cost);
    });
}

} // namespace suppertide
