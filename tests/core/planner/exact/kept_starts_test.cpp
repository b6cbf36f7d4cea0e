#include <gtest/gtest.h>

#include "core/planner/exact/exact.h"
#include "core/planner/exact/kept_starts.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide {

namespace {

using exact::ExactSearch;
using exact::KeptStarts;
using test::SmallProblem;

constexpr std::int64_t apart = 15;
constexpr std::int64_t length = 10;

/// One cook's tasks, one each quarter of an hour, as they are in the plan to stay close to.
SmallProblem aDay(int tasks)
{
    SmallProblem made(apart * tasks + 100);
    for (int i = 0; i < tasks; ++i) {
        const TaskIndex task = made.work("t" + std::to_string(i), length);
        made.problem.costs.before.push_back({task, planTime(apart * i)});
    }
    made.problem.costs.beforeMoved = 1000;
    const CookIndex cook = made.cook("c");
    made.problem.cooks[cook].free = {interval(0, minuteOf(made.problem.horizon))};
    return made;
}

/// What the first schedule that is found costs: 1000 for each task that moves.
std::int64_t firstCost(const Problem& problem)
{
    PlannerLimits limits;
    limits.wallClock = std::chrono::minutes{10};
    limits.steps = 200'000;
    quick_start::Budget budget(limits, {}, quick_start::Budget::Clock::now());
    std::optional<std::int64_t> first;
    ExactSearch search(
        problem, budget, 1,
        [&](const Schedule& schedule) { first = first.value_or(*schedule.cost); },
        [](std::int64_t) {});
    search.run(ExactSearch::Work::All);
    return first.value_or(-1);
}

} // namespace

TEST(KeptStarts, LetGoAllOfWhatACoreNames)
{
    SmallProblem made = aDay(3);
    const exact::Model model(made.problem, {});
    KeptStarts kept(model);
    EXPECT_EQ(kept.literals().size(), 6U); // no earlier and no later, each
    const auto second = model.start(made.problem.costs.before[1].task);
    EXPECT_TRUE(kept.letGo({engine::atLeast(second, 15)}));
    EXPECT_EQ(kept.literals().size(), 4U);
    EXPECT_FALSE(kept.letGo({engine::atMost(second, 15)}));
    EXPECT_FALSE(kept.letGo({}));
}

TEST(KeptStarts, AreAimedAtAndOthersLeft)
{
    SmallProblem made = aDay(2);
    const TaskIndex other = made.work("other", length);
    const exact::Model model(made.problem, {});
    const auto aims =
        KeptStarts(model).aims(std::vector<engine::Bound>(model.engine().trail().views() / 2, 7));
    EXPECT_EQ(aims[model.start(made.problem.costs.before[1].task).index], apart);
    EXPECT_EQ(aims[model.start(other).index], 7);
}

TEST(KeptStarts, KeepTheOptionsOfThePlanToo)
{
    SmallProblem made = aDay(2);
    Choice choice;
    choice.id = "m";
    for (const TaskIndex task : made.problem.tasks.indices()) {
        Option option;
        option.id = made.problem.tasks[task].id;
        option.tasks = {task};
        choice.options.push_back(option);
    }
    made.problem.choices.push_back(choice);
    made.problem.costs.before.pop_back(); // the first option's task is in the plan
    const exact::Model model(made.problem, {});
    KeptStarts kept(model);
    EXPECT_EQ(kept.literals().size(), 3U);
    EXPECT_TRUE(kept.letGo({~model.option(ChoiceIndex{0}, OptionIndex{0})}));
    EXPECT_EQ(kept.literals().size(), 2U);
}

TEST(StayClose, MovesNothingOfAPlanThatHolds)
{
    EXPECT_EQ(firstCost(aDay(40).problem), 0);
}

// Pinned onto the next one, a task moves, and the next one with it; none of the others has to.
TEST(StayClose, MovesNoMoreThanWhatClashes)
{
    SmallProblem made = aDay(40);
    const std::int64_t at = 12 * apart;
    made.problem.tasks[made.problem.costs.before[11].task].window = interval(at, at + length);
    EXPECT_EQ(firstCost(made.problem), 2000);
}

} // namespace suppertide
