// Planning the rest again after a change by hand: what is held stays, what need not move does not,
// and what a plan changes is counted as a cook sees it.
#include <gmock/gmock.h>

#include "core/plan/plan_change.h"
#include "core/plan/weights.h"
#include "core/propose/make_plan.h"
#include "tests/support/for_each_seed.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::IsEmpty;

/// A gratin and roots that want the one oven at temperatures that do not meet, and a salad.
Supper twoForTheOven()
{
    Supper supper;
    supper.serve(recipeInOrder("Gratin", {step("Slice the potatoes", 20_min),
                                          inOven("Bake the gratin", 58_min, 150_degC)}));
    supper.serve(recipeInOrder(
        "Roots", {step("Peel the roots", 15_min), inOven("Roast the roots", 38_min, 220_degC)}));
    supper.serve(recipeInOrder("Salad", {step("Wash the leaves", 10_min)}));
    return supper;
}

PlanPtr planned(const PlanInput& input)
{
    PlanRequest request{input, {}, 0};
    request.limits.steps = 50'000;
    request.limits.wallClock = std::chrono::minutes(2); // the steps end it
    const auto outcome = makePlan(request);
    const auto* found = outcome ? std::get_if<PlanFound>(&*outcome) : nullptr;
    return found == nullptr ? nullptr : found->plan;
}

/// The evening with the plan that was found as its layout.
void take(Supper& supper, const Plan& plan)
{
    supper.layout = layoutOf(*plan.formulation, plan.schedule, supper.layout);
}

/// With the task dragged to a place, and what is tied to it moved along.
void drag(Supper& supper, TaskIndex task, PlanTime to)
{
    const PlanPtr now = supper.laidOut();
    const Schedule moved = moveTask(*now->formulation, supper.layout, now->schedule, task, to);
    supper.layout = layoutOf(*now->formulation, moved, supper.layout);
}

PlanInput leastChange(const Supper& supper, std::set<std::string> held)
{
    PlanInput input = supper.input();
    input.closeness = Closeness::LeastChange;
    input.held = std::move(held);
    return input;
}

std::vector<TaskIndex> workOf(const Plan& plan)
{
    std::vector<TaskIndex> work;
    for (const TaskIndex task : plan.formulation->problem.tasks.indices()) {
        if (plan.formulation->tasks[task].role == TaskRole::Step && plan.interval(task)) {
            work.push_back(task);
        }
    }
    return work;
}

TEST(LeastChange, MovesNothingWhereNothingNeedsTo)
{
    Supper supper = twoForTheOven();
    const PlanPtr first = planned(supper.input());
    ASSERT_NE(first, nullptr);
    take(supper, *first);
    const PlanPtr now = supper.laidOut();
    ASSERT_THAT(now->clashes, IsEmpty());
    for (const TaskIndex task : workOf(*now)) {
        const PlanPtr again =
            planned(leastChange(supper, {now->formulation->problem.tasks[task].id}));
        ASSERT_NE(again, nullptr);
        EXPECT_TRUE(changeBetween(*now, *again).empty())
            << now->formulation->problem.tasks[task].id;
    }
}

TEST(LeastChange, LeavesTheStepWhereItWasLetGo)
{
    Supper base = twoForTheOven();
    const PlanPtr first = planned(base.input());
    ASSERT_NE(first, nullptr);
    take(base, *first);
    int found = 0;
    forEachSeed(12, [&](Random& random) {
        Supper supper = base;
        const PlanPtr now = supper.laidOut();
        const std::vector<TaskIndex> work = workOf(*now);
        const TaskIndex task = work[static_cast<std::size_t>(
            random.between(0, static_cast<std::int64_t>(work.size()) - 1))];
        const PlanTime to = now->interval(task)->start - Minutes{5 * random.between(1, 12)};
        drag(supper, task, to);
        const std::string& id = now->formulation->problem.tasks[task].id;
        const PlanPtr again = planned(leastChange(supper, {id}));
        if (again != nullptr) {
            ++found;
            EXPECT_EQ(again->interval(again->formulation->taskById.at(id))->start, to) << id;
            EXPECT_THAT(again->clashes, IsEmpty());
        }
    });
    EXPECT_GT(found, 3);
}

TEST(LeastChange, MovesOnlyWhatIsInTheWay)
{
    Supper supper = twoForTheOven();
    const PlanPtr first = planned(supper.input());
    ASSERT_NE(first, nullptr);
    take(supper, *first);
    // Both in the oven at once: one has to go.
    const PlanPtr before = supper.laidOut();
    const TaskIndex bake = taskIndex(*before->formulation, "gratin/*/bake-the-gratin");
    const TaskIndex roast = taskIndex(*before->formulation, "roots/*/roast-the-roots");
    drag(supper, bake, before->interval(roast)->start - 20_min);
    const PlanPtr dragged = supper.laidOut();
    ASSERT_FALSE(dragged->holds());
    const PlanPtr again = planned(leastChange(supper, {"gratin/*/bake-the-gratin"}));
    ASSERT_NE(again, nullptr);
    const PlanChange change = changeBetween(*dragged, *again);
    EXPECT_LE(change.moved.size(), 2U); // the roast, and the peeling if it is before that
    EXPECT_EQ(change.coursesMoved, 0);
    for (const StepMove& move : change.moved) {
        EXPECT_EQ(again->formulation->tasks[move.task].dishName, "Roots");
    }
}

