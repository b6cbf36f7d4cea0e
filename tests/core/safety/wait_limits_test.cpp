#include <gtest/gtest.h>

#include "core/safety/wait_limits.h"
#include "tests/core/safety/history_builder.h"

namespace suppertide::safety {
namespace {

Stay stay(FoodClass food, Place place, bool isHot = false, std::optional<double> air = {},
          Minutes before = Minutes{0})
{
    return {food, place, isHot, air, before};
}

std::optional<WaitLimit> limit(std::int64_t minutes, const char* rule)
{
    return WaitLimit{Minutes{minutes}, rule};
}

TEST(WaitLimits, StandingIsLimitedByTheBook)
{
    const Stay cold = stay(FoodClass::CookedDish, Place::Counter);
    EXPECT_EQ(longestStay(RuleBook::UsHome, cold), limit(120, "us_home_danger_zone"));
    EXPECT_EQ(longestStay(RuleBook::UsTrade, cold), limit(240, "us_trade_time_alone"));
    EXPECT_EQ(longestStay(RuleBook::UkEu, cold), limit(240, "uk_cold_period"));
    EXPECT_EQ(longestStay(RuleBook::UkEu, stay(FoodClass::CookedDish, Place::AtTable, true)),
              limit(120, "uk_hot_period"));
    EXPECT_EQ(
        longestStay(RuleBook::UsHome, stay(FoodClass::CookedDish, Place::AtTable, false, 33.0)),
        limit(60, "us_home_danger_zone_hot"));
    EXPECT_EQ(longestStay(RuleBook::UkEu, stay(FoodClass::CookedRice, Place::Counter, true)),
              limit(60, "uk_rice_cooling"));
    EXPECT_EQ(longestStay(RuleBook::UsHome, stay(FoodClass::DryGoods, Place::Counter)),
              std::nullopt);
    EXPECT_EQ(longestStay(RuleBook::UkEu, stay(FoodClass::ShellEgg, Place::Counter)), std::nullopt);
}

TEST(WaitLimits, MinutesAlreadySpentAreTakenOffAndNeverBelowZero)
{
    EXPECT_EQ(longestStay(RuleBook::UsHome,
                          stay(FoodClass::CookedDish, Place::Counter, false, {}, Minutes{100}))
                  ->most,
              Minutes{20});
    EXPECT_EQ(longestStay(RuleBook::UsHome,
                          stay(FoodClass::CookedDish, Place::Counter, false, {}, Minutes{200}))
                  ->most,
              Minutes{0});
}

TEST(WaitLimits, KeepingWarmIsLimitedOnlyBelowTheHoldingTemperature)
{
    EXPECT_EQ(keepWarmAt(RuleBook::UsHome, FoodClass::CookedDish),
              (PublishedTemperature{140, TemperatureUnit::Fahrenheit}));
    EXPECT_EQ(keepWarmAt(RuleBook::UkEu, FoodClass::DryGoods),
              (PublishedTemperature{63, TemperatureUnit::Celsius}));
    EXPECT_EQ(longestStay(RuleBook::UsHome, stay(FoodClass::CookedDish, Place::WarmHold, true)),
              std::nullopt);
    EXPECT_EQ(
        longestStay(RuleBook::UsHome, stay(FoodClass::CookedDish, Place::WarmHold, true, 60.0)),
        std::nullopt);
    EXPECT_EQ(
        longestStay(RuleBook::UsHome, stay(FoodClass::CookedDish, Place::WarmHold, true, 59.9)),
        limit(120, "us_home_danger_zone"));
    EXPECT_EQ(longestStay(RuleBook::UkEu, stay(FoodClass::CookedDish, Place::WarmHold, true, 60.0)),
              limit(120, "uk_hot_period"));
}

TEST(WaitLimits, TheFridgeKeepsForTheChartsDaysAndABathBelow130ForFourHours)
{
    EXPECT_EQ(longestStay(RuleBook::UsHome, stay(FoodClass::GelatineCream, Place::Fridge)),
              limit(4 * 1440, "storage/set_cream"));
    EXPECT_EQ(longestStay(RuleBook::UkEu, stay(FoodClass::CookedRice, Place::Fridge)),
              limit(1440, "storage/rice_uk"));
    EXPECT_EQ(longestStay(RuleBook::UsHome, stay(FoodClass::Dairy, Place::Fridge)),
              limit(6 * 1440, "us_date_mark"));
    EXPECT_EQ(longestStay(RuleBook::UsTrade, stay(FoodClass::CookedDish, Place::Fridge)),
              limit(6 * 1440, "us_date_mark"));
    EXPECT_EQ(longestStay(RuleBook::UkEu, stay(FoodClass::Dairy, Place::Fridge)), std::nullopt);
    EXPECT_EQ(longestStay(RuleBook::UsHome, stay(FoodClass::RawMeat, Place::WaterBath, true, 54.0)),
              limit(240, "low_bath"));
    EXPECT_EQ(longestStay(RuleBook::UsHome, stay(FoodClass::RawMeat, Place::WaterBath, true, 55.0)),
              std::nullopt);
}

/// What a limit allows, judged as a history, is not found; a minute more is.
TEST(WaitLimits, AgreeWithWhatIsJudged)
{
    for (const RuleBook book : allRuleBooks) {
        for (const FoodClass food :
             {FoodClass::CookedDish, FoodClass::GarlicInOil, FoodClass::GelatineCream,
              FoodClass::SoupOrStew, FoodClass::CutProduce}) {
            for (const Place place : {Place::Counter, Place::AtTable, Place::Fridge}) {
                const auto most = longestStay(book, stay(food, place));
                ASSERT_TRUE(most);
                const auto judged = [&](std::int64_t more) {
                    const double celsius = place == Place::Fridge ? 4 : 25;
                    return test::HistoryBuilder(food)
                        .made()
                        .stay(place, most->most.count() + more, celsius)
                        .judged(book);
                };
                // Between the chart's two figures there is a caution already, at the lower one.
                const auto isOverMost = [&](const std::vector<Finding>& findings) {
                    const Finding* found = test::find(findings, most->rule);
                    const double unit =
                        found != nullptr && found->measure == Measure::Days ? 1440 : 1;
                    return found != nullptr &&
                           found->limit * unit >= static_cast<double>(most->most.count());
                };
                EXPECT_FALSE(isOverMost(judged(0)))
                    << nameOf(book) << nameOf(food) << nameOf(place);
                // A date mark counts midnights: from a midnight on there is a day left.
                const std::int64_t more = most->rule == "us_date_mark" ? 1440 : 1;
                EXPECT_TRUE(isOverMost(judged(more)))
                    << nameOf(book) << nameOf(food) << nameOf(place);
            }
        }
    }
}

} // namespace
} // namespace suppertide::safety
