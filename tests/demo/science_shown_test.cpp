// What the demo is to show of kitchen science: a roast whose time follows its mass, a boil that
// follows the altitude, a length learned from two evenings, and a limit of keeping warm. The stock
// pot and the made-ahead creams are in food_safety_test.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/plan/lay_out.h"
#include "core/wording/why_this_long.h"
#include "core/wording/wording.h"
#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

using testing::HasSubstr;

PlanInput inKitchen(PlanInput input, void (*change)(Kitchen&))
{
    Kitchen kitchen = *input.kitchen;
    change(kitchen);
    input.kitchen = std::make_shared<const Kitchen>(std::move(kitchen));
    return input;
}

/// So many portions of the dish, all in its first variant.
PlanInput withPortions(PlanInput input, std::string_view dish, int portions)
{
    Occasion occasion = *input.occasion;
    for (Course& course : occasion.courses) {
        for (Dish& each : course.dishes) {
            if (each.id == DishId{std::string(dish)}) {
                each.mix = {{each.mix.front().variant, Portions{portions}, {}}};
            }
        }
    }
    input.occasion = std::make_shared<const Occasion>(std::move(occasion));
    return input;
}

ComputedDuration computedFor(const PlanInput& input, const std::string& task)
{
    const FormulationPtr formulation = formulate(input).value();
    return formulation->tasks[formulation->taskById.at(task)].computed.value();
}

std::string whyOf(const ComputedDuration& computed)
{
    std::string all;
    for (const std::string& sentence : whyThisLong(computed)) {
        all += sentence + " ";
    }
    return all;
}

TEST(DemoScience, RoastsALargerChickenLonger)
{
    const PlanInput harvest = inputOf(occasion("harvest-lunch").occasion);
    const std::string roast = "chicken/at-190-c/roast";
    const ComputedDuration four = computedFor(withPortions(harvest, "chicken", 4), roast);
    const ComputedDuration six = computedFor(withPortions(harvest, "chicken", 6), roast);
    EXPECT_EQ(four.failure, "");
    EXPECT_GT(six.range.likely, four.range.likely);
    // Half as much again in the same form: at most 1.5^(2/3) = 1.31 times as long (dimension
    // analysis of conduction, t ∝ L²), with a minute for rounding.
    EXPECT_LE(static_cast<double>(six.range.likely.count() - 1),
              1.32 * static_cast<double>(four.range.likely.count()));
    EXPECT_THAT(whyOf(four), HasSubstr("half of the thickness"));
}

TEST(DemoScience, BoilsTheBrothSoonerHighUp)
{
    const PlanInput october = inputOf(occasion("october-supper-first-thoughts").occasion);
    const ComputedDuration low = computedFor(october, "broth/*/heat");
    const ComputedDuration high =
        computedFor(inKitchen(october, [](Kitchen& kitchen) { kitchen.altitudeMetres = 2000; }),
                    "broth/*/heat");
    EXPECT_EQ(low.failure, "");
    EXPECT_LT(high.range.likely, low.range.likely);
}

TEST(DemoScience, SaysOfAHeightForWhichNothingIsKnownThatItIsSo)
{
    const ComputedDuration nowhere =
        computedFor(inKitchen(inputOf(occasion("sunday-lunch").occasion),
                              [](Kitchen& kitchen) { kitchen.altitudeMetres = 5000; }),
                    "potatoes/*/boil");
    EXPECT_THAT(nowhere.failure, HasSubstr("never gets to"));
    EXPECT_EQ(nowhere.range, nowhere.written);
}

TEST(DemoScience, HasLearnedFromTwoEveningsInTheSmallOven)
{
    const PlanInput sunday = inputOf(occasion("sunday-lunch").occasion);
    const std::string roast = "chicken/at-190-c/roast";
    const ComputedDuration learned = computedFor(sunday, roast);
    const ComputedDuration before =
        computedFor(inKitchen(sunday, [](Kitchen& kitchen) { kitchen.timesTaken.clear(); }), roast);
    // Both evenings it took longer than computed: 75 and 72 minutes for 66.
    EXPECT_GT(learned.range.likely, before.range.likely);
    EXPECT_LE(static_cast<double>(learned.range.likely.count() - 1),
              75.0 / 66.0 * static_cast<double>(before.range.likely.count()));
    EXPECT_THAT(whyOf(learned), HasSubstr("evenings learned from 2"));
    EXPECT_THAT(whyOf(before), testing::Not(HasSubstr("learned")));
}

TEST(DemoScience, LimitsHowLongTheCarrotsStayWarmByTheRules)
{
    const FormulationPtr formulation =
        formulate(inputOf(occasion("october-supper-first-thoughts").occasion)).value();
    int limited = 0;
    for (const LagIndex lag : formulation->problem.lags.indices()) {
        const LagSource& source = formulation->lags[lag];
        if (source.text != "stay warm under a lid" || source.limitedBy.empty()) {
            continue;
        }
        ++limited;
        EXPECT_EQ(source.limitedBy, "us_home_danger_zone"); // 2 h: foodsafety.gov
        ASSERT_TRUE(formulation->problem.lags[lag].max && source.most);
        EXPECT_LE(*formulation->problem.lags[lag].max, Minutes{120});
        EXPECT_LT(*formulation->problem.lags[lag].max, *source.most);
    }
    EXPECT_GT(limited, 0);
}

TEST(DemoScience, KeepsTheSquashWarmAboveTheRulesLimit)
{
    const FormulationPtr formulation =
        formulate(inputOf(occasion("midsummer-supper").occasion)).value();
    int warm = 0;
    for (const OvenDemandIndex index : formulation->problem.ovenDemands.indices()) {
        if (formulation->ovenDemands[index].isKeep) {
            ++warm;
            EXPECT_GE(formulation->problem.ovenDemands[index].acceptLow, 60); // 140 °F
        }
    }
    EXPECT_GT(warm, 0);
}

} // namespace
} // namespace suppertide::demo
