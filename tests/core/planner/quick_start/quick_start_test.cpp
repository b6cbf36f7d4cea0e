#include <gtest/gtest.h>

#include "core/planner/quick_start/quick_start.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide::quick_start {

namespace {

using test::endOf;
using test::SmallProblem;
using test::startOf;

/// Two dishes, both in the same half hour, each to be done with one of two things.
void addDish(SmallProblem& made, const std::string& id, CountIndex first, CountIndex second)
{
    Choice choice;
    choice.id = id;
    for (const CountIndex used : {first, second}) {
        const std::string name = id + std::to_string(choice.options.size());
        const TaskIndex task = made.task(name, 30);
        made.problem.tasks[task].window = interval(0, 30);
        made.counted(name, startOf(task), endOf(task), used, 1);
        choice.options.push_back({name, {task}, 0});
    }
    made.problem.choices.push_back(choice);
}

} // namespace

TEST(QuickStart, DoesTwoDishesOtherwiseAtOnceWhereNeitherCanBeAlone)
{
    SmallProblem made(60);
    const CountIndex oven = made.count("oven", 1);
    const CountIndex grill = made.count("grill", 1);
    addDish(made, "roast", oven, grill);
    addDish(made, "gratin", grill, oven);
    const TaskIndex served = made.event("served", 60);
    const TaskIndex first = made.problem.choices[ChoiceIndex{0}].options[OptionIndex{0}].tasks[0];
    made.lag("keeps", endOf(first), startOf(served), 0, std::nullopt).loss = 1;

    PlannerLimits limits;
    limits.wallClock = std::chrono::minutes{10};
    limits.steps = 20'000;
    Budget budget(limits, {}, Budget::Clock::now());
    std::vector<std::int64_t> costs;
    QuickStart search(made.problem, budget, 1, [&](const Schedule& better) {
        costs.push_back(*better.cost);
        return *better.cost > 0;
    });
    search.run();
    EXPECT_EQ(costs, (std::vector<std::int64_t>{30, 0}));
}

} // namespace suppertide::quick_start
