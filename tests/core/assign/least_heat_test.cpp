#include <gtest/gtest.h>

#include "core/assign/least_heat.h"
#include "core/assign/oven_heat.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

constexpr std::int64_t plenty = 10'000;

std::int64_t byEachMinute(const Oven& oven, const std::vector<OvenStay>& stays)
{
    OvenProgramStyle style;
    style.onMinute = 1;
    OvenHeat heat(oven, stays, style, plenty);
    heat.weigh({});
    return heat.least(0, std::int64_t{oven.startC} * 1000, false, false);
}

Oven anyOven(Random& random)
{
    const auto maxC = static_cast<int>(random.between(200, 260));
    const auto startC = static_cast<int>(random.oneIn(3) ? random.between(10, 220) : 20);
    Oven oven = test::coldOven(random, 2, maxC, {3'000, 20'000, 800, 6'000});
    oven.startC = startC;
    return oven;
}

std::vector<OvenStay> anyStays(Random& random)
{
    std::vector<OvenStay> stays;
    std::int64_t at = random.between(0, 700);
    for (std::int64_t i = random.between(1, 4); i > 0; --i) {
        OvenStay stay;
        const std::int64_t length = random.between(1, 120);
        stay.during = interval(at, at + length);
        stay.acceptLow = static_cast<int>(random.between(60, 180));
        stay.acceptHigh = stay.acceptLow + static_cast<int>(random.between(5, 60));
        stay.off = random.oneIn(8);
        stays.push_back(stay);
        at = random.oneIn(4) ? at + random.between(0, length)
                             : at + length + random.between(0, random.oneIn(2) ? 40 : 900);
    }
    return stays;
}

TEST(LeastHeat, IsAsMinuteByMinute)
{
    int asked = 0;
    forEachSeed(50, [&](Random& random) {
        const Oven oven = anyOven(random);
        LeastHeat heat(oven, plenty);
        for (int i = 0; i < 4; ++i) {
            const std::vector<OvenStay> stays = anyStays(random);
            const std::int64_t minutes = heat.minutesOn(stays);
            EXPECT_EQ(minutes, byEachMinute(oven, stays));
            asked += minutes > 0 && minutes < plenty ? 1 : 0;
        }
    });
    EXPECT_GT(asked, 80);
}

TEST(LeastHeat, IsTheSameWhenAllIsLater)
{
    forEachSeed(200, [](Random& random) {
        Oven oven = anyOven(random);
        oven.startC = oven.ambientC;
        std::vector<OvenStay> stays = anyStays(random);
        for (OvenStay& stay : stays) {
            stay.during =
                Interval{stay.during.start + Minutes{600}, stay.during.end + Minutes{600}};
        }
        const std::int64_t minutes = LeastHeat(oven, plenty).minutesOn(stays);
        for (OvenStay& stay : stays) {
            stay.during = Interval{stay.during.start + Minutes{77}, stay.during.end + Minutes{77}};
        }
        EXPECT_EQ(LeastHeat(oven, plenty).minutesOn(stays), minutes);
    });
}

TEST(LeastHeat, OfNothingIsNothing)
{
    Oven oven;
    oven.maxC = 250;
    oven.heatMilliCPerMin = 10'000;
    oven.coolMilliCPerMin = 3'000;
    EXPECT_EQ(LeastHeat(oven, plenty).minutesOn({}), 0);
}

} // namespace

} // namespace suppertide
