#include <gtest/gtest.h>

#include <cmath>

#include "core/plan/oven_rate.h"

namespace suppertide {

namespace {

KitchenOven measured(std::vector<OvenWarming> warming)
{
    KitchenOven oven;
    oven.id = KitchenItemId{"oven"};
    oven.heatMilliCPerMin = 10'000;
    oven.warming = std::move(warming);
    return oven;
}

TEST(OvenRate, IsTheOvensOwnWhereNobodyHasMeasured)
{
    EXPECT_EQ(heatingRate(measured({}), 20_degC, 200_degC), 10'000);
}

TEST(OvenRate, GetsToWhatWasMeasuredInTheMinutesThatItTook)
{
    // 14 minutes from 20 to 200 °C: 180/14 = 12.857 °C a minute, rounded down.
    EXPECT_EQ(heatingRate(measured({{14_min, 200_degC}}), 20_degC, 200_degC), 12'857);
    const KitchenOven twice = measured({{7_min, 125_degC}, {14_min, 200_degC}});
    EXPECT_EQ(heatingRate(twice, 20_degC, 200_degC), 12'857);
}

TEST(OvenRate, FallsWithWhatIsAskedOfAnOvenThatSlowsDown)
{
    const KitchenOven twice = measured({{7_min, 125_degC}, {14_min, 200_degC}});
    // T = E − (E − 20)·e^(−7k) with (200 − 125)/(125 − 20) = e^(−7k): E = 387.5, k = 0.0481 a
    // minute; to 240 °C ln(367.5/147.5)/k = 19.0 minutes, 11.6 °C a minute.
    const auto to240 = measuredPreheat(twice.warming, 20_degC, 240_degC);
    ASSERT_TRUE(to240);
    EXPECT_NEAR(*to240, std::log(367.5 / 147.5) / (std::log(105.0 / 75.0) / 7.0), 0.01);
    EXPECT_NEAR(static_cast<double>(heatingRate(twice, 20_degC, 240_degC)), 220'000 / *to240, 1.0);
    EXPECT_GT(heatingRate(twice, 20_degC, 150_degC), heatingRate(twice, 20_degC, 200_degC));
}

TEST(OvenRate, IsTheOvensOwnWhereTheMeasurementsMakeNoSense)
{
    const KitchenOven faster = measured({{10_min, 60_degC}, {14_min, 200_degC}});
    EXPECT_EQ(heatingRate(faster, 20_degC, 200_degC), 10'000);
    const KitchenOven ends = measured({{7_min, 150_degC}, {14_min, 180_degC}});
    EXPECT_EQ(heatingRate(ends, 20_degC, 240_degC), 10'000); // it ends at 195 °C
    const auto never = measuredPreheat(ends.warming, 20_degC, 240_degC);
    ASSERT_FALSE(never);
    EXPECT_NE(never.error().forCook.find("does not get to 240"), std::string::npos);
}

} // namespace

} // namespace suppertide
