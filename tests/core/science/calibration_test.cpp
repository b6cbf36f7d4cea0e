#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/science/calibration.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::science {
namespace {

TEST(Calibration, NothingMeasuredLeavesEstimatesAsTheyAre)
{
    const auto none = calibrate({}).value();
    EXPECT_DOUBLE_EQ(none.factor.likely, 1.0);
    EXPECT_EQ(none.pairs, 0);
    const Estimate estimate{50.0, 60.0, 80.0, {}};
    const Estimate moved = calibrated(estimate, none);
    EXPECT_EQ(moved.least, 50.0);
    EXPECT_EQ(moved.likely, 60.0);
    EXPECT_EQ(moved.most, 80.0);
}

// By hand: precision 1/0.25² + 1/0.15², mean (ln 1.2/0.15²)/precision.
TEST(Calibration, OneEveningThatTookAFifthLongerMovesByASeventh)
{
    const auto one = calibrate({{60.0, 72.0}}).value();
    const double precision = 16.0 + 1.0 / 0.0225;
    const double mean = std::log(1.2) / 0.0225 / precision;
    EXPECT_NEAR(one.factor.likely, std::exp(mean), 1e-12);
    EXPECT_NEAR(one.factor.likely, 1.143, 0.0005);
    EXPECT_NEAR(one.factor.most, std::exp(mean + 1.2815515655446004 / std::sqrt(precision)), 1e-12);
    const double next = std::sqrt(1.0 / precision + 0.0225);
    EXPECT_NEAR(one.nextTime.least, std::exp(mean - 1.2815515655446004 * next), 1e-12);
}

TEST(Calibration, OrderIsWithoutEffectToTheLastDigit)
{
    test::forEachSeed(50, [](test::Random& random) {
        std::vector<MeasuredTime> pairs;
        for (std::int64_t i = 0; i < random.between(1, 30); ++i) {
            pairs.push_back({static_cast<double>(random.between(10, 200)), 0.0});
            pairs.back().measured =
                pairs.back().estimated * static_cast<double>(random.between(50, 200)) / 100.0;
        }
        const auto first = calibrate(pairs).value();
        std::shuffle(pairs.begin(), pairs.end(), random.engine());
        const auto second = calibrate(pairs).value();
        EXPECT_EQ(first.factor, second.factor);
        EXPECT_EQ(first.nextTime, second.nextTime);
    });
}

TEST(Calibration, ManyEveningsAreBelievedAndNarrowTheRange)
{
    const Estimate estimate{40.0, 60.0, 100.0, {}};
    double width = std::log(100.0 / 40.0);
    double factor = 1.0;
    for (const int evenings : {1, 2, 5, 20, 200}) {
        const std::vector<MeasuredTime> pairs(static_cast<std::size_t>(evenings), {60.0, 90.0});
        const auto learned = calibrate(pairs).value();
        EXPECT_GT(learned.factor.likely, factor);
        EXPECT_LT(learned.factor.likely, 1.5);
        EXPECT_LT(learned.factor.least, learned.factor.likely);
        EXPECT_LT(learned.nextTime.least, learned.factor.least);
        const Estimate moved = calibrated(estimate, learned);
        EXPECT_NEAR(moved.likely, 60.0 * learned.factor.likely, 1e-12);
        EXPECT_LT(std::log(moved.most / moved.least), width);
        EXPECT_EQ(moved.because.size(), 2U);
        width = std::log(moved.most / moved.least);
        factor = learned.factor.likely;
    }
    EXPECT_NEAR(factor, 1.5, 0.01);
}

TEST(Calibration, ShorterAndLongerAreTreatedAlike)
{
    const auto longer = calibrate({{60.0, 75.0}}).value();
    const auto shorter = calibrate({{75.0, 60.0}}).value();
    EXPECT_NEAR(longer.factor.likely * shorter.factor.likely, 1.0, 1e-12);
    EXPECT_NEAR(calibrate({{60.0, 75.0}, {75.0, 60.0}})->factor.likely, 1.0, 1e-12);
}

TEST(Calibration, WhatIsTooFarOffIsNotLearnedFrom)
{
    EXPECT_TRUE(calibrate({{60.0, 299.0}}));
    const auto far = calibrate({{60.0, 301.0}});
    ASSERT_FALSE(far);
    EXPECT_NE(far.error().forCook.find("301 minutes were measured where 60 were estimated"),
              std::string::npos)
        << far.error().forCook;
    EXPECT_FALSE(calibrate({{60.0, 0.0}}));
    EXPECT_FALSE(calibrate({{0.0, 60.0}}));
    EXPECT_FALSE(calibrate({{60.0, 60.0}}, {.prior = 0.0}));
}

TEST(Calibration, OvensAreLearnedInDegrees)
{
    const auto none = ovenOffset({}).value();
    EXPECT_EQ(none.likely, 0.0);
    EXPECT_NEAR(none.most, 12.0 * 1.2815515655446004, 1e-9);
    const auto one = ovenOffset({{180.0, 165.0}}).value();
    EXPECT_NEAR(one.likely, -15.0 * (1.0 / 36.0) / (1.0 / 144.0 + 1.0 / 36.0), 1e-9);
    EXPECT_LT(one.most - one.least, none.most - none.least);
    EXPECT_FALSE(ovenOffset({{180.0, 80.0}}));
}

} // namespace
} // namespace suppertide::science