TEST(LeastChange, CountsWhatGoesIntoTheOvenAndComesOutAsOneStep)
{
    Supper supper = twoForTheOven();
    const PlanPtr before = supper.laidOut();
    const TaskIndex bake = taskIndex(*before->formulation, "gratin/*/bake-the-gratin");
    drag(supper, bake, before->interval(bake)->start - 10_min);
    const PlanChange change = changeBetween(*before, *supper.laidOut());
    const auto moved = std::ranges::count_if(change.moved, [&](const StepMove& move) {
        return before->formulation->tasks[move.task].text == "Bake the gratin";
    });
    EXPECT_EQ(moved, 1);
    EXPECT_EQ(change.most(), 10_min);
}

TEST(LeastChange, KeepsTheMethodOfAStepThatIsHeld)
{
    Supper supper;
    Recipe roots = recipe("Roots", {step("Peel the roots", 15_min)});
    Method oven{MethodId{"oven"}, "in the oven", 0, {}};
    oven.part.steps = {after(inOven("Roast the roots", 38_min, 220_degC), {"Peel the roots"})};
    Method pan{MethodId{"pan"}, "in the pan", 0, {}};
    pan.part.steps = {after(step("Fry the roots", 20_min), {"Peel the roots"})};
    roots.methods = {MethodChoice{MethodChoiceId{"how"}, "how", {oven, pan}}};
    supper.serve(roots);
    const PlanPtr first = planned(supper.input());
    ASSERT_NE(first, nullptr);
    take(supper, *first);
    ASSERT_EQ(supper.layout.options.size(), 1U);
    const auto& [choice, taken] = *supper.layout.options.begin();
    const std::string held =
        taken == "oven" ? "roots/oven/roast-the-roots" : "roots/pan/fry-the-roots";
    const PlanPtr again = planned(leastChange(supper, {held}));
    ASSERT_NE(again, nullptr);
    EXPECT_TRUE(again->interval(taskIndex(*again->formulation, held)));
    // The other one is not merely dearer: it is out of the question.
    const FormulationPtr formulation = again->formulation;
    EXPECT_TRUE(std::ranges::any_of(formulation->problem.lags, [](const Lag& lag) {
        return lag.min == Minutes{1} && lag.max == Minutes{0};
    }));
}

TEST(Weights, FollowThePreferences)
{
    Preferences preferences;
    const auto weights = [&] { return weightsFor(preferences, Closeness::AsPreferred); };
    const Weights some = weights();
    preferences.fewOvenChanges = Wish::None;
    preferences.fewSessions = Wish::None;
    preferences.stayClose = Wish::None;
    EXPECT_EQ(weights().ovenChange, 0);
    EXPECT_EQ(weights().session, 0);
    EXPECT_EQ(weights().moved, 0);
    EXPECT_EQ(weights().movedMinute, 0);
    preferences.fewOvenChanges = Wish::Much;
    preferences.fewSessions = Wish::Much;
    preferences.stayClose = Wish::Much;
    EXPECT_EQ(weights().ovenChange, 3 * some.ovenChange);
    EXPECT_EQ(weights().session, 3 * some.session);
    EXPECT_GT(weights().moved, some.moved);
    preferences.calm = 0;
    EXPECT_EQ(weights().quietRate, 0);
    EXPECT_EQ(weights().lossMinute(60), 2 * some.lossMinute(60));
    preferences.calm = 100;
    EXPECT_EQ(weights().lossMinute(60), some.lossMinute(60) / 10);
}

TEST(Weights, LetNothingMoveForTheSakeOfAnythingButTheTime)
{
    const Weights least = weightsFor({}, Closeness::LeastChange);
    EXPECT_GT(least.lateMinute, least.moved);
    EXPECT_GE(least.moved, 100 * least.ovenChange);
}

TEST(Weights, AskForNoClosenessThatIsNotWishedFor)
{
    Supper supper = twoForTheOven();
    take(supper, *supper.laidOut());
    EXPECT_FALSE(supper.formulated()->problem.costs.before.empty());
    supper.occasion.preferences.stayClose = Wish::None;
    EXPECT_THAT(supper.formulated()->problem.costs.before, IsEmpty());
}

} // namespace

} // namespace suppertide::test
