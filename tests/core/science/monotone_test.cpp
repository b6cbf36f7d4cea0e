// Estimates go the way that physics says, for random questions within their ranges, and are finite
// and in order.
#include <gtest/gtest.h>

#include <cmath>

#include "core/science/boiling.h"
#include "core/science/chilling.h"
#include "core/science/core_temperature.h"
#include "core/science/freezing.h"
#include "core/science/fridge_warming.h"
#include "core/science/mould_scaling.h"
#include "core/science/pasteurisation.h"
#include "core/science/reduction.h"
#include "core/science/resting.h"
#include "core/science/roast_scaling.h"
#include "core/science/surroundings.h"
#include "core/science/transitions.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::science {
namespace {

using test::forEachSeed;
using test::Random;

double between(Random& random, double low, double high)
{
    return low + (high - low) * static_cast<double>(random.between(0, 1000)) / 1000.0;
}

void expectInOrder(const Result<Estimate>& estimate)
{
    ASSERT_TRUE(estimate) << estimate.error().forCook;
    EXPECT_TRUE(std::isfinite(estimate->most));
    EXPECT_GE(estimate->least, 0.0);
    EXPECT_LE(estimate->least, estimate->likely);
    EXPECT_LE(estimate->likely, estimate->most);
    EXPECT_FALSE(estimate->because.empty());
    for (const Figure& figure : estimate->because) {
        EXPECT_TRUE(std::isfinite(figure.value)) << figure.name;
        EXPECT_FALSE(figure.name.empty());
    }
}

const Composition& anyFood(Random& random)
{
    const auto& foods = dinnerFoods();
    return foods[static_cast<std::size_t>(
                     random.between(0, static_cast<std::int64_t>(foods.size()) - 1))]
        .composition;
}

BodyShape anyShape(Random& random, double mass)
{
    switch (random.between(0, 2)) {
    case 0:
        return roastOf(mass, 1050.0).value();
    case 1:
        return fishSideOf(mass, 1050.0).value();
    default:
        return loafOf(mass, 1050.0).value();
    }
}

TEST(Monotone, MoreMassTakesLongerAndAHotterOvenShorter)
{
    forEachSeed(60, [](Random& random) {
        const double mass = between(random, 0.2, 5.0);
        CoreQuestion question{
            .food = anyFood(random),
            .shape = anyShape(random, mass),
            .start = between(random, 2.0, 20.0),
            .target = between(random, 48.0, 70.0),
            .surroundings = between(random, 150.0, 220.0),
            .coefficient =
                surroundingsOf(random.oneIn(2) ? Place::StillOven : Place::FanOven).coefficient};
        const auto estimate = timeToCore(question);
        expectInOrder(estimate);
        CoreQuestion heavier = question;
        if (std::holds_alternative<Joint>(question.shape)) {
            heavier.shape = roastOf(1.3 * mass, 1050.0).value();
            EXPECT_GT(timeToCore(heavier)->likely, estimate->likely);
        }
        CoreQuestion hotter = question;
        hotter.surroundings += 15.0;
        EXPECT_LT(timeToCore(hotter)->likely, estimate->likely);
        CoreQuestion warmer = question;
        warmer.start += 5.0;
        EXPECT_LT(timeToCore(warmer)->likely, estimate->likely);
        CoreQuestion further = question;
        further.target += 5.0;
        EXPECT_GT(timeToCore(further)->likely, estimate->likely);
        CoreQuestion moist = question;
        moist.wetness = {0.03, 0.05, 0.07};
        EXPECT_GT(timeToCore(moist)->likely, estimate->likely);
    });
}

TEST(Monotone, ThickerPiecesInABathTakeLongerAndHotterBathsKillSooner)
{
    forEachSeed(30, [](Random& random) {
        const double mm = between(random, 5.0, 80.0);
        const double bath = between(random, 55.0, 70.0);
        const auto food = random.oneIn(2) ? PasteurisedFood::Meat : PasteurisedFood::Poultry;
        const auto estimate = timeToPasteurise(food, mm, 5.0, bath);
        expectInOrder(estimate);
        EXPECT_GT(timeToPasteurise(food, std::min(1.2 * mm, 100.0), 5.0, bath)->likely,
                  estimate->likely);
        EXPECT_LT(timeToPasteurise(food, mm, 5.0, bath + 2.0)->likely, estimate->likely);
        for (const auto shape :
             {PacketShape::SlabLike, PacketShape::CylinderLike, PacketShape::SphereLike}) {
            expectInOrder(timeInBath(shape, mm, 5.0, bath));
            EXPECT_GT(timeInBath(shape, 1.2 * mm, 5.0, bath)->likely,
                      timeInBath(shape, mm, 5.0, bath)->likely);
        }
        EXPECT_LT(timeInBath(PacketShape::SphereLike, mm, 5.0, bath)->likely,
                  timeInBath(PacketShape::SlabLike, mm, 5.0, bath)->likely);
    });
}

TEST(Monotone, BoilingTakesLongerForMoreWaterAWeakerBurnerNoLidAndTheSea)
{
    forEachSeed(100, [](Random& random) {
        BoilQuestion question{.litres = between(random, 0.3, 12.0),
                              .start = between(random, 5.0, 60.0),
                              .burner = between(random, 800.0, 4000.0),
                              .efficiency =
                                  efficiencyOf(random.oneIn(2) ? Hob::Gas : Hob::Induction),
                              .altitude = between(random, -400.0, 4000.0)};
        const auto estimate = timeToBoil(question);
        expectInOrder(estimate);
        const auto with = [&](auto change) {
            BoilQuestion other = question;
            change(other);
            return timeToBoil(other)->likely;
        };
        EXPECT_GT(with([](BoilQuestion& q) { q.litres *= 1.1; }), estimate->likely);
        EXPECT_LT(with([](BoilQuestion& q) { q.burner *= 1.1; }), estimate->likely);
        EXPECT_GT(with([](BoilQuestion& q) { q.hasLid = false; }), estimate->likely);
        EXPECT_LT(with([](BoilQuestion& q) { q.altitude += 500.0; }), estimate->likely);
        EXPECT_GT(with([](BoilQuestion& q) { q.potMass += 1.0; }), estimate->likely);
        EXPECT_LT(with([](BoilQuestion& q) { q.start += 5.0; }), estimate->likely);
    });
}

TEST(Monotone, WiderPansAndStrongerBurnersReduceFaster)
{
    forEachSeed(100, [](Random& random) {
        const double litres = between(random, 0.3, 6.0);
        ReductionQuestion question{.litres = litres,
                                   .litresLeft = litres * between(random, 0.2, 0.8),
                                   .burner = between(random, 500.0, 3500.0),
                                   .efficiency = efficiencyOf(Hob::Electric),
                                   .panDiameter = between(random, 0.14, 0.36)};
        const auto estimate = timeToReduce(question);
        expectInOrder(estimate);
        ReductionQuestion wider = question;
        wider.panDiameter += 0.04;
        EXPECT_LE(timeToReduce(wider)->likely, estimate->likely);
        ReductionQuestion stronger = question;
        stronger.burner *= 1.3;
        EXPECT_LE(timeToReduce(stronger)->likely, estimate->likely);
        ReductionQuestion further = question;
        further.litresLeft *= 0.9;
        EXPECT_GT(timeToReduce(further)->likely, estimate->likely);
        const OpenSurface pan{between(random, 0.02, 0.1), between(random, 70.0, 98.0), 20.0, 0.5};
        const auto gently = timeToReduceGently(0.3, pan);
        expectInOrder(gently);
        EXPECT_LT(timeToReduceGently(0.3, {1.2 * pan.area, pan.water, 20.0, 0.5})->likely,
                  gently->likely);
        EXPECT_LT(timeToReduceGently(0.3, {pan.area, pan.water + 1.0, 20.0, 0.5})->likely,
                  gently->likely);
    });
    // A narrow pan on a strong burner is limited by its width.
    const ReductionQuestion narrow{
        .litres = 1.0, .litresLeft = 0.5, .burner = 3000, .panDiameter = 0.16};
    ReductionQuestion wide = narrow;
    wide.panDiameter = 0.24;
    EXPECT_LT(timeToReduce(wide)->likely, 0.6 * timeToReduce(narrow)->likely);
}

TEST(Monotone, AnOpenPotCoolsFasterThanOneWithItsLidOn)
{
    ChillQuestion pot;
    pot.food = findDinnerFood("stock")->composition;
    pot.isStirred = true;
    pot.place = Place::Counter;
    pot.placeTemperature = 20.0;
    pot.from = 90.0;
    const auto speedUp = [&pot](double to) {
        pot.to = to;
        pot.isOpen = false;
        const double lid = timeToChill(pot)->likely;
        pot.isOpen = true;
        const auto open = timeToChill(pot);
        EXPECT_LT(open->least, open->likely);
        EXPECT_LT(open->likely, open->most);
        EXPECT_LT(open->most, timeToChill([&] {
                                  ChillQuestion covered = pot;
                                  covered.isOpen = false;
                                  return covered;
                              }())
                                  ->most);
        return lid / open->likely;
    };
    // The hotter, the more evaporates: the first degrees go the fastest.
    EXPECT_GT(speedUp(85.0), speedUp(60.0));
    EXPECT_GT(speedUp(60.0), speedUp(30.0));
    EXPECT_GT(speedUp(30.0), 1.0);
    // In water there is no air to evaporate into.
    pot.place = Place::IceBath;
    pot.placeTemperature = 0.5;
    pot.to = 30.0;
    pot.isOpen = false;
    const double lid = timeToChill(pot)->likely;
    pot.isOpen = true;
    EXPECT_EQ(timeToChill(pot)->likely, lid);
}

/// By hand: 4 litres of water-like stock at 90 °C, 24 cm wide: 452 cm² of surface, 70.2 kPa of
/// steam over it, 1.4 in the air; 0.0452·68.8·89 = 277 W go with the steam.
TEST(Monotone, AnOpenPotLosesWhatItsSteamTakesAway)
{
    ChillQuestion pot;
    pot.food = findDinnerFood("stock")->composition;
    pot.isStirred = true;
    pot.place = Place::Counter;
    pot.placeTemperature = 20.0;
    pot.from = 90.5;
    pot.to = 89.5;
    const double covered = timeToChill(pot)->likely * 60.0;
    pot.isOpen = true;
    const double open = timeToChill(pot)->likely * 60.0;
    const auto food = foodProperties(pot.food, 90.0);
    const double heat = 0.004 * food->density * food->heatCapacity; // J/K
    EXPECT_NEAR(heat / open - heat / covered, 277.0, 0.05 * 277.0);
}

TEST(Monotone, SplittingIceAndStirringChillFaster)
{
    forEachSeed(60, [](Random& random) {
        ChillQuestion question{
            .food = findDinnerFood(random.oneIn(2) ? "stock" : "white_sauce").value().composition,
            .litres = between(random, 1.0, 10.0),
            .diameter = between(random, 0.18, 0.4),
            .isStirred = random.oneIn(2),
            .from = between(random, 50.0, 95.0),
            .to = between(random, 5.5, 21.0),
            .placeTemperature = between(random, 0.5, 4.5)};
        const auto estimate = timeToChill(question);
        expectInOrder(estimate);
        ChillQuestion split = question;
        split.containers = static_cast<int>(random.between(2, 6));
        EXPECT_LT(timeToChill(split)->likely, estimate->likely);
        ChillQuestion ice = question;
        ice.place = Place::IceBath;
        EXPECT_LT(timeToChill(ice)->likely, estimate->likely);
        ChillQuestion more = question;
        more.litres *= 1.2;
        EXPECT_GT(timeToChill(more)->likely, estimate->likely);
        ChillQuestion warmer = question;
        warmer.to += 2.0;
        EXPECT_LT(timeToChill(warmer)->likely, estimate->likely);
        if (!question.isStirred) {
            ChillQuestion stirred = question;
            stirred.isStirred = true;
            EXPECT_LT(timeToChill(stirred)->likely, estimate->likely);
        }
    });
}

TEST(Monotone, ThawingTakesLongerForMoreAndInColderPlaces)
{
    const auto food = findDinnerFood("turkey_whole").value();
    double last = 0.0;
    for (const double mass : {0.5, 1.5, 4.0, 8.0}) {
        const BodyShape shape = roastOf(mass, 1050.0).value();
        const auto fridge =
            thawingTime(food.composition, food.freezesAt, shape, -18.0, Place::Fridge);
        const auto water =
            thawingTime(food.composition, food.freezesAt, shape, -18.0, Place::ColdWater);
        expectInOrder(fridge);
        expectInOrder(water);
        EXPECT_GT(fridge->likely, last);
        EXPECT_LT(water->likely, 0.5 * fridge->likely);
        last = fridge->likely;
    }
}

TEST(Monotone, WarmFoodWarmsAFullFridgeLess)
{
    forEachSeed(40, [](Random& random) {
        FridgeQuestion question{.contents = between(random, 3.0, 30.0),
                                .loadMass = between(random, 0.3, 6.0),
                                .loadTemperature = between(random, 20.0, 95.0)};
        const auto warming = warmingOfFridge(question).value();
        EXPECT_LE(warming.warmest.least, warming.warmest.likely);
        EXPECT_LE(warming.warmest.likely, warming.warmest.most);
        EXPECT_LE(warming.minutesAbove.likely, warming.minutesAbove.most);
        EXPECT_GE(warming.warmest.least, question.fridgeTemperature);
        EXPECT_LT(warming.warmest.most, question.loadTemperature);
        FridgeQuestion fuller = question;
        fuller.contents *= 1.5;
        EXPECT_LE(warmingOfFridge(fuller)->warmest.likely, warming.warmest.likely);
        FridgeQuestion hotter = question;
        hotter.loadTemperature = std::min(hotter.loadTemperature + 5.0, 100.0);
        EXPECT_GE(warmingOfFridge(hotter)->warmest.likely, warming.warmest.likely);
    });
}

TEST(Monotone, ScalingRulesAreOneAtTheSameSizeAndGrow)
{
    forEachSeed(60, [](Random& random) {
        const double minutes = between(random, 10.0, 240.0);
        const double mass = between(random, 0.5, 8.0);
        EXPECT_DOUBLE_EQ(scaledByMass(minutes, mass, mass)->likely, minutes);
        EXPECT_DOUBLE_EQ(scaledByMass(minutes, mass, mass)->least, minutes);
        expectInOrder(scaledByMass(minutes, mass, 1.7 * mass));
        expectInOrder(scaledByMass(minutes, mass, 0.4 * mass));
        EXPECT_GT(scaledByMass(minutes, mass, 1.1 * mass)->least, minutes);
        const double depth = between(random, 0.02, 0.1);
        expectInOrder(scaledByThickness(minutes, depth, 0.6 * depth));
        EXPECT_DOUBLE_EQ(scaledByThickness(minutes, depth, 2.0 * depth)->likely, 4.0 * minutes);
        expectInOrder(bakingTimeAtDepth(minutes, depth, 1.5 * depth));
        const Mould mould{0.08, 0.05};
        EXPECT_NEAR(mouldTime(minutes, mould, mould)->likely, minutes, 1e-9);
        EXPECT_NEAR(mouldTime(minutes, mould, {0.16, 0.10})->likely, 4.0 * minutes, 1e-9);
        expectInOrder(mouldTime(minutes, mould, {0.06, 0.09}));
        expectInOrder(risingTime(minutes, 24.0, between(random, 5.0, 38.0)));
    });
}

TEST(Monotone, CarryOverIsNothingInABathAndTakesOffBeforeIt)
{
    const auto beef = findDinnerFood("beef_lean").value();
    CoreQuestion roast{.food = beef.composition,
                       .shape = roastOf(2.0, 1050.0).value(),
                       .start = 8.0,
                       .target = 54.0,
                       .surroundings = 180.0,
                       .coefficient = surroundingsOf(Place::StillOven).coefficient,
                       .wetness = bareSurface};
    const auto hot = carryOver(roast, 20.0).value();
    EXPECT_GT(hot.rise.likely, 3.0);
    EXPECT_GT(hot.minutes.likely, 5.0);
    EXPECT_LE(hot.rise.least, hot.rise.likely);
    EXPECT_LE(hot.rise.likely, hot.rise.most);
    const double pull = pullTemperature(roast, 20.0, 54.0).value();
    EXPECT_LT(pull, 54.0);
    roast.target = pull;
    EXPECT_NEAR(pull + carryOver(roast, 20.0)->rise.likely, 54.0, 0.5);
    CoreQuestion bath = roast;
    bath.surroundings = 54.5;
    bath.target = 54.0;
    bath.wetness = coveredSurface;
    bath.coefficient = surroundingsOf(Place::WaterBath).coefficient;
    EXPECT_LT(carryOver(bath, 20.0)->rise.likely, 0.3);
}

} // namespace
} // namespace suppertide::science
