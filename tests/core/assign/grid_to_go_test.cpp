#include <gtest/gtest.h>

#include <cstdlib>
#include <optional>

#include "core/assign/cheapest_program.h"
#include "core/assign/grid_to_go.h"
#include "core/problem/oven_curve.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

constexpr std::int64_t plenty = 10'000; // cost

struct Kitchen
{
    Oven oven;
    std::vector<OvenStay> stays;
    OvenProgramStyle style;
};

Kitchen randomKitchen(Random& random, std::int64_t horizon)
{
    Kitchen kitchen;
    kitchen.oven = test::smallOven(random);
    kitchen.oven.heatMilliCPerMin = 500 * random.between(1, 16);
    kitchen.oven.coolMilliCPerMin = 500 * random.between(1, 6);
    kitchen.oven.startC =
        static_cast<int>(random.oneIn(3) ? random.between(16, 40) : kitchen.oven.ambientC);
    for (std::int64_t i = random.between(1, 3); i > 0; --i) {
        kitchen.stays.push_back(test::smallStay(random, horizon));
        if (random.oneIn(6)) {
            kitchen.stays.back().off = true;
            kitchen.stays.back().acceptLow = 20;
            kitchen.stays.back().acceptHigh += static_cast<int>(random.between(0, 8));
        }
    }
    kitchen.style.change = random.between(0, 6);
    kitchen.style.onMinute = random.between(0, 3);
    kitchen.style.preferC = random.between(0, 2);
    kitchen.style.switchOn = random.oneIn(2) ? random.between(0, 5) : 0;
    kitchen.style.switchOnWithin = random.oneIn(3) ? random.between(0, 9) : 0;
    return kitchen;
}

struct Known
{
    explicit Known(const Kitchen& kitchen, std::int64_t below)
        : heat(kitchen.oven, kitchen.stays, kitchen.style, below),
          grid(kitchen.oven, kitchen.stays, weighed(heat), kitchen.style, below)
    {}
    static const OvenHeat& weighed(OvenHeat& heat)
    {
        heat.weigh({});
        return heat;
    }
    OvenHeat heat;
    GridToGo grid;
};

std::int64_t atStart(const Kitchen& kitchen, const Known& known)
{
    return known.grid.least(0, std::int64_t{kitchen.oven.startC} * 1000);
}

TEST(GridToGo, IsWhatTheCheapestOfAllProgramsCosts)
{
    int kept = 0;
    int exact = 0;
    forEachSeed(600, [&](Random& random) {
        constexpr std::int64_t horizon = 16;
        const Kitchen kitchen = randomKitchen(random, horizon);
        const auto least =
            test::leastProgramCost(kitchen.oven, kitchen.stays, horizon, kitchen.style);
        const Known known(kitchen, plenty);
        ASSERT_TRUE(known.grid.isKnown());
        if (!least) {
            EXPECT_EQ(atStart(kitchen, known), GridToGo::plenty);
            return;
        }
        ++kept;
        const std::int64_t cost = atStart(kitchen, known);
        EXPECT_LE(cost, *least); // settings that are one column are taken for the best of them
        exact += cost == *least ? 1 : 0;
        const Known less(kitchen, *least + 1);
        EXPECT_LE(atStart(kitchen, less), *least);
    });
    EXPECT_GT(kept, 200);
    EXPECT_GT(exact, kept * 98 / 100);
}

/// What is to come from a minute of a program on.
struct Rest
{
    std::int64_t cost = 0;
    std::optional<int> last; // setting
    bool on = false;         // in the minute before
};

Rest restFrom(const Kitchen& kitchen, const OvenCurve& curve, int minute, int end)
{
    const OvenProgramStyle& style = kitchen.style;
    Rest rest;
    std::optional<int> last;
    std::optional<int> before;
    for (int at = 0; at <= end; ++at) {
        if (at == minute) {
            rest = {0, last, before.has_value()};
        }
        const std::optional<int> setting = curve.setting(planTime(at));
        if (setting) {
            rest.cost += style.onMinute + (last && *last != *setting ? style.change : 0);
            if (!before) {
                rest.cost += style.switchOn +
                             (isWithinStay(kitchen.stays, planTime(at)) ? style.switchOnWithin : 0);
            }
            last = setting;
        }
        for (const OvenStay& stay : kitchen.stays) {
            if (stay.prefer && stay.during.start == planTime(at)) {
                const int inForce = setting.value_or(kitchen.oven.ambientC);
                rest.cost += style.preferC * std::abs(inForce - *stay.prefer);
            }
        }
        before = setting;
    }
    return rest;
}

TEST(GridToGo, IsNoMoreThanWhatAProgramCostsFromAnyMinuteOn)
{
    int looked = 0;
    forEachSeed(600, [&](Random& random) {
        const Kitchen kitchen = randomKitchen(random, 40);
        const OvenProgramResult made = ovenProgramFor(kitchen.oven, kitchen.stays, kitchen.style);
        const CheapestProgram best =
            cheapestProgram(kitchen.oven, kitchen.stays, kitchen.style, plenty, plenty);
        if (!best.program) {
            return;
        }
        const Known known(kitchen, plenty);
        const OvenProgram& other = made.ignored.empty() ? made.program : *best.program;
        for (const OvenProgram& program : {other, *best.program}) {
            const OvenCurve curve(kitchen.oven, program);
            for (int minute = 0; minute <= known.heat.last(); ++minute) {
                const Rest rest = restFrom(kitchen, curve, minute, known.heat.last());
                const std::int64_t milliC = curve.milliC(planTime(minute));
                const std::int64_t least =
                    rest.last ? known.grid.least(minute, milliC, rest.on, *rest.last, *rest.last)
                              : known.grid.least(minute, milliC);
                EXPECT_LE(least, rest.cost) << minute;
                ++looked;
            }
        }
    });
    EXPECT_GT(looked, 5'000);
}

} // namespace

} // namespace suppertide
