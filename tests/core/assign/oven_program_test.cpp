#include <gtest/gtest.h>

#include <algorithm>

#include "core/assign/oven_program.h"
#include "core/problem/oven_curve.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

constexpr OvenProgramStyle plainStyle{20, 1, 1, false};

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

OvenStay stay(std::int64_t start, std::int64_t end, int low, int high, int prefer)
{
    OvenStay result;
    result.during = interval(start, end);
    result.acceptLow = low;
    result.acceptHigh = high;
    result.prefer = prefer;
    return result;
}

ProgramEntry on(std::int64_t at, int setting)
{
    return {planTime(at), setting};
}

ProgramEntry off(std::int64_t at)
{
    return {planTime(at), std::nullopt};
}

std::int64_t costOf(const Oven& oven, const OvenProgram& program,
                    const std::vector<OvenStay>& stays, const OvenProgramStyle& style)
{
    const OvenCurve curve(oven, program);
    std::int64_t cost =
        style.change * curve.changes() + style.onMinute * curve.onBefore(planTime(100'000)).count();
    for (const OvenStay& stay : stays) {
        if (stay.prefer) {
            const int setting = curve.setting(stay.during.start).value_or(oven.ambientC);
            cost += style.preferC * std::abs(setting - *stay.prefer);
        }
    }
    return cost;
}

void expectHolds(const Oven& oven, const std::vector<OvenStay>& stays,
                 const OvenProgramStyle& style, const OvenProgramResult& found)
{
    for (std::size_t i = 0; i < stays.size(); ++i) {
        const bool ignored =
            std::find(found.ignored.begin(), found.ignored.end(), i) != found.ignored.end();
        EXPECT_TRUE(ignored || test::programKeeps(oven, found.program, stays[i]));
    }
    for (std::size_t i = 0; i < found.program.size(); ++i) {
        EXPECT_TRUE(i == 0 || found.program[i - 1].at < found.program[i].at);
        const int setting = found.program[i].setC.value_or(oven.minC);
        EXPECT_TRUE(oven.minC <= setting && setting <= oven.maxC);
    }
    EXPECT_EQ(found.cost, costOf(oven, found.program, stays, style));
}

std::vector<OvenStay> smallStays(Random& random, std::int64_t horizon, bool withOff)
{
    std::vector<OvenStay> stays;
    for (std::int64_t i = random.between(1, 4); i > 0; --i) {
        stays.push_back(test::smallStay(random, horizon));
        stays.back().off = withOff && random.oneIn(3);
    }
    return stays;
}

} // namespace

TEST(OvenProgramFor, FindsOneExactlyIfOneExists)
{
    int feasible = 0;
    forEachSeed(400, [&](Random& random) {
        const Oven oven = test::smallOven(random);
        const std::int64_t horizon = random.between(5, 11);
        const auto stays = smallStays(random, horizon, random.oneIn(2));
        const OvenProgramStyle style{random.between(0, 20), random.between(0, 2),
                                     random.between(0, 2), random.oneIn(2)};
        const OvenProgramResult found = ovenProgramFor(oven, stays, style);
        const bool exists = test::someProgramKeeps(oven, stays, horizon);
        EXPECT_EQ(found.ignored.empty(), exists);
        expectHolds(oven, stays, style, found);
        feasible += exists ? 1 : 0;
    });
    EXPECT_GT(feasible, 20);
}

TEST(OvenProgramFor, SwitchesOnAsLateAsThePreheatAllows)
{
    // From 20 °C to 170 °C at 15 °C a minute: 10 minutes.
    const auto found = ovenProgramFor(plainOven(), {stay(60, 100, 170, 190, 180)}, plainStyle);
    EXPECT_EQ(found.program, (OvenProgram{on(50, 180), off(100)}));
    EXPECT_EQ(found.cost, 50);
}

TEST(OvenProgramFor, CoastsOnlyIfAskedTo)
{
    // From 180 °C to 170 °C at 4 °C a minute: 2 whole minutes.
    OvenProgramStyle style = plainStyle;
    style.coast = true;
    const auto found = ovenProgramFor(plainOven(), {stay(60, 100, 170, 190, 180)}, style);
    EXPECT_EQ(found.program, (OvenProgram{on(50, 180), off(98)}));
}

TEST(OvenProgramFor, SharesOneSettingWhereAChangeCostsMore)
{
    const std::vector<OvenStay> stays{stay(60, 100, 170, 190, 180), stay(80, 140, 150, 175, 160)};
    const auto found = ovenProgramFor(plainOven(), stays, {100, 1, 1, false});
    const OvenCurve curve(plainOven(), found.program);
    EXPECT_EQ(curve.changes(), 0);
    EXPECT_EQ(found.ignored, std::vector<std::size_t>{});
}

TEST(OvenProgramFor, TakesThePreferredSettingWhereChangesAreFree)
{
    const std::vector<OvenStay> stays{stay(60, 100, 150, 190, 180), stay(200, 240, 150, 190, 160)};
    const auto found = ovenProgramFor(plainOven(), stays, {0, 1, 1, false});
    const OvenCurve curve(plainOven(), found.program);
    EXPECT_EQ(curve.setting(planTime(60)), 180);
    EXPECT_EQ(curve.setting(planTime(150)), std::nullopt);
    EXPECT_EQ(curve.setting(planTime(200)), 160);
}

TEST(OvenProgramFor, StaysOffForWhatDriesInACoolingOven)
{
    OvenStay drying = stay(100, 200, 20, 110, 20);
    drying.prefer.reset();
    drying.off = true;
    const auto found =
        ovenProgramFor(plainOven(), {stay(60, 100, 90, 110, 100), drying}, plainStyle);
    EXPECT_EQ(found.ignored, std::vector<std::size_t>{});
    EXPECT_EQ(OvenCurve(plainOven(), found.program).firstOn(interval(100, 200)), std::nullopt);
}

TEST(OvenProgramFor, KeepsTheEarlierOfTwoThatClash)
{
    const std::vector<OvenStay> stays{stay(80, 140, 210, 230, 220), stay(60, 100, 140, 160, 150)};
    const auto found = ovenProgramFor(plainOven(), stays, plainStyle);
    EXPECT_EQ(found.ignored, std::vector<std::size_t>{0});
    EXPECT_TRUE(test::programKeeps(plainOven(), found.program, stays[1]));
    expectHolds(plainOven(), stays, plainStyle, found);
}

TEST(OvenProgramFor, LeavesAnEmptyOvenAlone)
{
    EXPECT_EQ(ovenProgramFor(plainOven(), {}, plainStyle).program, OvenProgram{});
}

} // namespace suppertide
