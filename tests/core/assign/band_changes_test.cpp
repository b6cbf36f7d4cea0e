#include <gtest/gtest.h>

#include "core/assign/band_changes.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

TEST(BandChanges, AreNoMoreThanAnyProgramMakes)
{
    int kept = 0;
    int asked = 0;
    forEachSeed(2500, [&](Random& random) {
        constexpr std::int64_t horizon = 16;
        Oven oven = test::smallOven(random);
        oven.heatMilliCPerMin = 1000 * random.between(3, 8);
        oven.coolMilliCPerMin = 1000 * random.between(2, 6);
        oven.startC = static_cast<int>(random.oneIn(2) ? random.between(20, 40) : oven.ambientC);
        std::vector<OvenStay> stays;
        std::vector<HeldBand> bands;
        for (std::int64_t i = random.between(1, 3); i > 0; --i) {
            OvenStay stay = test::smallStay(random, horizon);
            stay.acceptHigh = stay.acceptLow + static_cast<int>(random.between(0, 7));
            stay.prefer.reset();
            bands.push_back({stay.acceptLow, stay.acceptHigh, stay.during.length().count()});
            stays.push_back(stay);
        }
        OvenProgramStyle style;
        style.change = 1;
        style.switchOnWithin = 1;
        const auto least = test::leastProgramCost(oven, stays, horizon, style);
        if (!least) {
            return;
        }
        ++kept;
        const std::int64_t changes = changesForBands({oven}, bands);
        EXPECT_LE(changes, *least);
        asked += changes > 0 ? 1 : 0;
        EXPECT_LE(changesForBands({oven, oven}, bands), changes);
    });
    EXPECT_GT(kept, 400);
    EXPECT_GT(asked, 40);
}

TEST(BandChanges, AreOneFewerThanBandsThatNoTwoShareInAnOven)
{
    Oven oven;
    oven.ambientC = 20;
    oven.heatMilliCPerMin = 12'000;
    oven.coolMilliCPerMin = 3'000;
    const HeldBand pavlova{110, 125, 90};
    const HeldBand gratin{140, 160, 90};
    const HeldBand shoulder{150, 170, 200};
    const HeldBand roots{210, 230, 45};
    EXPECT_EQ(changesForBands({oven}, {pavlova, gratin, shoulder, roots}), 2);
    EXPECT_EQ(changesForBands({oven, oven}, {pavlova, gratin, shoulder, roots}), 1);
    EXPECT_EQ(changesForBands({oven}, {gratin, shoulder}), 0);
    EXPECT_EQ(changesForBands({oven}, {}), 0);
    // Within a quarter of an hour it may heat, cool, heat and cool without a setting of its own.
    EXPECT_EQ(changesForBands({oven}, {gratin, {210, 230, 14}}), 0);
}

} // namespace

} // namespace suppertide
