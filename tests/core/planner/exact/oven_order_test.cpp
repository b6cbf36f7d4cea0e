#include <gtest/gtest.h>

#include <algorithm>

#include "core/planner/exact/oven_order.h"
#include "tests/core/assign/small_ovens.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {

namespace {

using exact::OvenOrder;
using exact::PossibleStay;
using test::forEachSeed;
using test::Random;

constexpr std::int64_t horizon = 900;
constexpr std::int64_t plenty = 10'000;

Oven anyOven(Random& random)
{
    return test::coldOven(random, 2, 250, {5'000, 20'000, 800, 6'000});
}

/// Starts that may be anywhere in a window of their own.
struct Case
{
    engine::Engine engine;
    std::vector<PossibleStay> stays;
    std::vector<std::size_t> inside;
};

/// It begins then or up to so many minutes later.
void add(Case& made, PossibleStay stay, std::int64_t from, std::int64_t room)
{
    const auto start = made.engine.newVariable(static_cast<engine::Bound>(from),
                                               static_cast<engine::Bound>(from + room));
    stay.from = {start, 0};
    stay.to = {start, static_cast<engine::Bound>(stay.length)};
    stay.inside = engine::atLeast(start, 0);
    made.inside.push_back(made.stays.size());
    made.stays.push_back(stay);
}

void addStay(Case& made, Random& random)
{
    PossibleStay stay;
    stay.length = random.between(10, 60);
    stay.shelves = random.oneIn(3) ? 1 : 2;
    stay.stay.acceptLow = static_cast<int>(random.between(6, 20)) * 10;
    stay.stay.acceptHigh = stay.stay.acceptLow + 20;
    stay.stay.prefer = stay.stay.acceptLow + 10;
    const std::int64_t from = random.between(40, horizon - 200);
    add(made, stay, from, random.between(0, 120));
}

/// Some starts within the windows such that no two that cannot meet overlap; empty: none found.
std::vector<OvenStay> anyPlacement(const Case& made, const Oven& oven, Random& random)
{
    std::vector<OvenStay> placed;
    std::vector<std::int64_t> shelves;
    for (const PossibleStay& possible : made.stays) {
        OvenStay stay = possible.stay;
        const std::int64_t start = random.between(made.engine.trail().least(possible.from),
                                                  made.engine.trail().most(possible.from));
        stay.during = interval(start, start + possible.length);
        for (std::size_t i = 0; i < placed.size(); ++i) {
            const bool apart = !stay.during.overlaps(placed[i].during);
            if (ovenPairClash(oven, placed[i], stay) ||
                (!apart && shelves[i] + possible.shelves > oven.shelves)) {
                return {};
            }
        }
        placed.push_back(stay);
        shelves.push_back(possible.shelves);
    }
    return placed;
}

TEST(OvenOrder, AsksForNoMoreThanAnyPlacementDoes)
{
    int compared = 0;
    int close = 0;
    forEachSeed(400, [&](Random& random) {
        const Oven oven = anyOven(random);
        Case made;
        for (std::int64_t i = random.between(1, 4); i > 0; --i) {
            addStay(made, random);
        }
        OvenProgramStyle style;
        style.onMinute = 1;
        style.preferC = 1;
        OvenOrder order({oven}, made.stays, style);
        OvenOrder several({oven, oven}, made.stays, style);
        const std::int64_t bound = order.least(made.inside, made.engine.trail());
        if (bound > 0) { // else the times allow no order
            EXPECT_LE(several.least(made.inside, made.engine.trail()), bound);
        }
        LeastHeat heat(oven, plenty);
        exact::beOnWhereItPays(heat, style);
        for (int tries = 0; tries < 20; ++tries) {
            const auto stays = anyPlacement(made, oven, random);
            if (stays.empty()) {
                continue;
            }
            const std::int64_t minutes = heat.minutesOn(stays);
            EXPECT_LE(bound, minutes);
            ++compared;
            close += bound * 10 >= minutes * 7 ? 1 : 0;
        }
    });
    EXPECT_GT(compared, 1000);
    EXPECT_GT(close, compared / 4);
}

/// Stays that fill the oven, at some time after one another.
void addInTurn(Case& made, Random& random)
{
    std::int64_t from = 150;
    for (std::int64_t i = random.between(1, 4); i > 0; --i) {
        PossibleStay stay;
        stay.length = random.between(5, 40);
        stay.shelves = 2;
        stay.stay.acceptLow = static_cast<int>(random.between(6, 20)) * 10;
        stay.stay.acceptHigh = stay.stay.acceptLow + 20;
        if (random.oneIn(5)) {
            stay.stay.off = true;
            stay.stay.acceptLow = 15;
        }
        const std::int64_t room = random.oneIn(3) ? random.between(0, 40) : 0;
        add(made, stay, from, room);
        from +=
            room + stay.length + (random.oneIn(2) ? random.between(0, 12) : random.between(0, 90));
    }
}

TEST(OvenOrder, CountsSwitchingOnNoMoreOftenThanAnyPlacementDoes)
{
    int compared = 0;
    int close = 0;
    forEachSeed(400, [&](Random& random) {
        const Oven oven = anyOven(random);
        Case made;
        addInTurn(made, random);
        OvenProgramStyle style;
        style.onMinute = 7;
        style.switchOn = 7 * random.between(1, 40);
        OvenOrder order({oven}, made.stays, style);
        OvenOrder several({oven, oven}, made.stays, style);
        const std::int64_t bound = order.least(made.inside, made.engine.trail());
        EXPECT_LE(several.least(made.inside, made.engine.trail()), bound);
        for (int tries = 0; tries < 20; ++tries) {
            const auto stays = anyPlacement(made, oven, random);
            if (stays.empty()) {
                continue;
            }
            OvenHeat heat(oven, stays, style, plenty * 100);
            heat.weigh({});
            const std::int64_t cost = heat.least(0, std::int64_t{oven.startC} * 1000, false, false);
            EXPECT_LE(bound, cost);
            ++compared;
            close += bound * 10 >= cost * 9 ? 1 : 0;
        }
    });
    EXPECT_GT(compared, 1000);
    EXPECT_GT(close, compared / 2);
}

/// Two loaves that fill the oven, hours apart: it is heated twice, and must be for no other reason
/// than when they are due.
TEST(OvenOrder, HeatsTwiceForWhatIsHoursApart)
{
    Oven oven;
    oven.shelves = 1;
    oven.minC = 50;
    oven.maxC = 250;
    oven.startC = oven.ambientC = 20;
    oven.heatMilliCPerMin = 20'000;
    oven.coolMilliCPerMin = 2'000;
    engine::Engine engine;
    std::vector<PossibleStay> stays;
    for (const engine::Bound at : {100, 500}) {
        PossibleStay loaf;
        const auto start = engine.newVariable(at, at + 10);
        loaf.from = {start, 0};
        loaf.to = {start, 20};
        loaf.inside = engine::atLeast(start, 0);
        loaf.length = 20;
        loaf.shelves = 1;
        loaf.stay.acceptLow = 220;
        loaf.stay.acceptHigh = 240;
        stays.push_back(loaf);
    }
    OvenProgramStyle style;
    style.onMinute = 1;
    OvenOrder order({oven}, stays, style);
    // Ten minutes to 220 °C each; twenty minutes cool by 40 °C, of which 20 are allowed.
    EXPECT_GE(order.least({0, 1}, engine.trail()), 20);
    EXPECT_LE(order.least({0, 1}, engine.trail()), 24);
    EXPECT_FALSE(order.because(engine.trail()).empty());
    EXPECT_LE(order.least({0}, engine.trail()), 12);
}

} // namespace

} // namespace suppertide
