#include <gtest/gtest.h>

#include <vector>

#include "tests/support/for_each_seed.h"
#include "ui/timeline/time_axis.h"

namespace suppertide::ui {
namespace {

using suppertide::test::forEachSeed;
using suppertide::test::Random;

const std::vector<Interval> night{interval(600, 1200)};

TEST(TimeAxis, IsLinearWhereNothingIsFolded)
{
    const TimeAxis axis{interval(0, 1440), 60, {}, 28};
    EXPECT_DOUBLE_EQ(axis.xOf(planTime(0)), 0);
    EXPECT_DOUBLE_EQ(axis.xOf(planTime(90)), 90);
    EXPECT_DOUBLE_EQ(axis.width(), 1440);
}

// 0      600   1200      1440        min
// |-------|~~~~~|---------|
// 0      600   628       868         px at 60 an hour
TEST(TimeAxis, SqueezesAFoldToItsWidthAndStaysLinearInIt)
{
    const TimeAxis axis{interval(0, 1440), 60, night, 28};
    EXPECT_DOUBLE_EQ(axis.xOf(planTime(600)), 600);
    EXPECT_DOUBLE_EQ(axis.xOf(planTime(900)), 614);
    EXPECT_DOUBLE_EQ(axis.xOf(planTime(1200)), 628);
    EXPECT_DOUBLE_EQ(axis.width(), 868);
    EXPECT_TRUE(axis.isFolded(planTime(600)));
    EXPECT_FALSE(axis.isFolded(planTime(1200)));
}

TEST(TimeAxis, GoesOnBeyondTheHorizonAtTheUsualPace)
{
    const TimeAxis axis{interval(0, 1440), 60, night, 28};
    EXPECT_DOUBLE_EQ(axis.xOf(planTime(-30)), -30);
    EXPECT_DOUBLE_EQ(axis.xOf(planTime(1500)), 928);
    EXPECT_EQ(axis.timeAt(-30), planTime(-30));
    EXPECT_EQ(axis.timeAt(928), planTime(1500));
}

TEST(TimeAxis, CutsFoldsToTheHorizon)
{
    const TimeAxis axis{interval(0, 300), 60, std::vector{interval(-500, -100), interval(240, 900)},
                        28};
    EXPECT_DOUBLE_EQ(axis.width(), 268);
}

TEST(TimeAxis, NamesTheNearestMinute)
{
    const TimeAxis axis{interval(0, 600), 60, {}, 28};
    EXPECT_EQ(axis.timeAt(10.4), planTime(10));
    EXPECT_EQ(axis.timeAt(10.6), planTime(11));
}

std::vector<Interval> anyFolds(Random& random, const Interval& horizon)
{
    std::vector<Interval> folds;
    PlanTime at = horizon.start;
    while (at < horizon.end) {
        const PlanTime start = at + Minutes{random.between(0, 400)};
        const PlanTime end = start + Minutes{random.between(90, 900)};
        folds.push_back({start, end});
        at = end;
    }
    return folds;
}

TEST(TimeAxis, LeadsBackFromEveryXToItsMinuteAndNeverTurnsRound)
{
    forEachSeed(50, [](Random& random) {
        const Interval horizon{planTime(random.between(-3000, 0)),
                               planTime(random.between(100, 4000))};
        const std::vector<Interval> folds = anyFolds(random, horizon);
        const auto pace = static_cast<double>(random.between(16, 360));
        const TimeAxis axis{horizon, pace, folds, 28};
        double before = axis.xOfMinute(static_cast<double>(minuteOf(horizon.start)) - 200);
        for (std::int64_t minute = minuteOf(horizon.start) - 193;
             minute < minuteOf(horizon.end) + 200; minute += 7) {
            const double x = axis.xOf(planTime(minute));
            EXPECT_GT(x, before);
            EXPECT_EQ(axis.timeAt(x), planTime(minute));
            EXPECT_NEAR(axis.minuteAt(x), static_cast<double>(minute), 1e-6);
            before = x;
        }
    });
}

} // namespace
} // namespace suppertide::ui
