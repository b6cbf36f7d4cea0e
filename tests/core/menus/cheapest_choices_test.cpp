// Who takes what, against trying everything.
#include <gtest/gtest.h>

#include <limits>

#include "core/menus/cheapest_choices.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::menus {
namespace {

int costOfAll(const std::vector<Choices>& takers, const std::vector<std::size_t>& chosen,
              const CostOfMaking& costOfMaking)
{
    std::set<std::size_t> things;
    int penalties = 0;
    for (std::size_t i = 0; i < takers.size(); ++i) {
        things.insert(takers[i][chosen[i]].thing);
        penalties += takers[i][chosen[i]].penalty;
    }
    return costOfMaking(things) + penalties;
}

int leastByTrying(const std::vector<Choices>& takers, std::vector<std::size_t>& chosen,
                  const CostOfMaking& costOfMaking)
{
    if (chosen.size() == takers.size()) {
        return costOfAll(takers, chosen, costOfMaking);
    }
    int least = std::numeric_limits<int>::max();
    for (std::size_t i = 0; i < takers[chosen.size()].size(); ++i) {
        chosen.push_back(i);
        least = std::min(least, leastByTrying(takers, chosen, costOfMaking));
        chosen.pop_back();
    }
    return least;
}

std::vector<Choices> anyTakers(test::Random& random)
{
    std::vector<Choices> takers(static_cast<std::size_t>(random.between(1, 5)));
    for (Choices& choices : takers) {
        for (std::size_t thing = 0; thing < 4; ++thing) {
            if (random.oneIn(2) || (thing == 3 && choices.empty())) {
                choices.push_back({thing, static_cast<int>(random.between(0, 3))});
            }
        }
    }
    return takers;
}

TEST(CheapestChoices, CostNoMoreThanAnyOthers)
{
    test::forEachSeed(300, [](test::Random& random) {
        const auto takers = anyTakers(random);
        std::vector<int> costs;
        for (int i = 0; i < 4; ++i) {
            costs.push_back(static_cast<int>(random.between(0, 6)));
        }
        const int shared = static_cast<int>(random.between(0, 3)); // paid once, whatever is made
        const CostOfMaking cost = [&](const std::set<std::size_t>& things) {
            int sum = things.empty() ? 0 : shared;
            for (const std::size_t thing : things) {
                sum += costs[thing];
            }
            return sum;
        };
        const auto chosen = cheapestChoices(takers, cost);
        std::vector<std::size_t> tried;
        EXPECT_EQ(costOfAll(takers, chosen, cost), leastByTrying(takers, tried, cost));
    });
}

TEST(CheapestChoices, AreTheFirstOnesWhereAllCostTheSame)
{
    const CostOfMaking free = [](const std::set<std::size_t>&) { return 0; };
    EXPECT_EQ(cheapestChoices({{{2, 0}, {1, 0}}, {{0, 0}}}, free),
              (std::vector<std::size_t>{0, 0}));
}

TEST(CheapestChoices, AnswerEvenWhenThereIsNoTimeToSearch)
{
    const CostOfMaking count = [](const std::set<std::size_t>& things) {
        return static_cast<int>(things.size());
    };
    EXPECT_EQ(cheapestChoices({{{0, 0}, {1, 0}}, {{1, 0}, {2, 0}, {3, 0}}}, count, 0).size(), 2U);
}

} // namespace
} // namespace suppertide::menus
