#include <gtest/gtest.h>

#include "core/assign/cheapest_program.h"
#include "core/assign/closed_up.h"
#include "core/problem/oven_curve.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

constexpr std::int64_t plenty = 1'000'000;

/// Which cools and heats within some minutes, so that there are empty times after which it has
/// forgotten.
Oven quickOven(Random& random)
{
    return test::coldOven(random, 2, 120, {5'000, 20'000, 4'000, 12'000});
}

/// Three stays with empty times between them that may be long.
std::vector<OvenStay> farApart(const Oven& oven, Random& random)
{
    std::vector<OvenStay> stays;
    std::int64_t at = ovenForgets(oven) + random.between(0, 40);
    for (int i = 0; i < 3; ++i) {
        OvenStay stay;
        const std::int64_t length = random.between(3, 15);
        stay.during = interval(at, at + length);
        stay.acceptLow = static_cast<int>(random.between(60, 100));
        stay.acceptHigh = stay.acceptLow + static_cast<int>(random.between(4, 20));
        if (random.oneIn(2)) {
            stay.prefer = stay.acceptLow + 2;
        }
        stays.push_back(stay);
        at += length + (random.oneIn(2) ? random.between(0, 12)
                                        : ovenForgets(oven) + random.between(-3, 60));
    }
    return stays;
}

OvenProgramStyle anyStyle(Random& random)
{
    OvenProgramStyle style;
    style.onMinute = 1;
    style.change = random.between(0, 12);
    style.preferC = random.between(0, 2);
    return style;
}

TEST(ClosedUp, CostsAsMuchAsWithTheEmptyTimes)
{
    int shorter = 0;
    forEachSeed(150, [&](Random& random) {
        const Oven oven = quickOven(random);
        const std::vector<OvenStay> stays = farApart(oven, random);
        const OvenProgramStyle style = anyStyle(random);
        const ClosedUp closed = closedUp(stays, Minutes{ovenForgets(oven)});
        shorter += closed.stays.back().during.end < stays.back().during.end ? 1 : 0;
        const CheapestProgram before = cheapestProgram(oven, stays, style, plenty, plenty);
        const CheapestProgram after = cheapestProgram(oven, closed.stays, style, plenty, plenty);
        ASSERT_EQ(before.program.has_value(), after.program.has_value());
        if (!after.program) {
            return;
        }
        EXPECT_EQ(before.cost, after.cost);
        const OvenProgram opened = openedUp(oven, *after.program, closed);
        for (const OvenStay& stay : stays) {
            EXPECT_TRUE(test::programKeeps(oven, opened, stay));
        }
        const OvenCurve curve(oven, opened);
        const OvenCurve tight(oven, *after.program);
        EXPECT_EQ(curve.onBefore(planTime(plenty)), tight.onBefore(planTime(plenty)));
        EXPECT_EQ(curve.changes(), tight.changes());
    });
    EXPECT_GT(shorter, 100);
}

TEST(ClosedUp, LeavesShortEmptyTimesAlone)
{
    Oven oven;
    oven.minC = 50;
    oven.maxC = 250;
    oven.startC = oven.ambientC = 20;
    oven.heatMilliCPerMin = 10'000;
    oven.coolMilliCPerMin = 2'000;
    OvenStay stay;
    stay.during = interval(40, 60);
    OvenStay next = stay;
    next.during = interval(100, 130);
    const ClosedUp closed = closedUp({next, stay}, Minutes{50});
    ASSERT_EQ(closed.stays.size(), 2U);
    EXPECT_EQ(closed.stays[0], stay);
    EXPECT_EQ(closed.stays[1], next);
    EXPECT_TRUE(closed.parts.empty());
    const OvenProgram program{{planTime(30), 180}, {planTime(60), std::nullopt}};
    EXPECT_EQ(openedUp(oven, program, closed), program);
}

} // namespace

} // namespace suppertide
