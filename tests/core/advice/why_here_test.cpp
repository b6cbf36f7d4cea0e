// Why here: the slack each way against brute force by assign and check, minute by minute, on random
// evenings; and what holds a step, in cases that can be read off a clock.
#include <gmock/gmock.h>

#include <set>

#include "core/advice/why_here.h"
#include "core/check/check.h"
#include "core/plan/lay_out.h"
#include "core/plan/tie_graph.h"
#include "core/problem/timetable.h"
#include "tests/core/advice/advice_suppers.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {
namespace {

using test::recipeInOrder;
using test::step;
using test::Supper;

std::set<std::string> brokenIn(const Problem& problem, const Schedule& schedule)
{
    std::set<std::string> names;
    for (const Broken& broken : check(problem, schedule)) {
        names.insert(broken.name());
    }
    return names;
}

/// How many minutes the group can go until the first minute in which something new is broken.
Minutes slackByBruteForce(const Plan& plan, const PlanInput& input, TaskIndex task, Minutes step)
{
    const Problem& problem = plan.formulation->problem;
    const auto group =
        TieGraph(problem, presentTasks(problem, plan.schedule.options)).rigidGroup(task);
    const auto now = brokenIn(problem, plan.schedule);
    const AssignmentPins pins = assignmentPins(*plan.formulation, *input.layout);
    for (Minutes by = step;; by += step) {
        Schedule moved = plan.schedule;
        for (const TaskIndex each : group) {
            moved.starts[each] = *moved.starts[each] + by;
        }
        for (const std::string& name : brokenIn(problem, assign(problem, moved, pins))) {
            if (!now.contains(name)) {
                return std::chrono::abs(by) - Minutes{1};
            }
        }
    }
}

TEST(WhyHere, HasTheSlackThatBruteForceFinds)
{
    test::forEachSeed(5, [](test::Random& random) {
        const Supper supper = test::anySupper(random);
        const PlanInput input = supper.input();
        const auto outcome = makePlan({input, test::enough()});
        const auto* planned = std::get_if<PlanFound>(&*outcome);
        const PlanPtr plan = planned != nullptr ? planned->plan : supper.laidOut();
        for (const TaskIndex task : plan->formulation->problem.tasks.indices()) {
            if (plan->formulation->tasks[task].role != TaskRole::Step ||
                !plan->schedule.starts[task]) {
                continue;
            }
            const WhyHere why = whyHere(plan, input, task);
            EXPECT_EQ(why.earlier.free, slackByBruteForce(*plan, input, task, Minutes{-1}));
            EXPECT_EQ(why.later.free, slackByBruteForce(*plan, input, task, Minutes{1}));
            EXPECT_FALSE(why.earlier.clashes.empty());
            EXPECT_FALSE(why.later.clashes.empty());
            EXPECT_GE(why.later.along, why.later.free);
        }
    });
}

/// Chopped from 17:00, fried from 17:30, served at 19:30; the wait after frying is at most 2 h 30.
Supper fritters()
{
    Supper supper;
    supper.kitchen.cooks.front().usualHours = {{{16, 0}, {22, 0}, Presence::Free}};
    Recipe recipe =
        recipeInOrder("Fritters", {step("Chop the roots", 20_min), step("Fry them", 20_min)});
    recipe.common.waits.push_back(test::waitBetween("stay warm", "Fry them", "", 0_min, 150_min));
    supper.serve(recipe);
    supper.put("fritters/*/chop-the-roots", 17, 0);
    supper.put("fritters/*/fry-them", 17, 30);
    return supper;
}

TEST(WhyHere, IsHeldByTheStepBeforeAndTheOneAfter)
{
    const Supper supper = fritters();
    const PlanPtr plan = supper.laidOut();
    ASSERT_TRUE(plan->holds());
    const TaskIndex fry = test::taskIndex(*plan->formulation, "fritters/*/fry-them");
    const WhyHere why = whyHere(plan, supper.input(), fry);
    EXPECT_EQ(why.earlier.free, 10_min); // chopped until 17:20
    ASSERT_FALSE(why.earlier.clashes.empty());
    EXPECT_EQ(why.later.free, 100_min); // until 19:30
    // Chopping, which moves along, could go back to 16:00; the frying's wait allows 17:00 − 20.
    EXPECT_EQ(why.earlier.along, 50_min);
    EXPECT_EQ(why.later.along, 100_min);
}

TEST(WhyHere, IsHeldByTheCooksHours)
{
    const Supper supper = fritters();
    const PlanPtr plan = supper.laidOut();
    const TaskIndex chop = test::taskIndex(*plan->formulation, "fritters/*/chop-the-roots");
    const WhyHere why = whyHere(plan, supper.input(), chop);
    EXPECT_EQ(why.earlier.free, 60_min);
    ASSERT_FALSE(why.earlier.clashes.empty());
    EXPECT_EQ(why.earlier.clashes.front().kind, ClashKind::CookNotFree);
    EXPECT_EQ(why.later.free, 10_min);
}

TEST(WhyHere, IsHeldByAPin)
{
    Supper supper = fritters();
    supper.pin("fritters/*/fry-them", 17, 30);
    const PlanPtr plan = supper.laidOut();
    const TaskIndex fry = test::taskIndex(*plan->formulation, "fritters/*/fry-them");
    const WhyHere why = whyHere(plan, supper.input(), fry);
    EXPECT_TRUE(why.isPinned);
    EXPECT_EQ(why.earlier.free, 0_min);
    EXPECT_EQ(why.later.free, 0_min);
}

} // namespace
} // namespace suppertide
