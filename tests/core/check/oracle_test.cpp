// The checker against a minute-by-minute simulation, and the live checker against the checker.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/check/check.h"
#include "core/check/live_check.h"
#include "tests/core/check/minute_simulation.h"
#include "tests/support/problem/random_problem.h"

namespace suppertide {
namespace {

std::set<std::string> namesOf(const std::vector<Broken>& broken)
{
    std::set<std::string> names;
    for (const Broken& each : broken) {
        names.insert(each.name());
    }
    return names;
}

TEST(CheckAgainstMinutes, NamesTheSameRequirementsAndCost)
{
    std::size_t seen = 0;
    test::forEachSeed(4000, [&seen](test::Random& random) {
        const Problem problem = test::anyProblem(random);
        const Schedule schedule = test::anySchedule(problem, random);
        const auto expected = test::brokenByMinutes(problem, schedule);
        EXPECT_EQ(namesOf(check(problem, schedule)), expected);
        EXPECT_EQ(costOf(problem, schedule).total(), test::costByMinutes(problem, schedule));
        seen += expected.size();
    });
    // Guards against a generator that breaks nothing.
    EXPECT_GT(seen, 1U);
}

TEST(LiveCheck, SaysTheSameAsCheckAfterEveryEdit)
{
    test::forEachSeed(600, [](test::Random& random) {
        const Problem problem = test::anyProblem(random);
        Schedule schedule = test::anySchedule(problem, random);
        LiveCheck live(problem, schedule);
        ASSERT_EQ(live.broken(), check(problem, schedule));
        for (int edit = 0; edit < 12; ++edit) {
            schedule = test::edited(problem, schedule, random);
            ASSERT_EQ(live.update(schedule), check(problem, schedule)) << "edit " << edit;
        }
    });
}

TEST(LiveCheck, SaysTheSameAsCheckWhenOnlyStartsMove)
{
    test::forEachSeed(600, [](test::Random& random) {
        const Problem problem = test::anyProblem(random);
        Schedule schedule = test::anySchedule(problem, random);
        LiveCheck live(problem, schedule);
        for (int edit = 0; edit < 12; ++edit) {
            std::vector<StartMove> moves;
            for (const TaskIndex task : problem.tasks.indices()) {
                if (random.oneIn(3)) {
                    moves.push_back({task, planTime(random.between(0, 60))});
                    schedule.starts[task] = moves.back().start;
                }
            }
            ASSERT_EQ(live.update(moves), check(problem, schedule)) << "edit " << edit;
        }
    });
}

} // namespace
} // namespace suppertide
