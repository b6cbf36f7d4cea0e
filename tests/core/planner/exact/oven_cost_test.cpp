// What an oven costs at least, against the cheapest program for stays at known times.
#include <gtest/gtest.h>

#include <memory>

#include "core/assign/cheapest_program.h"
#include "core/planner/exact/oven_cost.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using engine::Bound;
using engine::Engine;
using exact::PossibleStay;
using exact::StartDifferences;
using test::forEachSeed;
using test::Random;

constexpr std::int64_t plenty = 1'000'000;

/// Stays that begin some time after one another.
struct Case
{
    Engine engine;
    std::vector<engine::Variable> starts;
    std::vector<PossibleStay> stays;
    engine::Variable least;
};

void fill(Case& made, const Oven& oven, const OvenProgramStyle& style, Random& random)
{
    std::int64_t from = random.between(40, 60);
    for (std::int64_t i = random.between(1, 3); i > 0; --i) {
        PossibleStay stay;
        stay.length = random.between(15, 60);
        stay.shelves = 1;
        stay.stay.acceptLow = static_cast<int>(random.between(6, 20)) * 10;
        stay.stay.acceptHigh = stay.stay.acceptLow + static_cast<int>(random.between(5, 20));
        if (random.oneIn(2)) {
            stay.stay.prefer = stay.stay.acceptLow + 5;
        }
        const std::int64_t room = random.oneIn(2) ? random.between(0, 40) : 0;
        const auto start =
            made.engine.newVariable(static_cast<Bound>(from), static_cast<Bound>(from + room));
        stay.from = {start, 0};
        stay.to = {start, static_cast<Bound>(stay.length)};
        stay.inside = engine::atLeast(start, 0);
        made.starts.push_back(start);
        made.stays.push_back(stay);
        from +=
            random.oneIn(4) ? random.between(0, 20) : room + stay.length + random.between(0, 60);
    }
    made.least = made.engine.newVariable(0, plenty);
    const auto differences =
        random.oneIn(2) ? std::make_shared<const StartDifferences>(made.engine, made.starts)
                        : std::make_shared<const StartDifferences>();
    exact::OvenCostPropagator::post(made.engine, {oven}, style, made.stays, differences,
                                    std::make_shared<exact::BoxCosts>(oven, style), made.least,
                                    plenty);
}

OvenProgramStyle anyStyle(Random& random)
{
    OvenProgramStyle style;
    style.onMinute = random.between(0, 12);
    style.change = random.between(0, 150);
    style.preferC = random.between(0, 3);
    style.switchOn = random.oneIn(2) ? random.between(0, 40) : 0;
    style.switchOnWithin = random.oneIn(2) ? style.change : random.between(0, 150);
    return style;
}

std::optional<std::int64_t> costAt(const Case& made, const Oven& oven,
                                   const OvenProgramStyle& style, const std::vector<Bound>& starts)
{
    std::vector<OvenStay> stays;
    for (std::size_t i = 0; i < starts.size(); ++i) {
        stays.push_back(made.stays[i].stay);
        stays.back().during = interval(starts[i], starts[i] + made.stays[i].length);
    }
    const CheapestProgram found = cheapestProgram(oven, stays, style, plenty, 20'000);
    return found.program ? std::optional{found.cost} : std::nullopt;
}

TEST(OvenCostPropagator, AsksForNoMoreThanAProgramCosts)
{
    int compared = 0;
    int close = 0;
    forEachSeed(250, [&](Random& random) {
        Oven oven = test::coldOven(random, 2, 250, {4'000, 16'000, 1'000, 5'000});
        oven.heatMilliCPerMin = oven.heatMilliCPerMin / 1000 * 1000; // as the grid needs it
        oven.coolMilliCPerMin = oven.coolMilliCPerMin / 1000 * 1000;
        const OvenProgramStyle style = anyStyle(random);
        Case made;
        fill(made, oven, style, random);
        ASSERT_TRUE(made.engine.propagate());
        const engine::Trail& trail = made.engine.trail();
        const std::int64_t anywhere = trail.least(made.least);
        for (int tries = 0; tries < 3; ++tries) {
            std::vector<Bound> starts;
            for (const engine::Variable start : made.starts) {
                starts.push_back(
                    static_cast<Bound>(random.between(trail.least(start), trail.most(start))));
            }
            const auto cost = costAt(made, oven, style, starts);
            if (!cost) {
                continue;
            }
            EXPECT_LE(anywhere, *cost);
            for (std::size_t i = 0; i < starts.size(); ++i) {
                made.engine.decide(engine::atMost(made.starts[i], starts[i]));
                ASSERT_TRUE(made.engine.propagate());
                made.engine.decide(engine::atLeast(made.starts[i], starts[i]));
                ASSERT_TRUE(made.engine.propagate());
            }
            EXPECT_LE(trail.least(made.least), *cost);
            ++compared;
            close += 10 * trail.least(made.least) >= 8 * *cost ? 1 : 0;
            made.engine.backTo(0);
        }
    });
    EXPECT_GT(compared, 250);
    EXPECT_GT(close, compared / 4);
}

/// A band narrow enough that heat alone is cheapest kept by switching on and off, which no other
/// setting makes up for: what each switching on costs counts once.
TEST(OvenCostPropagator, CountsSwitchingOnWithSomethingInOnce)
{
    Oven oven;
    oven.minC = 50;
    oven.maxC = 250;
    oven.startC = oven.ambientC = 20;
    oven.heatMilliCPerMin = 5'000;
    oven.coolMilliCPerMin = 1'000;
    OvenProgramStyle style;
    style.onMinute = 10;
    style.change = style.switchOnWithin = 100;
    Case made;
    for (const auto& [from, low] : {std::pair(60, 60), std::pair(200, 200)}) {
        PossibleStay stay;
        stay.length = 30;
        stay.shelves = 1;
        stay.stay.acceptLow = low;
        stay.stay.acceptHigh = low + 10;
        const auto start = made.engine.newVariable(from, from);
        stay.from = {start, 0};
        stay.to = {start, 30};
        stay.inside = engine::atLeast(start, 0);
        made.starts.push_back(start);
        made.stays.push_back(stay);
    }
    made.least = made.engine.newVariable(0, plenty);
    exact::OvenCostPropagator::post(
        made.engine, {oven}, style, made.stays, std::make_shared<const StartDifferences>(),
        std::make_shared<exact::BoxCosts>(oven, style), made.least, plenty);
    ASSERT_TRUE(made.engine.propagate());
    const auto cost = costAt(made, oven, style, {60, 200});
    ASSERT_TRUE(cost);
    EXPECT_LE(made.engine.trail().least(made.least), *cost);
}

} // namespace

} // namespace suppertide
