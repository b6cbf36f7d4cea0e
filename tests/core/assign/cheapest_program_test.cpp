#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>

#include "core/assign/cheapest_program.h"
#include "core/problem/oven_curve.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

constexpr std::int64_t plenty = 1'000'000;

/// As a problem's costs have it, plus what switching on costs.
std::int64_t costOf(const Oven& oven, const OvenProgram& program,
                    const std::vector<OvenStay>& stays, const OvenProgramStyle& style)
{
    const OvenCurve curve(oven, program);
    std::int64_t cost =
        style.change * curve.changes() + style.onMinute * curve.onBefore(planTime(plenty)).count();
    std::optional<int> before;
    for (const ProgramEntry& entry : program) {
        if (entry.setC && !before) {
            cost += style.switchOn + (isWithinStay(stays, entry.at) ? style.switchOnWithin : 0);
        }
        before = entry.setC;
    }
    for (const OvenStay& stay : stays) {
        if (stay.prefer) {
            const int inForce = curve.setting(stay.during.start).value_or(oven.ambientC);
            cost += style.preferC * std::abs(inForce - *stay.prefer);
        }
    }
    return cost;
}

OvenProgramStyle randomStyle(Random& random)
{
    OvenProgramStyle style;
    style.change = random.between(0, 6);
    style.onMinute = random.between(0, 3);
    style.preferC = random.between(0, 2);
    style.switchOn = random.oneIn(2) ? random.between(0, 5) : 0;
    style.switchOnWithin = random.oneIn(3) ? random.between(0, 9) : 0;
    return style;
}

TEST(CheapestProgram, CostsWhatTheCheapestOfAllProgramsDoes)
{
    int kept = 0;
    forEachSeed(1000, [&](Random& random) {
        constexpr std::int64_t horizon = 16;
        Oven oven = test::smallOven(random);
        oven.startC = static_cast<int>(random.oneIn(3) ? random.between(16, 40) : oven.ambientC);
        std::vector<OvenStay> stays;
        for (std::int64_t i = random.between(1, 3); i > 0; --i) {
            stays.push_back(test::smallStay(random, horizon));
            if (random.oneIn(6)) {
                stays.back().off = true;
                stays.back().acceptLow = 20;
                stays.back().acceptHigh += static_cast<int>(random.between(0, 8));
            }
        }
        const OvenProgramStyle style = randomStyle(random);
        const auto least = test::leastProgramCost(oven, stays, horizon, style);
        const CheapestProgram found = cheapestProgram(oven, stays, style, plenty, plenty);
        ASSERT_EQ(found.program.has_value(), least.has_value());
        if (!least) {
            return;
        }
        ++kept;
        EXPECT_EQ(found.cost, *least);
        EXPECT_EQ(found.bound, *least);
        EXPECT_EQ(costOf(oven, *found.program, stays, style), found.cost);
        for (const OvenStay& stay : stays) {
            EXPECT_TRUE(test::programKeeps(oven, *found.program, stay));
        }
        const CheapestProgram none = cheapestProgram(oven, stays, style, *least, plenty);
        EXPECT_FALSE(none.program.has_value());
        EXPECT_EQ(none.bound, *least);
        const CheapestProgram brief = cheapestProgram(oven, stays, style, plenty, 3);
        EXPECT_LE(brief.bound, *least);
    });
    EXPECT_GT(kept, 300);
}

} // namespace

} // namespace suppertide
