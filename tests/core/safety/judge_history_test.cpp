#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/safety/judge_history.h"
#include "tests/core/safety/history_builder.h"

namespace suppertide::safety {
namespace {

using test::breaks;
using test::fahrenheit;
using test::find;
using test::HistoryBuilder;
using test::rulesOf;

using Rules = std::vector<std::string>;

TEST(JudgeHistory, ABigPotOnTheCounterOvernightBreaksBothStagesAndTheDangerZone)
{
    // A stock pot with τ of 3 h in a room of 20 °C, sampled every half hour, then into the fridge.
    std::vector<TemperatureSample> curve;
    for (int minute = 0; minute <= 600; minute += 30) {
        const double celsius = 20 + 75 * std::exp(-minute / 180.0);
        curve.push_back({static_cast<double>(30 + minute), celsius, celsius});
    }
    const auto findings = HistoryBuilder(FoodClass::SoupOrStew)
                              .stay(Place::Hob, 30, 95)
                              .curve(Place::Counter, 600, curve)
                              .stay(Place::Fridge, 300, 22, 4)
                              .judged(RuleBook::UsHome);
    EXPECT_EQ(rulesOf(findings),
              (Rules{"us_home_danger_zone", "us_cooling_first", "us_cooling_total"}));
    // 20 + 75 e^(−t/180) = 57.2 °C at 126 min; linear between samples: within a minute.
    EXPECT_NEAR(find(findings, "us_cooling_first")->counts.front().from, 30 + 126.2, 1);
    EXPECT_EQ(
        find(findings, "us_cooling_total")->remedies,
        (std::vector{Remedy::IceBath, Remedy::SplitShallow, Remedy::DayLater, Remedy::EatSooner}));
}

TEST(JudgeHistory, WhatIsEatenBeforeItIsColdIsNotCooling)
{
    EXPECT_EQ(rulesOf(HistoryBuilder(FoodClass::CookedDish)
                          .stay(Place::Oven, 60, 80)
                          .stay(Place::AtTable, 150, 80, 40)
                          .judged(RuleBook::UsTrade)),
              Rules{});
}

TEST(JudgeHistory, HeatingAgainEndsACooling)
{
    EXPECT_EQ(rulesOf(HistoryBuilder(FoodClass::CookedDish)
                          .stay(Place::Hob, 30, 90)
                          .stay(Place::IceBath, 90, fahrenheit(130), fahrenheit(80))
                          .stay(Place::Hob, 60, 90)
                          .stay(Place::IceBath, 60, 50, 2)
                          .judged(RuleBook::UsTrade)),
              Rules{});
}

TEST(JudgeHistory, MinutesOfTheDangerZoneAreAddedUpOverCooking)
{
    const auto roast = [](std::int64_t before, std::int64_t after) {
        return HistoryBuilder(FoodClass::RawMeat)
            .stay(Place::Counter, before, 15)
            .stay(Place::Oven, 90, 15, fahrenheit(150))
            .becomes(FoodClass::CookedMeat)
            .stay(Place::AtTable, after, 50)
            .judged(RuleBook::UsHome);
    };
    EXPECT_EQ(rulesOf(roast(60, 60)), Rules{});
    EXPECT_EQ(rulesOf(roast(61, 60)), Rules{"us_home_danger_zone"});
}

TEST(JudgeHistory, AnOvenThatIsOffCountsAsStanding)
{
    const auto rested = [](double oven) {
        return HistoryBuilder(FoodClass::CookedDish)
            .stay(Place::Oven, 121, 45)
            .in(oven)
            .judged(RuleBook::UsHome);
    };
    EXPECT_TRUE(breaks(rested(50), "us_home_danger_zone"));
    EXPECT_FALSE(breaks(rested(61), "us_home_danger_zone"));
}

TEST(JudgeHistory, WhatNobodyHasComputedIsSaidToBeUnknown)
{
    const auto findings = HistoryBuilder(FoodClass::RawPoultry)
                              .stay(Place::Fridge, 60, 4)
                              .unknown(Place::Oven, 60)
                              .judged(RuleBook::UsHome);
    ASSERT_EQ(rulesOf(findings), Rules{"not_computed"});
    EXPECT_EQ(findings[0].weight, Weight::Caution);
    EXPECT_EQ(findings[0].counts, (std::vector<MinuteSpan>{{60, 120}}));
    // Nothing is taken for granted of heat; a counter is at 20 °C.
    EXPECT_TRUE(breaks(
        HistoryBuilder(FoodClass::CookedDish).unknown(Place::Counter, 121).judged(RuleBook::UsHome),
        "us_home_danger_zone"));
    // A keep-warm place of known temperature is taken at its word.
    EXPECT_EQ(rulesOf(HistoryBuilder(FoodClass::CookedDish)
                          .unknown(Place::WarmHold, 300)
                          .in(65)
                          .judged(RuleBook::UsHome)),
              Rules{});
}

TEST(JudgeHistory, ACurveThatEndsHotAndGoesOnInTheFridgeIsUnknown)
{
    const auto findings = HistoryBuilder(FoodClass::SoupOrStew)
                              .stay(Place::Hob, 30, 95)
                              .unknown(Place::Fridge, 600)
                              .judged(RuleBook::UsHome);
    EXPECT_EQ(rulesOf(findings), Rules{"not_computed"});
}

TEST(JudgeHistory, RareMeatThatIsMeantSoIsACautionUnlessAGuestIsAtRisk)
{
    const auto steak = [](FoodClass food, std::vector<RiskFact> facts,
                          std::vector<RiskGroup> guests) {
        return HistoryBuilder(food, std::move(facts))
            .stay(Place::Hob, 10, 10, fahrenheit(128))
            .stay(Place::Counter, 5, fahrenheit(128))
            .judged(RuleBook::UsHome, std::move(guests));
    };
    const auto plain = steak(FoodClass::RawMeat, {}, {});
    ASSERT_EQ(rulesOf(plain), Rules{"us_home_meat_core"});
    EXPECT_EQ(plain[0].weight, Weight::Unsafe);
    const auto meant = steak(FoodClass::RawMeat, {RiskFact::RareMeat}, {});
    ASSERT_EQ(rulesOf(meant), Rules{"us_home_meat_core"});
    EXPECT_EQ(meant[0].weight, Weight::Caution);
    const auto guest = steak(FoodClass::RawMeat, {RiskFact::RareMeat}, {RiskGroup::UnderFive});
    ASSERT_EQ(rulesOf(guest), (Rules{"rare_meat_risk", "us_home_meat_core"}));
    EXPECT_EQ(guest[0].weight, Weight::Unsafe);
    EXPECT_EQ(guest[0].guests, std::vector{RiskGroup::UnderFive});
    const auto mince = steak(FoodClass::RawMince, {RiskFact::RareMeat}, {});
    EXPECT_EQ(find(mince, "us_home_mince_core")->weight, Weight::Unsafe);
}

TEST(JudgeHistory, RareMeatFactMattersNotIfItIsCookedThrough)
{
    EXPECT_EQ(rulesOf(HistoryBuilder(FoodClass::RawMeat, {RiskFact::RareMeat})
                          .stay(Place::Oven, 60, 10, fahrenheit(150))
                          .becomes(FoodClass::CookedMeat)
                          .stay(Place::Counter, 5, fahrenheit(150))
                          .judged(RuleBook::UsHome, {RiskGroup::Pregnant})),
              Rules{});
}

TEST(JudgeHistory, RawFishNeedsFreezingUnlessTheSellerHasFrozenIt)
{
    const auto fish = [](std::vector<RiskFact> facts) {
        return HistoryBuilder(FoodClass::FattyFish, std::move(facts))
            .stay(Place::Fridge, 300, 2)
            .judged(RuleBook::UsHome);
    };
    EXPECT_TRUE(breaks(fish({RiskFact::RawFish}), "parasites"));
    EXPECT_FALSE(breaks(fish({RiskFact::RawFish, RiskFact::SoldForEatingRaw}), "parasites"));
}

TEST(JudgeHistory, WhatGoesIntoAnotherFoodNeedNotBeCookedItself)
{
    FoodHistory history = HistoryBuilder(FoodClass::RawMince).stay(Place::Fridge, 60, 3).history();
    EXPECT_TRUE(breaks(judgeHistory(history, {}).value(), "us_home_mince_core"));
    history.isEaten = false;
    EXPECT_EQ(rulesOf(judgeHistory(history, {}).value()), Rules{});
}

TEST(JudgeHistory, AFridgeThatIsWarmedIsFound)
{
    const auto findings = HistoryBuilder(FoodClass::Dairy)
                              .curve(Place::Fridge, 120, {{0, 4, 4}, {60, 4, 9}, {120, 4, 4}})
                              .judged(RuleBook::UsHome);
    ASSERT_EQ(rulesOf(findings), Rules{"us_home_cold_holding"});
    EXPECT_NEAR(findings[0].measured, fahrenheitOf(9), 1e-9);
    // From 4 to 9 °C in an hour: 40 °F (4.44 °C) is passed after 5.3 min.
    EXPECT_NEAR(findings[0].counts.front().from, 60 * (fahrenheit(40) - 4) / 5, 1e-6);
}

TEST(JudgeHistory, WhatNeverGetsColdInTheFridgeIsFoundAfterSixHours)
{
    const auto lukewarm = [](std::int64_t minutes) {
        return HistoryBuilder(FoodClass::Dairy)
            .stay(Place::Fridge, minutes, 12)
            .judged(RuleBook::UsHome);
    };
    EXPECT_EQ(rulesOf(lukewarm(360)), Rules{});
    EXPECT_EQ(rulesOf(lukewarm(361)), Rules{"us_home_cold_holding"});
}

/// In a fridge at the limit a food never quite gets there; from half a degree above it, half of
/// what a thermometer may be out by (FDA Food Code 4-203.11), it counts as cold.
TEST(JudgeHistory, WhatIsAlmostAsColdAsItsFridgeCountsAsCold)
{
    const auto cooled = [](double to) {
        return HistoryBuilder(FoodClass::Dairy)
            .stay(Place::Fridge, 360, 8, to)
            .stay(Place::Fridge, 600, to, to)
            .judged(RuleBook::UsTrade);
    };
    const double limit = fahrenheit(41);
    EXPECT_FALSE(breaks(cooled(limit), "us_trade_cold_holding"));
    EXPECT_FALSE(breaks(cooled(limit + 0.499), "us_trade_cold_holding"));
    EXPECT_TRUE(breaks(cooled(limit + 0.501), "us_trade_cold_holding"));
    // Once cold, it stays below the printed limit.
    const auto warmed = [limit](double to) {
        return HistoryBuilder(FoodClass::Dairy)
            .stay(Place::Fridge, 60, limit - 1)
            .stay(Place::Fridge, 600, to, to)
            .judged(RuleBook::UsTrade);
    };
    EXPECT_FALSE(breaks(warmed(limit), "us_trade_cold_holding"));
    EXPECT_TRUE(breaks(warmed(limit + 0.01), "us_trade_cold_holding"));
}

TEST(JudgeHistory, HowWarmTheFridgeKeepsItIsMeasuredInTheMinutesThatCountAlone)
{
    const auto findings =
        HistoryBuilder(FoodClass::Dairy).stay(Place::Fridge, 720, 20, 8).judged(RuleBook::UsHome);
    const auto* found = find(findings, "us_home_cold_holding");
    ASSERT_NE(found, nullptr);
    EXPECT_NEAR(found->counts.front().from, 360, 1e-9);
    EXPECT_NEAR(found->measured, fahrenheitOf(14), 1e-9); // half-way down, not the 20 °C at first
}

TEST(JudgeHistory, FrozenLongIsACautionOfQualityAlone)
{
    const auto findings = HistoryBuilder(FoodClass::SoupOrStew)
                              .stay(Place::Freezer, 91 * 1440, -20)
                              .judged(RuleBook::UsHome);
    ASSERT_EQ(rulesOf(findings), Rules{"storage/soup_stew"});
    EXPECT_EQ(findings[0].weight, Weight::Caution);
    EXPECT_NEAR(findings[0].measured, 91, 1e-9);
}

TEST(JudgeHistory, AMixtureKeepsNoLongerThanItsOldestPart)
{
    const auto dish = [](std::int64_t days) {
        return HistoryBuilder(FoodClass::CookedDish)
            .made()
            .mixedIn({{}, Minutes{2 * 1440}, 2})
            .stay(Place::Fridge, days * 1440, 4)
            .judged(RuleBook::UsHome);
    };
    EXPECT_EQ(rulesOf(dish(1)), Rules{});
    EXPECT_EQ(find(dish(2), "storage/cooked_meat")->weight, Weight::Caution);
    EXPECT_EQ(find(dish(3), "storage/cooked_meat")->weight, Weight::Unsafe);
    EXPECT_NEAR(find(dish(3), "storage/cooked_meat")->measured, 5, 1e-9);
}

TEST(JudgeHistory, CookingBeginsANewCountOfDays)
{
    EXPECT_EQ(rulesOf(HistoryBuilder(FoodClass::RawMince)
                          .stay(Place::Fridge, 1440, 3)
                          .stay(Place::Hob, 30, 3, 80)
                          .becomes(FoodClass::CookedMeat)
                          .stay(Place::IceBath, 60, 56, 3)
                          .stay(Place::Fridge, 3 * 1440, 3)
                          .judged(RuleBook::UsHome)),
              Rules{});
}

TEST(JudgeHistory, TheDateMarkCountsMidnightsOfTheZoneAndNotHours)
{
    // Made at 23:50 on the first: seven days are over at the midnight after the seventh.
    const auto dish = [](std::int64_t minutes) {
        return HistoryBuilder(FoodClass::Dairy)
            .at(1430)
            .made()
            .stay(Place::Fridge, minutes, 4)
            .judged(RuleBook::UsHome);
    };
    EXPECT_EQ(rulesOf(dish(6 * 1440 + 9)), Rules{});
    EXPECT_EQ(rulesOf(dish(6 * 1440 + 10)), Rules{"us_date_mark"});
}

TEST(JudgeHistory, UkCoolingIsACautionWithTheUsLimitForWantOfAFigure)
{
    const auto findings = HistoryBuilder(FoodClass::SoupOrStew)
                              .stay(Place::Hob, 30, 95)
                              .stay(Place::Fridge, 121, fahrenheit(135), fahrenheit(70))
                              .stay(Place::Fridge, 120, fahrenheit(70), 3)
                              .judged(RuleBook::UkEu);
    ASSERT_EQ(rulesOf(findings), Rules{"uk_cooling_first"});
    EXPECT_EQ(findings[0].weight, Weight::Caution);
    EXPECT_EQ(sourceOf(findings[0]).strength, Strength::TradeLimit);
}

TEST(JudgeHistory, BadHistoriesFailWithASentence)
{
    FoodHistory backwards;
    backwards.pieces.push_back({planTime(60), planTime(0), Place::Fridge, {}, {}, false, false});
    FoodHistory nan = HistoryBuilder(FoodClass::Dairy).stay(Place::Fridge, 60, 4).history();
    nan.pieces[0].curve[0].core = std::numeric_limits<double>::quiet_NaN();
    FoodHistory outside = HistoryBuilder(FoodClass::Dairy).stay(Place::Fridge, 60, 4).history();
    outside.pieces[0].curve[1].minute = 61;
    FoodHistory overlap = HistoryBuilder(FoodClass::Dairy)
                              .stay(Place::Fridge, 60, 4)
                              .at(59)
                              .stay(Place::Counter, 60, 4)
                              .history();
    FoodHistory sun = HistoryBuilder(FoodClass::Dairy).stay(Place::Oven, 60, 4).in(5500).history();
    for (const FoodHistory& history : {backwards, nan, outside, overlap, sun}) {
        const auto judged = judgeHistory(history, {});
        ASSERT_FALSE(judged);
        EXPECT_EQ(judged.error().kind, FailureKind::BadInput);
        EXPECT_NE(judged.error().forCook.find("cannot be followed"), std::string::npos);
    }
    EXPECT_EQ(judgeHistory({}, {}).value(), std::vector<Finding>{});
}

TEST(JudgeHistory, UnsafeComesBeforeCaution)
{
    const auto findings = HistoryBuilder(FoodClass::RawEggDessert, {RiskFact::RawEgg})
                              .stay(Place::Counter, 200, 20)
                              .judged(RuleBook::UsHome);
    EXPECT_EQ(rulesOf(findings), (Rules{"us_home_danger_zone", "raw_egg"}));
}

} // namespace
} // namespace suppertide::safety
