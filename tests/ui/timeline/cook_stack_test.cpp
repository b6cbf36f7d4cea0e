#include <gtest/gtest.h>

#include <vector>

#include "tests/support/for_each_seed.h"
#include "ui/timeline/cook_stack.h"

namespace suppertide::ui {
namespace {

using suppertide::test::forEachSeed;
using suppertide::test::Random;

// 80 |      bbbb
// 10 | aaaaaaaaaaaaaa
TEST(CookStack, LaysTheLongestLowest)
{
    const std::vector<StackItem> items{{interval(20, 40), 80}, {interval(0, 90), 10}};
    const auto pieces = stackUp(items);
    ASSERT_EQ(pieces.size(), 2U);
    EXPECT_EQ(pieces[0].item, 0U);
    EXPECT_EQ(pieces[0].base, 10);
    EXPECT_EQ(pieces[1].base, 0);
}

TEST(CookStack, StepsDownWhereTheOneBelowEnds)
{
    const std::vector<StackItem> items{{interval(0, 60), 10}, {interval(40, 90), 80}};
    const auto pieces = stackUp(items);
    ASSERT_EQ(pieces.size(), 3U);
    EXPECT_EQ(pieces[1].when, interval(40, 60));
    EXPECT_EQ(pieces[1].base, 10);
    EXPECT_EQ(pieces[2].when, interval(60, 90));
    EXPECT_EQ(pieces[2].base, 0);
}

TEST(CookStack, HasNothingForWhatTakesNothing)
{
    const std::vector<StackItem> items{{interval(0, 60), 0}, {interval(10, 10), 80}};
    EXPECT_TRUE(stackUp(items).empty());
}

TEST(CookStack, IsAtEveryMinuteExactlyAsHighAsWhatIsTaken)
{
    forEachSeed(100, [](Random& random) {
        std::vector<StackItem> items;
        for (std::int64_t i = random.between(1, 7); i > 0; --i) {
            const std::int64_t start = random.between(0, 50);
            items.push_back({interval(start, start + random.between(0, 30)),
                             static_cast<int>(random.between(0, 4)) * 20});
        }
        const auto pieces = stackUp(items);
        for (std::int64_t minute = 0; minute < 90; ++minute) {
            int taken = 0;
            std::vector<int> covers(121 * 8, 0); // percent by percent, how many pieces lie there
            for (const StackItem& item : items) {
                taken += item.when.contains(planTime(minute)) ? item.percent : 0;
            }
            for (const StackPiece& piece : pieces) {
                if (piece.when.contains(planTime(minute))) {
                    for (int p = 0; p < items[piece.item].percent; ++p) {
                        ++covers.at(static_cast<std::size_t>(piece.base + p));
                    }
                }
            }
            for (std::size_t p = 0; p < covers.size(); ++p) {
                EXPECT_EQ(covers[p], static_cast<int>(p) < taken ? 1 : 0)
                    << "minute " << minute << ", percent " << p;
            }
        }
    });
}

} // namespace
} // namespace suppertide::ui
