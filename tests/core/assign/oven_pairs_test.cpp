#include <gtest/gtest.h>

#include "core/assign/oven_pairs.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

Oven plainOven()
{
    Oven oven;
    oven.id.push_back('o');
    oven.shelves = 2;
    oven.minC = 50;
    oven.maxC = 250;
    oven.startC = 20;
    oven.ambientC = 20;
    oven.heatMilliCPerMin = 15'000;
    oven.coolMilliCPerMin = 4'000;
    return oven;
}

OvenStay stay(std::int64_t start, std::int64_t end, int low, int high)
{
    OvenStay result;
    result.during = interval(start, end);
    result.acceptLow = low;
    result.acceptHigh = high;
    return result;
}

bool allAgree(const Oven& oven, const std::vector<OvenStay>& stays)
{
    for (std::size_t a = 0; a < stays.size(); ++a) {
        if (!ovenSuits(oven, stays[a]) || ovenStartClash(oven, stays[a])) {
            return false;
        }
        for (std::size_t b = 0; b < a; ++b) {
            if (ovenPairClash(oven, stays[a], stays[b])) {
                return false;
            }
        }
    }
    return true;
}

} // namespace

TEST(OvenPairs, DecideWhetherAProgramExists)
{
    int feasible = 0;
    forEachSeed(400, [&](Random& random) {
        const Oven oven = test::smallOven(random);
        const std::int64_t horizon = random.between(5, 11);
        std::vector<OvenStay> stays;
        for (std::int64_t i = random.between(1, 4); i > 0; --i) {
            stays.push_back(test::smallStay(random, horizon));
        }
        const bool exists = test::someProgramKeeps(oven, stays, horizon);
        EXPECT_EQ(allAgree(oven, stays), exists);
        feasible += exists ? 1 : 0;
    });
    EXPECT_GT(feasible, 20);
}

TEST(OvenPairs, LetAWideBandSpanTwoNarrowOnes)
{
    // [150, 200] stays throughout; in it first [150, 160], later [190, 200].
    const Oven oven = plainOven();
    EXPECT_TRUE(allAgree(
        oven, {stay(60, 180, 150, 200), stay(60, 90, 150, 160), stay(100, 140, 190, 200)}));
    // 30 °C at 15 °C a minute take 2 minutes; with one minute between them it cannot be.
    const auto clash = ovenPairClash(oven, stay(60, 90, 150, 160), stay(91, 140, 190, 200));
    ASSERT_TRUE(clash);
    EXPECT_EQ(clash->fault, OvenPairFault::TooSlowUp);
    EXPECT_EQ(clash->ramp, Minutes{2});
    EXPECT_EQ(clash->gap, Minutes{1});
}

TEST(OvenPairs, MeetInANarrowBand)
{
    const Oven oven = plainOven();
    EXPECT_TRUE(allAgree(oven, {stay(60, 120, 160, 174), stay(90, 150, 171, 190)}));
    const auto clash = ovenPairClash(oven, stay(60, 120, 160, 170), stay(90, 150, 171, 190));
    ASSERT_TRUE(clash);
    EXPECT_EQ(clash->fault, OvenPairFault::BandsApart);
    EXPECT_EQ(clash->when, interval(90, 120));
}

TEST(OvenPairs, UseAFallingOven)
{
    // From 220 to 100 at 4 °C a minute: 30 minutes; 29 are too few.
    const Oven oven = plainOven();
    EXPECT_FALSE(ovenPairClash(oven, stay(60, 90, 220, 230), stay(120, 200, 90, 100)));
    const auto clash = ovenPairClash(oven, stay(119, 200, 90, 100), stay(60, 90, 220, 230));
    ASSERT_TRUE(clash);
    EXPECT_EQ(clash->fault, OvenPairFault::TooSlowDown);
    EXPECT_EQ(clash->ramp, Minutes{30});
    EXPECT_EQ(clash->gap, Minutes{29});
}

TEST(OvenPairs, NeedThePreheatFromCold)
{
    // From 20 to 170 at 15 °C a minute: 10 minutes.
    const Oven oven = plainOven();
    EXPECT_FALSE(ovenStartClash(oven, stay(10, 60, 170, 190)));
    const auto clash = ovenStartClash(oven, stay(9, 60, 170, 190));
    ASSERT_TRUE(clash);
    EXPECT_EQ(clash->fault, OvenPairFault::TooSlowUp);
}

TEST(OvenPairs, LetASwitchedOffOvenCool)
{
    const Oven oven = plainOven();
    OvenStay drying = stay(100, 120, 20, 110);
    drying.off = true;
    EXPECT_FALSE(ovenPairClash(oven, stay(60, 100, 90, 110), drying));
    // At 120 it has cooled to at most 110 − 80 = 30; to 180 it takes 10 minutes.
    EXPECT_FALSE(ovenPairClash(oven, drying, stay(130, 150, 180, 200)));
    EXPECT_TRUE(ovenPairClash(oven, drying, stay(129, 150, 180, 200)));
    // What is in beside it would get too cool.
    EXPECT_TRUE(ovenPairClash(oven, drying, stay(90, 115, 100, 110)));
}

TEST(OvenPairs, RefuseWhatTheOvenCannotReach)
{
    EXPECT_FALSE(ovenSuits(plainOven(), stay(60, 90, 260, 280)));
    EXPECT_TRUE(ovenSuits(plainOven(), stay(60, 90, 240, 280)));
    EXPECT_FALSE(ovenSuits(plainOven(), stay(60, 90, 190, 180)));
}

} // namespace suppertide
