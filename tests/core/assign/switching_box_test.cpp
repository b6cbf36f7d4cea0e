#include <gtest/gtest.h>

#include <algorithm>
#include <utility>

#include "core/assign/cheapest_program.h"
#include "core/assign/closed_up.h"
#include "core/assign/oven_box.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

constexpr std::int64_t effort = 200'000;
constexpr std::int64_t below = 3'000;
constexpr std::int64_t firstAt = 200; // minutes; the oven is cold until then

bool isOfWholeDegrees(const Oven& oven)
{
    return oven.heatMilliCPerMin % 1000 == 0 && oven.coolMilliCPerMin % 1000 == 0;
}

/// Every second one heats and cools by whole degrees a minute.
Oven anyOven(Random& random)
{
    Oven oven = test::coldOven(random, 2, 110, {4'000, 15'000, 2'000, 8'000});
    if (random.oneIn(2)) {
        oven.heatMilliCPerMin -= oven.heatMilliCPerMin % 1000;
        oven.coolMilliCPerMin -= oven.coolMilliCPerMin % 1000;
    }
    return oven;
}

OvenProgramStyle anyStyle(Random& random)
{
    OvenProgramStyle style;
    style.onMinute = random.between(1, 3);
    style.change = random.between(0, 12);
    style.preferC = random.between(0, 2);
    // Where it is dear, an oven is left on with nothing in.
    style.switchOn = random.oneIn(3) ? random.between(20, 400) : random.between(1, 20);
    style.switchOnWithin = random.oneIn(2) ? random.between(0, 30) : 0;
    return style;
}

/// From one moment to another of those at which stretches begin and end.
struct Span
{
    OvenStay stay; // its times are to be filled in
    std::size_t first = 0;
    std::size_t end = 0;
};

/// Stays of which two may be in at once, and the stretches that they are cut into.
struct Scene
{
    std::vector<Span> spans;
    std::vector<OvenStretch> stretches;

    /// The stays, if the stretches are so long.
    [[nodiscard]] std::vector<OvenStay> placed(const std::vector<std::int64_t>& lengths) const
    {
        std::vector<std::int64_t> moments{firstAt};
        for (const std::int64_t length : lengths) {
            moments.push_back(moments.back() + length);
        }
        std::vector<OvenStay> stays;
        for (const Span& span : spans) {
            stays.push_back(span.stay);
            stays.back().during = interval(moments[span.first], moments[span.end]);
        }
        return stays;
    }
};

Span anySpan(Random& random, std::size_t first, std::size_t end)
{
    Span span{{}, first, end};
    span.stay.acceptLow = static_cast<int>(random.between(60, 90));
    span.stay.acceptHigh = span.stay.acceptLow + static_cast<int>(random.between(6, 20));
    if (random.oneIn(2)) {
        span.stay.prefer =
            static_cast<int>(random.between(span.stay.acceptLow, span.stay.acceptHigh));
    }
    return span;
}

std::int64_t anyLength(Random& random, const OvenStretch& stretch)
{
    if (random.oneIn(4)) { // long enough that an empty oven is cold, or one that is on settles
        return random.between(70, 130);
    }
    return stretch.preferred.empty() && random.oneIn(3) ? 0 : random.between(1, 15);
}

OvenStretch stretchOf(const std::vector<Span>& spans, std::size_t number)
{
    OvenStretch stretch{-SettingLevels::unbounded, SettingLevels::unbounded, false, {}, 0, 0};
    for (const Span& span : spans) {
        if (span.first <= number && number < span.end) {
            const OvenStay& stay = span.stay;
            stretch.low = std::max(stretch.low, std::int64_t{stay.acceptLow} * 1000);
            stretch.high = std::min(stretch.high, std::int64_t{stay.acceptHigh} * 1000);
            stretch.goesOn = stretch.goesOn || span.first < number;
            if (stay.prefer && span.first == number) {
                stretch.preferred.push_back(*stay.prefer);
            }
        }
    }
    return stretch;
}

//     stretch   │ 0 │ 1 │ 2 │ 3 │ 4 │
//     stays     ├───────┤       ├───┤
//                   ├───┤ or longer, or none
Scene anyScene(Random& random)
{
    Scene scene;
    const std::size_t count = random.oneIn(2) ? 3 : 5;
    scene.spans.push_back(anySpan(random, 0, random.oneIn(2) ? 2 : 1));
    if (random.oneIn(2)) {
        const bool isLonger = random.oneIn(2) && scene.spans.front().end == 2;
        scene.spans.push_back(anySpan(random, 1, isLonger ? 3 : 2));
        Span& other = scene.spans.back(); // close enough that both may be in at once
        other.stay.acceptLow = scene.spans.front().stay.acceptLow + 2;
        other.stay.acceptHigh = scene.spans.front().stay.acceptHigh + 3;
        other.stay.prefer = other.stay.acceptLow + 2;
    }
    scene.spans.push_back(anySpan(random, count - 1, count));
    for (std::size_t i = 0; i < count; ++i) {
        OvenStretch stretch = stretchOf(scene.spans, i);
        stretch.least = anyLength(random, stretch);
        stretch.most = stretch.least + (random.oneIn(2) ? random.between(0, 12) : 0);
        scene.stretches.push_back(std::move(stretch));
    }
    return scene;
}

