#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

#include "tests/support/for_each_seed.h"
#include "ui/models/chart_scale.h"

namespace suppertide::ui {
namespace {

using suppertide::test::forEachSeed;
using suppertide::test::Random;
using testing::DoubleNear;
using testing::ElementsAre;

double number(Random& random, std::int64_t low, std::int64_t high)
{
    return static_cast<double>(random.between(low, high));
}

TEST(TimeWindow, KeepsTheMinuteUnderThePointerWhileItZooms)
{
    TimeWindow window(0, 1000);
    EXPECT_TRUE(window.isWhole());
    window.zoom(0.5, 200);
    EXPECT_THAT(window.from(), DoubleNear(100, 1e-9));
    EXPECT_THAT(window.to(), DoubleNear(600, 1e-9));
    EXPECT_FALSE(window.isWhole());
    window.showAll();
    EXPECT_TRUE(window.isWhole());
}

TEST(TimeWindow, StaysWithinTheWholeWhateverIsDoneToIt)
{
    forEachSeed(200, [](Random& random) {
        const double from = number(random, -500, 500);
        const double to = from + number(random, 0, 3000);
        TimeWindow window(from, to);
        for (int i = 0; i < 20; ++i) {
            if (random.oneIn(2)) {
                window.zoom(number(random, 1, 40) / 10.0, number(random, -1000, 4000));
            } else {
                window.move(number(random, -5000, 5000));
            }
            EXPECT_GE(window.from(), from - 1e-6);
            EXPECT_LE(window.to(), std::max(to, from + TimeWindow::shortest) + 1e-6);
            EXPECT_GE(window.length(), TimeWindow::shortest - 1e-6);
        }
    });
}

TEST(TimeWindow, ShowsTheSameMinutesOfAPlanThatHasGrown)
{
    TimeWindow whole(0, 600);
    whole.setWhole(-60, 700);
    EXPECT_TRUE(whole.isWhole());
    TimeWindow part(0, 600);
    part.zoom(0.5, 0);
    part.setWhole(-60, 700);
    EXPECT_THAT(part.from(), DoubleNear(0, 1e-9));
    EXPECT_THAT(part.to(), DoubleNear(300, 1e-9));
}

TEST(TimeTicks, AreAtRoundTimesOfTheClockOnTheWall)
{
    PlanCalendar calendar;
    calendar.zone = *TimeZone::find("Europe/London");
    calendar.origin = calendar.zone.instant(CivilTime{{2027, 6, 18}, {17, 10}});
    const auto ticks = timeTicks(calendar, TimeWindow(0, 600), 100);
    std::vector<std::string> clocks;
    for (const TimeTick& tick : ticks) {
        clocks.push_back(toIso(tick.civil.clock) + (tick.isDay ? " day" : ""));
        EXPECT_EQ(calendar.civil(tick.time), tick.civil);
    }
    EXPECT_THAT(clocks, ElementsAre("18:00 day", "20:00", "22:00", "00:00 day", "02:00"));
}

/// The clocks go forward at 01:00 on 28 March 2027: 01:30 does not occur.
TEST(TimeTicks, LeaveOutTimesThatTheClockJumpsOver)
{
    PlanCalendar calendar;
    calendar.zone = *TimeZone::find("Europe/London");
    calendar.origin = calendar.zone.instant(CivilTime{{2027, 3, 28}, {0, 0}});
    std::vector<std::string> clocks;
    for (const TimeTick& tick : timeTicks(calendar, TimeWindow(0, 120), 30)) {
        clocks.push_back(toIso(tick.civil.clock));
    }
    EXPECT_THAT(clocks, ElementsAre("00:00", "00:30", "02:00", "02:30", "03:00"));
}

TEST(DegreeScale, HoldsAllDegreesInFewRoundSteps)
{
    EXPECT_EQ(degreeScale(0, 73.9, 6), (DegreeScale{0, 80, 20}));
    EXPECT_EQ(degreeScale(-18, 100, 6), (DegreeScale{-50, 150, 50}));
    forEachSeed(100, [](Random& random) {
        const double least = number(random, -40, 50);
        const double greatest = least + number(random, 0, 300);
        const DegreeScale scale = degreeScale(least, greatest, 6);
        EXPECT_LE(scale.low, least);
        EXPECT_GE(scale.high, greatest);
        EXPECT_LE((scale.high - scale.low) / scale.step, 6 + 1e-9);
    });
}

TEST(SpreadLabels, MovesOverlappingLabelsApartInTheirOrder)
{
    EXPECT_THAT(spreadLabels({50, 10, 52}, 14, 0, 200), ElementsAre(50, 10, 64));
    EXPECT_THAT(spreadLabels({198, 199}, 14, 0, 200), ElementsAre(179, 193));
    forEachSeed(100, [](Random& random) {
        std::vector<double> wanted(static_cast<std::size_t>(random.between(1, 8)));
        for (double& each : wanted) {
            each = number(random, -20, 220);
        }
        std::vector<double> placed = spreadLabels(wanted, 14, 0, 200);
        std::ranges::sort(placed);
        for (std::size_t i = 0; i < placed.size(); ++i) {
            EXPECT_GE(placed[i], 7 - 1e-9);
            EXPECT_LE(placed[i], 193 + 1e-9);
            EXPECT_TRUE(i == 0 || placed[i] - placed[i - 1] >= 14 - 1e-9);
        }
    });
}

TEST(DegreeScale, OfFahrenheitHasItsTicksAtRoundOnes)
{
    const DegreeScale scale = fahrenheitScale(4, 100, 6);
    EXPECT_LE(scale.low, 4);
    EXPECT_GE(scale.high, 100);
    const double steps = (scale.high - scale.low) / scale.step;
    EXPECT_NEAR(steps, std::round(steps), 1e-9);
    EXPECT_NEAR(std::fmod(scale.low * 1.8 + 32 + 1e-9, 10), 0, 1e-6);
    EXPECT_EQ(tickText(100, true, true), "212 °F");
    EXPECT_EQ(tickText(-20, true, false), "−4°");
    EXPECT_EQ(tickText(100, false, true), "100 °C");
}

} // namespace
} // namespace suppertide::ui
