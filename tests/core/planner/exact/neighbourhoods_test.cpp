#include <gtest/gtest.h>

#include <algorithm>

#include "core/planner/exact/neighbourhoods.h"
#include "core/planner/exact/reading.h"
#include "core/planner/planner.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide::exact {

using test::endOf;
using test::SmallProblem;
using test::startOf;

namespace {

struct Dinner
{
    SmallProblem made{400};
    TaskIndex roast = made.task("roast", 30);
    TaskIndex fry = made.task("fry", 20); // instead of the roast
    TaskIndex bake = made.task("bake", 30);
    TaskIndex carve = made.task("carve", 5); // after the roast

    Dinner()
    {
        for (int i = 0; i < 20; ++i) {
            made.task("other" + std::to_string(i), 10);
        }
        made.oven("oven", 1);
        made.inOven("e1", roast, 180, 200, 190);
        made.inOven("e2", bake, 180, 200, 190);
        made.lag("l1", endOf(roast), startOf(carve), 0, 10);
        Choice choice;
        choice.id = "meat";
        choice.options.push_back({"oven", {roast}, 0});
        choice.options.push_back({"pan", {fry}, 0});
        made.problem.choices.push_back(choice);
    }
};

/// A thousand of about so many tasks.
std::vector<Neighbourhoods::Drawn> drawn(const Problem& problem, std::size_t size)
{
    const Schedule best = solve(problem, {.steps = 1000}).schedule;
    const Model model(problem, {});
    quick_start::Dice dice(1);
    Neighbourhoods neighbourhoods(model, dice);
    constexpr int draws = 1000;
    std::vector<Neighbourhoods::Drawn> result;
    result.reserve(draws);
    for (int i = 0; i < draws; ++i) {
        result.push_back(neighbourhoods.draw(best, aimsOf(model, best), size));
    }
    return result;
}

} // namespace

TEST(Neighbourhoods, FreeNoMoreThanAskedForOrAllThatIsHeated)
{
    const Dinner dinner;
    constexpr std::size_t size = 4;
    std::int64_t heated = 0;
    for (const auto& [freed, isOfSize] : drawn(dinner.made.problem, size)) {
        if (isOfSize) { // a lag has two ends, and an oven is drawn as a whole
            EXPECT_LE(std::ranges::count(freed, true), 2 * static_cast<std::ptrdiff_t>(size));
        } else {
            EXPECT_TRUE(freed[dinner.roast] && freed[dinner.bake]);
            ++heated;
        }
    }
    EXPECT_GT(heated, 30);
}

TEST(Neighbourhoods, FreeWithWhatIsHeatedWhatCouldBeDoneInsteadAndSomeOfWhatIsTiedToIt)
{
    const Dinner dinner;
    std::vector<Neighbourhoods::Drawn> heated = drawn(dinner.made.problem, 4);
    std::erase_if(heated, [](const auto& one) { return one.isOfSize; });
    EXPECT_TRUE(std::ranges::all_of(heated, [&](const auto& one) {
        return one.freed[dinner.fry] &&
               std::ranges::count(one.freed, true) == (one.freed[dinner.carve] ? 4 : 3);
    }));
    const auto withTied =
        std::ranges::count_if(heated, [&](const auto& one) { return one.freed[dinner.carve]; });
    EXPECT_GT(withTied, 0);
    EXPECT_LT(withTied, static_cast<std::ptrdiff_t>(heated.size()));
}

} // namespace suppertide::exact
