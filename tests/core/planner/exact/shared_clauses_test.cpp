#include <gtest/gtest.h>

#include <thread>

#include "core/planner/exact/shared_clauses.h"

namespace suppertide::exact {

using engine::Literals;

TEST(SharedClauses, TellsEachWhatOthersSaidOnce)
{
    SharedClauses clauses;
    const Literals one{{0, 1}, {3, -2}};
    const Literals other{{2, 5}};
    std::size_t heard = 0;
    clauses.tell(0, one);
    clauses.tell(1, other);
    EXPECT_EQ(clauses.hear(0, heard), std::vector<Literals>{other});
    EXPECT_TRUE(clauses.hear(0, heard).empty());
    clauses.tell(1, one);
    EXPECT_EQ(clauses.hear(0, heard), std::vector<Literals>{one});
    std::size_t ofOther = 0;
    EXPECT_EQ(clauses.hear(1, ofOther), std::vector<Literals>{one});
}

TEST(SharedClauses, LosesNothingBetweenThreads)
{
    constexpr std::size_t many = 2'000;
    SharedClauses clauses;
    std::jthread teller([&] {
        for (std::size_t i = 0; i < many; ++i) {
            clauses.tell(1, {{static_cast<engine::View>(i), 0}});
        }
    });
    std::size_t heard = 0;
    std::vector<Literals> all;
    while (all.size() < many) {
        for (Literals& clause : clauses.hear(0, heard)) {
            all.push_back(std::move(clause));
        }
    }
    for (std::size_t i = 0; i < many; ++i) {
        EXPECT_EQ(all[i].front().view, i);
    }
}

} // namespace suppertide::exact
