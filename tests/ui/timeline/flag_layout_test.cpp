#include <gtest/gtest.h>

#include <vector>

#include "tests/support/for_each_seed.h"
#include "ui/timeline/flag_layout.h"

namespace suppertide::ui {
namespace {

using suppertide::test::forEachSeed;
using suppertide::test::Random;

std::vector<Flag> layout(const std::vector<FlagNeed>& needs, double leftEdge = 0)
{
    return layoutFlags(needs, leftEdge);
}

TEST(Flags, HangOnTwoLevelsAlternatelyAndFlyLeft)
{
    const auto flags = layout({{300, 40, 30}, {500, 40, 30}, {700, 40, 30}});
    ASSERT_EQ(flags.size(), 3U);
    EXPECT_EQ(flags[0].level, 0);
    EXPECT_EQ(flags[1].level, 1);
    EXPECT_EQ(flags[2].level, 0);
    for (const Flag& flag : flags) {
        EXPECT_LT(flag.left, flag.right);
        EXPECT_TRUE(flag.showsName);
        EXPECT_TRUE(flag.showsTime);
    }
    EXPECT_DOUBLE_EQ(flags[1].right, 500);
}

TEST(Flags, LoseTheNameFirstThenTheTimeNeverTheNumber)
{
    const auto loose = layout({{300, 60, 30}, {310, 60, 30}, {420, 60, 30}});
    EXPECT_TRUE(loose[2].showsName);
    const auto tight = layout({{300, 60, 30}, {310, 60, 30}, {370, 60, 30}});
    EXPECT_FALSE(tight[2].showsName);
    EXPECT_TRUE(tight[2].showsTime);
    const auto tightest = layout({{300, 60, 30}, {310, 60, 30}, {330, 60, 30}});
    EXPECT_FALSE(tightest[2].showsName);
    EXPECT_FALSE(tightest[2].showsTime);
    EXPECT_DOUBLE_EQ(tightest[2].right - tightest[2].left, flagNumberWidth);
}

TEST(Flags, KeepTheirWordsRightOfTheLeftEdge)
{
    const auto flags = layout({{150, 60, 30}}, 122);
    EXPECT_FALSE(flags[0].showsName);
}

TEST(Flags, NeverLetTheWordsOfOneCoverAnother)
{
    forEachSeed(100, [](Random& random) {
        std::vector<FlagNeed> needs;
        double mast = 130;
        for (std::int64_t i = random.between(1, 8); i > 0; --i) {
            mast += static_cast<double>(random.between(0, 120));
            needs.push_back({mast, static_cast<double>(random.between(10, 90)), 30});
        }
        const auto flags = layout(needs, 122);
        for (std::size_t i = 0; i + 2 < flags.size(); ++i) {
            const Flag& next = flags[i + 2];
            EXPECT_EQ(next.level, flags[i].level);
            if (next.showsName || next.showsTime) {
                EXPECT_GE(next.left, flags[i].right);
            }
        }
    });
}

} // namespace
} // namespace suppertide::ui
