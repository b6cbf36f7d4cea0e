// The supper planned again, after a step was moved by hand: little moves, though much could, and
// what cannot be is soon known, with its reason.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/plan/lay_out.h"
#include "core/plan/plan_change.h"
#include "core/planner/exact/conflict.h"
#include "core/propose/make_plan.h"
#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

constexpr auto longEnough = std::chrono::seconds(120); // for slow machines; steps are what counts
constexpr std::int64_t stepsToPlan = 400'000;
/// What takes a third of a second or so.
constexpr std::int64_t fewSteps = 30'000;

PlanPtr planned(const PlanInput& input, std::int64_t steps)
{
    PlanRequest request{input, {}, 0};
    request.limits.steps = steps;
    request.limits.wallClock = longEnough;
    const auto outcome = makePlan(request).value();
    if (const auto* found = std::get_if<PlanFound>(&outcome)) {
        return found->plan;
    }
    return nullptr;
}

/// As it is let go: what is tied to the step has moved along.
PlanInput afterMove(const PlanInput& input, const Plan& plan, TaskIndex task, Minutes by)
{
    const Formulation& formulation = *plan.formulation;
    const Schedule moved =
        moveTask(formulation, *input.layout, plan.schedule, task, plan.interval(task)->start + by);
    PlanInput result = input;
    result.layout = std::make_shared<const Layout>(layoutOf(formulation, moved, *input.layout));
    result.closeness = Closeness::LeastChange;
    result.held = {formulation.problem.tasks[task].id};
    return result;
}

PlanPtr laidOut(const PlanInput& input)
{
    const FormulationPtr formulation = formulate(input).value();
    return judgePlan(formulation, input, layOut(*formulation, *input.layout));
}

/// Minutes that are in nobody's free time, as long as the task.
std::optional<Interval> whenNobodyIsFree(const Problem& problem, const Task& task)
{
    for (PlanTime from{}; from + task.duration <= problem.horizon; from += 5_min) {
        const Interval tried{from, from + task.duration};
        const bool isFree = std::ranges::any_of(problem.cooks, [&](const Cook& cook) {
            return std::ranges::any_of(cook.free, [&](const Interval& free) {
                return free.start < tried.end && tried.start < free.end;
            });
        });
        if (!isFree) {
            return tried;
        }
    }
    return std::nullopt;
}

/// Only with an option.
bool isOptional(const Problem& problem, TaskIndex task)
{
    return std::ranges::any_of(problem.choices, [&](const Choice& choice) {
        return std::ranges::any_of(choice.options, [&](const Option& option) {
            return std::ranges::find(option.tasks, task) != option.tasks.end();
        });
    });
}

struct Replanned
{
    std::size_t moved = 0; // beside the step that was moved by hand
    bool heldBefore = false;
};

/// Absent: no plan was found, mostly as there is none.
std::optional<Replanned> replanned(const PlanInput& input, const Plan& plan, TaskIndex task)
{
    const PlanInput changed = afterMove(input, plan, task, task.value() % 2 ? 20_min : -35_min);
    const PlanPtr dropped = laidOut(changed);
    const PlanPtr again = planned(changed, fewSteps);
    if (!again || !again->holds()) {
        return std::nullopt;
    }
    return Replanned{changeBetween(*dropped, *again).moved.size(), dropped->holds()};
}

/// Why the task cannot be at such a time.
std::optional<exact::Conflict> conflictAt(Problem problem, TaskIndex task, Interval window)
{
    problem.tasks[task].window = window;
    PlannerLimits limits;
    limits.steps = fewSteps;
    limits.wallClock = longEnough;
    quick_start::Budget budget(limits, {}, quick_start::Budget::Clock::now());
    return exact::findConflict(problem, budget);
}

} // namespace

TEST(MidsummerSupper, MakesWayForAStepByMovingFewOthers)
{
    const PlanInput input = inputOf("midsummer-supper");
    const PlanPtr plan = planned(input, stepsToPlan);
    ASSERT_TRUE(plan);
    std::size_t moved = 0;
    std::size_t made = 0;
    std::size_t held = 0;
    for (const TaskIndex task : plan->formulation->problem.tasks.indices()) {
        const auto during = plan->interval(task);
        if (task.value() % 5 != 0 || !during || during->empty()) {
            continue;
        }
        if (const auto done = replanned(input, *plan, task)) {
            EXPECT_TRUE(!done->heldBefore || done->moved == 0) << task.value();
            held += done->heldBefore ? 1U : 0U;
            moved += done->moved;
            ++made;
        }
    }
    EXPECT_GE(held, 1U);
    EXPECT_GE(made, 5U);
    EXPECT_LE(moved, 3 * made);
}

TEST(MidsummerSupper, SaysSoonWhyAStepCannotBeWhenNobodyIsFree)
{
    const Problem problem = formulate(inputOf("midsummer-supper")).value()->problem;
    int tried = 0;
    for (const TaskIndex task : problem.tasks.indices()) {
        if (task.value() % 8 != 0 || !problem.tasks[task].needsCooks() ||
            isOptional(problem, task)) {
            continue;
        }
        const auto window = whenNobodyIsFree(problem, problem.tasks[task]);
        ASSERT_TRUE(window);
        const std::string& id = problem.tasks[task].id;
        const auto conflict = conflictAt(problem, task, *window);
        ASSERT_TRUE(conflict) << id;
        EXPECT_TRUE(conflict->minimal) << id;
        EXPECT_EQ(std::ranges::count(conflict->requirements, "window:" + id), 1) << id;
        ++tried;
    }
    EXPECT_GE(tried, 5);
}

} // namespace suppertide::demo