std::vector<std::int64_t> anyLengths(Random& random, const std::vector<OvenStretch>& stretches)
{
    std::vector<std::int64_t> lengths;
    lengths.reserve(stretches.size());
    for (const OvenStretch& stretch : stretches) {
        lengths.push_back(random.between(stretch.least, stretch.most));
    }
    return lengths;
}

std::vector<OvenStretch> justSoLong(std::vector<OvenStretch> stretches,
                                    const std::vector<std::int64_t>& lengths)
{
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        stretches[i].least = stretches[i].most = lengths[i];
    }
    return stretches;
}

/// Whether the bound should be close: an oven that forgets is taken to cost what heating it from
/// cold does at least, and a stretch of no length lets what is in begin with the next one.
bool isClose(const Oven& oven, const std::vector<OvenStretch>& stretches,
             const std::vector<std::int64_t>& lengths)
{
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        if (lengths[i] == 0 || (!stretches[i].holds() && lengths[i] >= ovenForgets(oven))) {
            return false;
        }
    }
    return true;
}

bool isEachHeld(const std::vector<OvenStay>& stays)
{
    return std::ranges::all_of(
        stays, [](const OvenStay& stay) { return stay.during.length() > Minutes{0}; });
}

TEST(SwitchingBox, CostsNoMoreThanAnythingInIt)
{
    int compared = 0;
    int met = 0;
    int others = 0; // in ovens that heat or cool by fractions of a degree
    int near = 0;
    forEachSeed(400, [&](Random& random) {
        const Oven oven = anyOven(random);
        const OvenProgramStyle style = anyStyle(random);
        const Scene scene = anyScene(random);
        const std::int64_t least = leastCostInBox(oven, style, {scene.stretches, {}}, below).least;
        for (int tries = 0; tries < 2; ++tries) {
            const auto lengths = anyLengths(random, scene.stretches);
            const auto best = cheapestProgram(oven, scene.placed(lengths), style, below, effort);
            const OvenBox exact{justSoLong(scene.stretches, lengths), {}};
            const std::int64_t ofThese = leastCostInBox(oven, style, exact, below).least;
            if (best.program && isEachHeld(scene.placed(lengths))) {
                EXPECT_LE(least, best.cost);
                EXPECT_LE(ofThese, best.cost);
                if (!isClose(oven, scene.stretches, lengths)) {
                    continue;
                }
                if (isOfWholeDegrees(oven)) {
                    ++compared;
                    met += ofThese == best.cost ? 1 : 0;
                } else {
                    ++others;
                    near += ofThese * 10 >= best.cost * 9 ? 1 : 0;
                }
            }
        }
    });
    EXPECT_GT(compared, 100);
    EXPECT_GT(met, compared * 8 / 10); // mostly it is exactly what the cheapest program costs
    EXPECT_GT(others, 100);
    EXPECT_GT(near, others / 2);
}

TEST(SwitchingBox, CostsEnoughWhereNoProgramKeepsTheStays)
{
    const Oven oven{"o", 2, 50, 110, 20, 20, 10'000, 2'000};
    OvenProgramStyle style;
    style.onMinute = 1;
    style.switchOn = 5;
    const OvenStretch hot{100'000, 110'000, false, {}, 5, 5};
    const OvenStretch cool{60'000, 70'000, false, {}, 5, 5};
    OvenStretch empty{-SettingLevels::unbounded, SettingLevels::unbounded, false, {}, 14, 14};
    // From 100 °C to 70 °C takes 15 minutes.
    EXPECT_EQ(leastCostInBox(oven, style, {{hot, empty, cool}, {}}, below).least, below);
    empty.most = 15;
    EXPECT_LT(leastCostInBox(oven, style, {{hot, empty, cool}, {}}, below).least, below);
}

/// An oven that heats 10 °C a minute and cools 2: of each 6 minutes one has to be on.
TEST(SwitchingBox, CountsWhatOneStayCosts)
{
    const Oven oven{"o", 2, 50, 110, 20, 20, 10'000, 2'000};
    const OvenStretch in{60'000, 70'000, false, {}, 60, 60};
    OvenProgramStyle style;
    style.onMinute = 30;
    style.switchOn = 1;
    // 5 minutes to 70 °C, and 9 times more as it has cooled to 60 °C.
    EXPECT_EQ(leastCostInBox(oven, style, {{in}, {}}, below).least, 5 * 30 + 1 + 9 * (30 + 1));
    // Too dear: it is on for all but the last 5 minutes, in which it cools.
    style.switchOnWithin = 1'000;
    EXPECT_EQ(leastCostInBox(oven, style, {{in}, {}}, below).least, (5 + 60 - 6) * 30 + 1);
}

} // namespace

} // namespace suppertide
