// What makes no sense is refused in a sentence for a cook; nothing infinite and nothing endless
// comes back.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/science/boiling.h"
#include "core/science/calibration.h"
#include "core/science/chilling.h"
#include "core/science/core_temperature.h"
#include "core/science/freezing.h"
#include "core/science/fridge_warming.h"
#include "core/science/lethality.h"
#include "core/science/mould_scaling.h"
#include "core/science/oven_curve.h"
#include "core/science/pasteurisation.h"
#include "core/science/reduction.h"
#include "core/science/resting.h"
#include "core/science/roast_scaling.h"
#include "core/science/temperature_curve.h"
#include "core/science/transitions.h"
#include "core/science/valid_range.h"
#include "core/science/water.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::science {
namespace {

constexpr double notANumber = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

template <typename T>
void expectRefused(const Result<T>& result, const char* words)
{
    ASSERT_FALSE(result) << words;
    EXPECT_NE(result.error().forCook.find(words), std::string::npos) << result.error().forCook;
    EXPECT_EQ(result.error().forCook.back(), '.');
}

CoreQuestion roast()
{
    return {.food = findDinnerFood("beef_lean").value().composition,
            .shape = roastOf(2.0, 1050.0).value(),
            .start = 8.0,
            .target = 54.0,
            .surroundings = 160.0,
            .coefficient = surroundingsOf(Place::StillOven).coefficient};
}

TEST(Refusals, ZeroMass)
{
    expectRefused(roastOf(0.0, 1050.0),
                  "The mass is 0 kg, but this can be computed only from 0.01 kg to 50 kg");
    expectRefused(scaledByMass(90.0, 2.0, 0.0), "The mass is 0 kg");
    expectRefused(timeToBoil({.litres = 0.0, .efficiency = efficiencyOf(Hob::Gas)}),
                  "What is to boil is 0 litres");
    expectRefused(timeToChill({.litres = 0.0}), "What is to be chilled is 0 litres");
}

TEST(Refusals, TargetAboveTheOven)
{
    CoreQuestion question = roast();
    question.surroundings = 50.0;
    expectRefused(timeToCore(question), "never gets to 54 °C in its middle where it is 50 °C");
    question.surroundings = 54.0;
    expectRefused(timeToCore(question), "never gets to 54 °C");
    question.surroundings = -18.0;
    expectRefused(timeToCore(question), "a hotter place");
    expectRefused(carryOver(question, 20.0), "never gets to 54 °C");
    expectRefused(pullTemperature(question, 20.0, 54.0), "never gets to 54 °C");
}

TEST(Refusals, UnreachableBecauseOfEvaporation)
{
    CoreQuestion question = roast();
    question.target = 95.0;
    question.wetness = {0.9, 1.0, 1.0};
    expectRefused(timeToCore(question), "the surface stays at about");
}

TEST(Refusals, UnreachableWithinTwoWeeks)
{
    CoreQuestion question = roast();
    question.shape = Block{2.0, 2.0, 2.0};
    question.target = 120.0;
    expectRefused(timeToCore(question), "within two weeks");
    expectRefused(timeToChill({.food = question.food,
                               .litres = 60.0,
                               .diameter = 0.4,
                               .isStirred = true,
                               .from = 95.0,
                               .to = 4.000000000001,
                               .place = Place::Fridge,
                               .placeTemperature = 4.0}),
                  "two weeks");
}

TEST(Refusals, UnknownComposition)
{
    expectRefused(findDinnerFood("unicorn"), "What “unicorn” consists of is not known");
    CoreQuestion question = roast();
    question.food = {};
    expectRefused(timeToCore(question), "The sum of all parts of the food is 0");
    question.food = {.water = 0.7, .protein = -0.1, .fat = 0.4};
    expectRefused(timeToCore(question), "The part of protein is −0.1");
    expectRefused(foodProperties({.water = 1.0}, 160.0), "The temperature of the food is 160 °C");
    expectRefused(foodProperties({.water = 1.0}, -41.0), "The temperature of the food is −41 °C");
    expectRefused(heatMaterial({.water = 0.3}), "The sum of all parts");
}

TEST(Refusals, NineThousandMetres)
{
    expectRefused(pressureAtAltitude(9000.0),
                  "The altitude is 9000 m, but this can be computed only from −400 m to 5000 m");
    expectRefused(boilingPointAtAltitude(-401.0), "The altitude is −401 m");
    expectRefused(timeToBoil({.efficiency = efficiencyOf(Hob::Gas), .altitude = 9000.0}),
                  "The altitude is 9000 m");
    expectRefused(timeToReduce({.altitude = 9000.0}), "The altitude is 9000 m");
    expectRefused(syrupStageAt(syrupStages().front(), 9000.0), "The altitude is 9000 m");
}

TEST(Refusals, WaterThatBoilsAlready)
{
    expectRefused(
        timeToBoil({.start = 97.0, .efficiency = efficiencyOf(Hob::Gas), .altitude = 2000.0}),
        "boils already");
    expectRefused(heatOfVaporisation(0.0), "The temperature of the water is 0 °C");
    expectRefused(waterHeatCapacity(101.0), "The temperature of the water");
    expectRefused(boilingPoint(0.0), "The pressure is 0 kPa");
}

TEST(Refusals, WhatNeitherThawsNorFreezes)
{
    const auto beef = findDinnerFood("beef_lean").value();
    expectRefused(thawingTime(beef.composition, beef.freezesAt, roastOf(1, 1050).value(), -18.0,
                              Place::Freezer),
                  "never gets to");
    expectRefused(thawingTime(beef.composition, beef.freezesAt, roastOf(1, 1050).value(), -18.0,
                              Place::StillOven),
                  "depends on a temperature that is set");
    expectRefused(
        thawingTime(beef.composition, beef.freezesAt, roastOf(1, 1050).value(), 5.0, Place::Fridge),
        "The temperature of the frozen food");
    PlankQuestion question{plankFactors(Shape::Slab), 0.05, 1000, 250e3, 1.5, 10, -1.5, 0.0};
    expectRefused(plankSeconds(question), "does not freeze where it is 0 °C");
    question.size = 0.0;
    expectRefused(plankSeconds(question), "The size of the food is 0 m");
    expectRefused(plankFactorsOfBlock(0.5, 2.0), "The second length");
    expectRefused(amendedHeat(-5.0, -2.0, -18.0, 250e3, 3500, 1800),
                  "The temperature at the start");
    expectRefused(coefficientUnder({{0.01, 0.0}}, 10.0), "The conductivity of the wrapping");
}

TEST(Refusals, FridgesMouldsAndCurves)
{
    expectRefused(warmingOfFridge({.loadMass = 0.0}), "What is put in is 0 kg");
    expectRefused(warmingOfFridge({.fridgeTemperature = 8.0, .limit = 5.0}),
                  "The limit for the food in the fridge");
    expectRefused(areaOf(RoundTin{0.0}), "The diameter of the tin is 0");
    expectRefused(mouldTime(40.0, {0.08, 0.05}, {0.0, 0.05}), "The diameter of the mould");
    expectRefused(bakingTimeAtDepth(40.0, 0.05, 0.5), "The depth is 0.5");
    expectRefused(
        timeToPasteurise(PasteurisedFood::Meat, 30.0, 5.0, 50.0),
        "The temperature of the bath is 50 °C, but this can be computed only from 54.4 °C");
    expectRefused(timeInBath(PacketShape::SlabLike, 30.0, 60.0, 60.0),
                  "The difference between bath and food");
    expectRefused(timeByQ10(2.0, 27.0, 60.0, 2.3), "The temperature of the dough is 60 °C");
    expectRefused(gelatineHours(20.0), "The temperature of the fridge");
    expectRefused(findTransition("x"), "is not known here");
    expectRefused(findHeatResistance("x"), "is not known here");
    expectRefused(roastByChart("x", 2.0), "The roasting chart has no “x”");
    expectRefused(roastByChart("goose", 1.0), "The mass of this roast (goose, whole) is 1 kg");
    auto body = bodyFor(roast(), 20.0).value();
    expectRefused(temperatureCurve(body, {{{180.0, 20.0}, 10.0}}, 0.0),
                  "The time between two points");
    expectRefused(temperatureCurve(body, {{{180.0, 20.0}, -10.0}}, 1.0), "The time in one place");
    expectRefused(evaporationOfSurface({0.05, 20.0, 50.0, 1.0}), "Nothing evaporates");
    expectRefused(withEvaporation({180.0, 20.0}, 1.5), "The part of the surface that is wet");
}

TEST(Refusals, NoNumberAndInfinityAreOutsideEveryRange)
{
    for (const double bad : {notANumber, infinite, -infinite}) {
        CoreQuestion question = roast();
        question.start = bad;
        EXPECT_FALSE(timeToCore(question));
        question = roast();
        question.target = bad;
        EXPECT_FALSE(timeToCore(question));
        question = roast();
        question.surroundings = bad;
        EXPECT_FALSE(timeToCore(question));
        question = roast();
        question.coefficient.likely = bad;
        EXPECT_FALSE(timeToCore(question));
        question = roast();
        question.shape = Joint{bad, 0.1, 0.1};
        EXPECT_FALSE(timeToCore(question));
        question = roast();
        question.food.water = bad;
        EXPECT_FALSE(timeToCore(question));
        EXPECT_FALSE(timeToBoil({.litres = bad, .efficiency = efficiencyOf(Hob::Gas)}));
        EXPECT_FALSE(timeToBoil({.efficiency = {bad, bad, bad}}));
        EXPECT_FALSE(timeToReduce({.litres = bad}));
        EXPECT_FALSE(timeToReduce({.litresLeft = bad}));
        EXPECT_FALSE(timeToReduce({.panDiameter = bad}));
        EXPECT_FALSE(timeToChill({.food = roast().food, .litres = bad}));
        EXPECT_FALSE(timeToChill({.food = roast().food, .to = bad}));
        EXPECT_FALSE(timeToChill({.food = roast().food, .placeTemperature = bad}));
        EXPECT_FALSE(newtonSeconds(90.0, bad, 20.0, 1000.0));
        EXPECT_FALSE(newtonSeconds(90.0, 50.0, bad, 1000.0));
        EXPECT_FALSE(coolingSlope(bad, 90.0, 37.0, 1.0));
        EXPECT_FALSE(coolingSlope(120.0, 90.0, 37.0, bad));
        EXPECT_FALSE(scaledByMass(bad, 1.0, 2.0));
        EXPECT_FALSE(scaledByThickness(10.0, 1.0, bad));
        EXPECT_FALSE(lethality({{0.0, bad}, {1.0, 60.0}}, 70.0, 7.5));
        EXPECT_FALSE(lethality({{0.0, 60.0}, {bad, 60.0}}, 70.0, 7.5));
        EXPECT_FALSE(dFromCounts(bad, 10.0, 1.0));
        EXPECT_FALSE(usualPreheat(bad));
        EXPECT_FALSE(warmingOfFridge({.contents = bad}));
        EXPECT_FALSE(timeToPasteurise(PasteurisedFood::Meat, bad, 5.0, 60.0));
        EXPECT_FALSE(carryOver(roast(), bad));
        EXPECT_FALSE(risingTime(60.0, 24.0, bad));
        EXPECT_FALSE(calibrate({{bad, 10.0}}));
        EXPECT_FALSE(calibrate({{10.0, bad}}));
    }
}

// Whatever is asked, the answer is a finite time in order or a sentence.
TEST(Refusals, AnyQuestionHasAFiniteAnswerOrASentence)
{
    test::forEachSeed(300, [](test::Random& random) {
        const auto number = [&random](double low, double high) {
            return low + (high - low) * static_cast<double>(random.between(-300, 1300)) / 1000.0;
        };
        CoreQuestion question = roast();
        const double a = number(0.002, 0.2);
        question.shape = random.oneIn(3) ? BodyShape{Joint{a, number(0.01, 0.3), number(0.01, 0.4)}}
                         : random.oneIn(2)
                             ? BodyShape{Roll{a, number(0.01, 0.5)}}
                             : BodyShape{Block{a, number(0.01, 0.3), number(0.01, 0.4)}};
        question.start = number(-20.0, 30.0);
        question.target = number(-10.0, 95.0);
        question.surroundings = number(-20.0, 250.0);
        question.wetness = random.oneIn(2) ? bareSurface : coveredSurface;
        const double h = number(2.0, 1500.0);
        question.coefficient = {0.7 * h, h, 1.4 * h};
        const auto estimate = timeToCore(question);
        if (estimate) {
            EXPECT_TRUE(0.0 <= estimate->least && estimate->least <= estimate->likely &&
                        estimate->likely <= estimate->most && estimate->most <= mostMinutes);
        } else {
            EXPECT_GT(estimate.error().forCook.size(), 20U);
            EXPECT_EQ(estimate.error().forCook.find("inf"), std::string::npos);
            EXPECT_EQ(estimate.error().forCook.find("nan"), std::string::npos);
        }
    });
}

} // namespace
} // namespace suppertide::science
