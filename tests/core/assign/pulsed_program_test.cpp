#include <gtest/gtest.h>

#include <algorithm>

#include "core/assign/pulsed_program.h"
#include "core/problem/oven_curve.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

OvenProgramStyle anyStyle(Random& random)
{
    OvenProgramStyle style;
    style.change = random.between(0, 6);
    style.onMinute = random.between(1, 3);
    style.preferC = random.between(0, 2);
    style.coast = random.oneIn(2);
    return style;
}

bool isOnOnlyWhere(const OvenCurve& pulsed, const OvenCurve& held, std::int64_t horizon)
{
    for (std::int64_t at = 0; at < horizon; ++at) {
        const auto setting = pulsed.setting(planTime(at));
        if (setting && setting != held.setting(planTime(at))) {
            return false;
        }
    }
    return true;
}

TEST(PulsedProgram, KeepsTheStaysForLessAndIsNoCheaperThanAnyCanBe)
{
    int pulsedAny = 0;
    forEachSeed(800, [&](Random& random) {
        constexpr std::int64_t horizon = 16;
        const Oven oven = test::smallOven(random);
        const OvenProgramStyle style = anyStyle(random);
        std::vector<OvenStay> stays;
        for (std::int64_t i = random.between(1, 3); i > 0; --i) {
            stays.push_back(test::smallStay(random, horizon));
        }
        const OvenProgramResult held = ovenProgramFor(oven, stays, style);
        if (!held.ignored.empty()) {
            return;
        }
        const auto pulsed = pulsedProgram(oven, held.program, stays, style);
        if (!pulsed) {
            return;
        }
        ++pulsedAny;
        EXPECT_LT(pulsed->cost, held.cost);
        for (const OvenStay& stay : stays) {
            EXPECT_TRUE(test::programKeeps(oven, pulsed->program, stay));
        }
        EXPECT_TRUE(isOnOnlyWhere(OvenCurve(oven, pulsed->program), OvenCurve(oven, held.program),
                                  horizon));
        const auto least = test::leastProgramCost(oven, stays, horizon, style);
        ASSERT_TRUE(least.has_value());
        EXPECT_GE(pulsed->cost, *least);
    });
    EXPECT_GT(pulsedAny, 50);
}

/// An hour at 170…190 °C in an oven that warms by 15 a minute and cools by 4: a minute on warms it
/// to the 180 that are set, and two minutes off let it fall to 172; a third would be too many.
TEST(PulsedProgram, IsOnForAThirdOfTheTime)
{
    Oven oven;
    oven.shelves = 1;
    oven.minC = 50;
    oven.maxC = 250;
    oven.startC = oven.ambientC = 20;
    oven.heatMilliCPerMin = 15'000;
    oven.coolMilliCPerMin = 4'000;
    OvenStay stay;
    stay.during = interval(100, 160);
    stay.acceptLow = 170;
    stay.acceptHigh = 190;
    stay.prefer = 180;
    OvenProgramStyle style;
    style.onMinute = 1;
    style.preferC = 1;
    const OvenProgramResult held = ovenProgramFor(oven, {stay}, style);
    const auto pulsed = pulsedProgram(oven, held.program, {stay}, style);
    ASSERT_TRUE(pulsed.has_value());
    const OvenCurve curve(oven, pulsed->program);
    EXPECT_GE(OvenCurve(oven, held.program).onBefore(planTime(1000)), Minutes{60});
    EXPECT_LE(curve.onBefore(planTime(1000)), Minutes{11 + 60 / 3}); // 11 to warm up
}

TEST(PulsedProgram, GainsNothingWhereMinutesOnAreFree)
{
    Oven oven;
    oven.shelves = 1;
    oven.maxC = 250;
    oven.startC = oven.ambientC = 20;
    oven.heatMilliCPerMin = 15'000;
    oven.coolMilliCPerMin = 4'000;
    OvenStay stay;
    stay.during = interval(30, 60);
    stay.acceptLow = 170;
    stay.acceptHigh = 190;
    const OvenProgramStyle free;
    EXPECT_FALSE(pulsedProgram(oven, ovenProgramFor(oven, {stay}, free).program, {stay}, free));
    EXPECT_FALSE(pulsedProgram(oven, {}, {}, free));
}

} // namespace

} // namespace suppertide
