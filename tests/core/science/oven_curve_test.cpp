#include <gtest/gtest.h>

#include <cmath>

#include "core/science/oven_curve.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::science {
namespace {

TEST(OvenCurve, FourteenMinutesToTwoHundredIsALine)
{
    const auto oven = OvenHeating::fromOneReading(20.0, {14.0, 200.0}).value();
    EXPECT_NEAR(oven.minutesBetween(20.0, 200.0).value(), 14.0, 1e-12);
    EXPECT_NEAR(oven.minutesBetween(110.0, 200.0).value(), 7.0, 1e-12);
    EXPECT_NEAR(oven.temperatureAfter(20.0, 7.0).value(), 110.0, 1e-12);
    EXPECT_EQ(oven.hottest(), std::nullopt);
}

TEST(OvenCurve, TwoReadingsLieOnTheFittedCurve)
{
    test::forEachSeed(200, [](test::Random& random) {
        const double end = static_cast<double>(random.between(220, 390));
        const double tau = static_cast<double>(random.between(5, 60));
        const auto reading = [&](double minutes) {
            return OvenReading{minutes, end - (end - 20.0) * std::exp(-minutes / tau)};
        };
        const double first = static_cast<double>(random.between(3, 10));
        const auto a = reading(first);
        const auto b = reading(first + static_cast<double>(random.between(3, 15)));
        if (a.celsius < 40.0) {
            return;
        }
        const auto oven = OvenHeating::fromTwoReadings(20.0, a, b).value();
        EXPECT_NEAR(oven.temperatureAfter(20.0, a.minutes).value(), a.celsius, 0.01);
        EXPECT_NEAR(oven.temperatureAfter(20.0, b.minutes).value(), b.celsius, 0.01);
        EXPECT_NEAR(oven.minutesBetween(20.0, a.celsius).value(), a.minutes, 0.01);
        EXPECT_NEAR(oven.minutesBetween(a.celsius, b.celsius).value(), b.minutes - a.minutes, 0.01);
        if (b.minutes > 0.2 * tau) {
            EXPECT_NEAR(oven.hottest().value(), end, 0.5);
        }
    });
}

TEST(OvenCurve, AnOvenEndsWhereItsReadingsSay)
{
    const auto oven = OvenHeating::fromTwoReadings(20.0, {6.0, 140.0}, {14.0, 200.0}).value();
    const double end = oven.hottest().value();
    EXPECT_GT(end, 200.0);
    EXPECT_LT(end, 260.0);
    const auto never = oven.minutesBetween(20.0, end + 1.0);
    ASSERT_FALSE(never);
    EXPECT_NE(never.error().forCook.find("this oven ends at"), std::string::npos);
    EXPECT_GT(oven.minutesBetween(20.0, 200.0).value(), oven.minutesBetween(60.0, 200.0).value());
}

TEST(OvenCurve, ReadingsThatCannotBeAreRefused)
{
    EXPECT_FALSE(OvenHeating::fromTwoReadings(20.0, {10.0, 100.0}, {14.0, 200.0}));
    EXPECT_FALSE(OvenHeating::fromTwoReadings(20.0, {14.0, 200.0}, {6.0, 140.0}));
    EXPECT_FALSE(OvenHeating::fromTwoReadings(20.0, {6.0, 200.0}, {14.0, 200.0}));
    EXPECT_FALSE(OvenHeating::fromOneReading(20.0, {0.0, 200.0}));
    EXPECT_FALSE(OvenHeating::fromOneReading(20.0, {10.0, 25.0}));
    EXPECT_TRUE(OvenHeating::fromTwoReadings(20.0, {7.0, 110.0}, {14.0, 200.0}));
    EXPECT_FALSE(OvenCooling::fromReading(20.0, 200.0, {10.0, 210.0}));
    EXPECT_FALSE(OvenCooling::usual(20.0, false).minutesBetween(200.0, 20.0));
    EXPECT_FALSE(OvenCooling::usual(20.0, false).minutesBetween(100.0, 150.0));
}

TEST(OvenCurve, CoolingComesBackToItsReading)
{
    const auto oven = OvenCooling::fromReading(20.0, 220.0, {30.0, 150.0}).value();
    EXPECT_NEAR(oven.temperatureAfter(220.0, 30.0).value(), 150.0, 1e-9);
    EXPECT_NEAR(oven.minutesBetween(220.0, 150.0).value(), 30.0, 1e-9);
    EXPECT_NEAR(oven.minutesBetween(220.0, 180.0).value() +
                    oven.minutesBetween(180.0, 150.0).value(),
                30.0, 1e-9);
    EXPECT_EQ(oven.minutesBetween(150.0, 150.0).value(), 0.0);
    EXPECT_GT(oven.rateAt(220.0), oven.rateAt(150.0));
}

TEST(OvenCurve, AColderSettingPreheatsSooner)
{
    double last = 0.0;
    for (double celsius = 60.0; celsius <= 300.0; celsius += 20.0) {
        const auto estimate = usualPreheat(celsius).value();
        EXPECT_GT(estimate.likely, last);
        EXPECT_LE(estimate.least, estimate.likely);
        EXPECT_LE(estimate.likely, estimate.most);
        last = estimate.likely;
    }
    EXPECT_FALSE(usualPreheat(20.0));
    EXPECT_FALSE(fanSetting(400.0));
}

} // namespace
} // namespace suppertide::science
