#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/for_each_seed.h"
#include "ui/print/page_breaks.h"

namespace suppertide::ui {

namespace {

using testing::ElementsAre;

FlowItem item(double height)
{
    return {height};
}

FlowItem rest(double height)
{
    return {height, false, true};
}

FlowItem heading(double height)
{
    return {height, true, false};
}

TEST(PageBreaks, NothingStillMakesAPage)
{
    EXPECT_THAT(breakIntoPages({}, 100), ElementsAre(PageRange{0, 0}));
}

TEST(PageBreaks, FillPagesWithoutBreakingItems)
{
    EXPECT_THAT(breakIntoPages({item(60), item(40), item(1), item(99)}, 100),
                ElementsAre(PageRange{0, 2}, PageRange{2, 4}));
}

TEST(PageBreaks, GiveAnItemHigherThanAPageAPageOfItsOwn)
{
    EXPECT_THAT(breakIntoPages({item(10), item(140), item(10)}, 100),
                ElementsAre(PageRange{0, 1}, PageRange{1, 2}, PageRange{2, 3}));
}

TEST(PageBreaks, KeepWhatContinuesAnItemWithIt)
{
    // A fifth of the page is left: the hour goes to the next page as a whole.
    EXPECT_THAT(breakIntoPages({item(80), item(15), rest(20)}, 100),
                ElementsAre(PageRange{0, 1}, PageRange{1, 3}));
}

TEST(PageBreaks, PartAnItemRatherThanLeaveAQuarterOfAPageEmpty)
{
    EXPECT_THAT(breakIntoPages({item(70), item(25), rest(20)}, 100),
                ElementsAre(PageRange{0, 2}, PageRange{2, 3}));
}

TEST(PageBreaks, LeaveOutAHeadingAtTheHeadOfAPage)
{
    EXPECT_THAT(breakIntoPages({heading(10), item(50), heading(10), item(60)}, 100),
                ElementsAre(PageRange{1, 2}, PageRange{3, 4}));
}

TEST(PageBreaks, RunASectionOnIfAllOfItFits)
{
    EXPECT_THAT(breakIntoPages({item(50), heading(10), item(40)}, 100),
                ElementsAre(PageRange{0, 3}));
}

TEST(PageBreaks, RunALongSectionOnIfAThirdOfThePageIsLeft)
{
    EXPECT_THAT(breakIntoPages({item(60), heading(10), item(25), item(90)}, 100),
                ElementsAre(PageRange{0, 3}, PageRange{3, 4}));
    EXPECT_THAT(breakIntoPages({item(70), heading(5), item(20), item(90)}, 100),
                ElementsAre(PageRange{0, 1}, PageRange{2, 3}, PageRange{3, 4}));
}

TEST(PageBreaks, NeverEndAPageWithAHeadingOrOverfillIt)
{
    test::forEachSeed(300, [](test::Random& random) {
        std::vector<FlowItem> items;
        for (std::int64_t left = random.between(0, 30); left > 0; --left) {
            const auto height = static_cast<double>(random.between(1, 60));
            const bool isFirst = items.empty() || items.back().isHeading;
            if (!isFirst && random.oneIn(5)) {
                items.push_back(heading(height));
            } else {
                items.push_back(!isFirst && random.oneIn(3) ? rest(height) : item(height));
            }
        }
        const std::vector<PageRange> pages = breakIntoPages(items, 100);
        std::size_t next = 0;
        for (const PageRange& page : pages) {
            while (next < page.first) {
                EXPECT_TRUE(items[next].isHeading) << "left out: " << next;
                ++next;
            }
            ASSERT_EQ(next, page.first);
            double used = 0;
            for (; next < page.last; ++next) {
                used += items[next].height;
            }
            EXPECT_LE(used, 100);
            if (page.last > page.first && page.last < items.size()) {
                EXPECT_FALSE(items[page.last - 1].isHeading);
            }
        }
    });
}

} // namespace
} // namespace suppertide::ui
