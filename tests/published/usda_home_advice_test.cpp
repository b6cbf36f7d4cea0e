// USDA and foodsafety.gov, advice to homes: least core temperatures, the danger zone, fridge and
// freezer, roasting, thawing. Limits are exact figures.
#include <gtest/gtest.h>

#include "core/safety/judge_history.h"
#include "core/safety/thaw_time.h"
#include "tests/core/safety/history_builder.h"
#include "tests/published/deviation.h"

namespace suppertide::safety {
namespace {

using test::breaks;
using test::fahrenheit;
using test::find;
using test::HistoryBuilder;
using test::rulesOf;

constexpr RuleBook home = RuleBook::UsHome;

TEST(UsdaHomeAdvice, PrintsItsLeastCoreTemperatures)
{
    const auto limit = [](FoodClass food, Subject subject = Subject::CoreTemperature) {
        const Rule* rule = ruleAbout(home, subject, food);
        return rule == nullptr ? PublishedTemperature{} : rule->temperature.value();
    };
    const auto degrees = [](double value) {
        return PublishedTemperature{value, TemperatureUnit::Fahrenheit};
    };
    EXPECT_EQ(limit(FoodClass::RawMeat), degrees(145));
    EXPECT_EQ(limit(FoodClass::RawMince), degrees(160));
    EXPECT_EQ(limit(FoodClass::RawPoultry), degrees(165));
    EXPECT_EQ(limit(FoodClass::StuffedMeat), degrees(165));
    EXPECT_EQ(limit(FoodClass::EggDish), degrees(160));
    EXPECT_EQ(limit(FoodClass::Custard), degrees(160));
    EXPECT_EQ(limit(FoodClass::FattyFish), degrees(145));
    EXPECT_EQ(limit(FoodClass::LeanFish), degrees(145));
    EXPECT_EQ(limit(FoodClass::CookedDish, Subject::Reheating), degrees(165));
    EXPECT_EQ(limit(FoodClass::CookedHam, Subject::Reheating), degrees(140));
    EXPECT_EQ(findRule("us_home_ham_other")->temperature, degrees(165));
    EXPECT_EQ(findRule("us_home_danger_zone")->temperature, degrees(40));
    EXPECT_EQ(findRule("us_home_danger_zone")->upper, degrees(140));
    EXPECT_EQ(findRule("us_home_danger_zone_hot")->temperature, degrees(90));
    EXPECT_EQ(findRule("us_home_cold_holding")->temperature, degrees(40));
    EXPECT_EQ(findRule("us_home_freezer")->temperature, degrees(0));
    EXPECT_EQ(findRule("us_home_roasting_oven")->temperature, degrees(325));
    EXPECT_NE(findRule("us_home_egg_firm")->says.find("firm"), std::string::npos);
}

std::vector<Finding> roasted(FoodClass food, double degrees, std::int64_t rest = 5)
{
    return HistoryBuilder(food)
        .stay(Place::Oven, 60, 5, fahrenheit(degrees))
        .becomes(cooked(food))
        .stay(Place::Counter, rest, fahrenheit(degrees))
        .judged(home);
}

TEST(UsdaHomeAdvice, TheCoreReachesTheTemperatureOfItsClass)
{
    EXPECT_EQ(rulesOf(roasted(FoodClass::RawMeat, 145)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(roasted(FoodClass::RawMince, 160)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(roasted(FoodClass::RawPoultry, 165)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(roasted(FoodClass::LeanFish, 145)), std::vector<std::string>{});
    const auto rareFish = roasted(FoodClass::LeanFish, 144);
    ASSERT_TRUE(breaks(rareFish, "us_home_fish_core"));
    EXPECT_EQ(find(rareFish, "us_home_fish_core")->weight, Weight::Unsafe);
    EXPECT_NEAR(find(rareFish, "us_home_fish_core")->measured, 144, 1e-6);
    const auto rare = roasted(FoodClass::RawMeat, 125);
    ASSERT_TRUE(breaks(rare, "us_home_meat_core"));
    EXPECT_EQ(find(rare, "us_home_meat_core")->weight, Weight::Unsafe);
}

TEST(UsdaHomeAdvice, LessThanItsTemperatureButEqualInTimeIsACaution)
{
    // 164 °F for five minutes is far more than 25.6 s at 160 °F (FSIS, turkey).
    const auto bird = roasted(FoodClass::RawPoultry, 164);
    ASSERT_EQ(rulesOf(bird), std::vector<std::string>{"us_home_poultry_core"});
    EXPECT_EQ(bird[0].weight, Weight::Caution);
    EXPECT_EQ(bird[0].equivalent, "fsis_poultry");
}

TEST(UsdaHomeAdvice, MeatRestsThreeMinutes)
{
    const auto rested = [](std::int64_t minutes) {
        return HistoryBuilder(FoodClass::RawMeat)
            .stay(Place::Oven, 60, 5, fahrenheit(145))
            .becomes(FoodClass::CookedMeat)
            .stay(Place::Counter, minutes, fahrenheit(145))
            .judged(home);
    };
    EXPECT_FALSE(breaks(rested(3), "us_home_meat_rest"));
    const auto hasty = rested(2);
    ASSERT_TRUE(breaks(hasty, "us_home_meat_rest"));
    EXPECT_NEAR(find(hasty, "us_home_meat_rest")->measured, 2, 1e-6);
}

TEST(UsdaHomeAdvice, TwoHoursInTheDangerZoneAddedUp)
{
    const auto stood = [](std::int64_t first, std::int64_t second) {
        return HistoryBuilder(FoodClass::CookedDish)
            .stay(Place::Counter, first, 20)
            .stay(Place::Fridge, 60, 4)
            .stay(Place::AtTable, second, 20)
            .judged(home);
    };
    EXPECT_EQ(rulesOf(stood(60, 60)), std::vector<std::string>{});
    const auto late = stood(60, 61);
    ASSERT_EQ(rulesOf(late), std::vector<std::string>{"us_home_danger_zone"});
    EXPECT_NEAR(late[0].measured, 121, 1e-6);
    EXPECT_EQ(late[0].counts, (std::vector<MinuteSpan>{{0, 60}, {120, 181}}));
}

TEST(UsdaHomeAdvice, OneHourWhereTheAirIsAbove90Fahrenheit)
{
    const auto stood = [](std::int64_t minutes, double air) {
        return HistoryBuilder(FoodClass::CookedDish)
            .stay(Place::AtTable, minutes, 20)
            .in(fahrenheit(air))
            .judged(home);
    };
    EXPECT_EQ(rulesOf(stood(61, 90)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(stood(60, 90.1)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(stood(61, 90.1)), std::vector<std::string>{"us_home_danger_zone_hot"});
}

TEST(UsdaHomeAdvice, TheZoneEndsAt40And140Fahrenheit)
{
    const auto stood = [](double degrees) {
        return HistoryBuilder(FoodClass::CookedDish)
            .stay(Place::Counter, 600, fahrenheit(degrees))
            .judged(home);
    };
    EXPECT_EQ(rulesOf(stood(40)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(stood(140)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(stood(40.1), "us_home_danger_zone"));
    EXPECT_TRUE(breaks(stood(139.9), "us_home_danger_zone"));
}

TEST(UsdaHomeAdvice, FridgeAt40AndFreezerAtZeroFahrenheit)
{
    const auto kept = [](Place place, double degrees) {
        return HistoryBuilder(FoodClass::CookedDish)
            .stay(place, 60, -25, fahrenheit(degrees))
            .stay(place, 60, fahrenheit(degrees))
            .judged(home);
    };
    EXPECT_EQ(rulesOf(kept(Place::Fridge, 40)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(kept(Place::Fridge, 40.1), "us_home_cold_holding"));
    EXPECT_EQ(rulesOf(kept(Place::Freezer, 0)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(kept(Place::Freezer, 0.1), "us_home_freezer"));
}

TEST(UsdaHomeAdvice, RoastsUncoveredAt325FahrenheitOrAbove)
{
    const auto roast = [](double oven, bool isCovered) {
        HistoryBuilder builder(FoodClass::RawPoultry);
        builder.stay(Place::Oven, 120, 5, fahrenheit(170)).in(fahrenheit(oven));
        if (isCovered) {
            builder.covered();
        }
        return builder.judged(home);
    };
    EXPECT_EQ(rulesOf(roast(325, false)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(roast(324, false)), std::vector<std::string>{"us_home_roasting_oven"});
    EXPECT_EQ(rulesOf(roast(250, true)), std::vector<std::string>{});
}

TEST(UsdaHomeAdvice, ThawsByMass)
{
    constexpr double pound = kilogramsPerPound;
    // 24 h for each 4 to 5 lb, 30 min a pound. Rounded up to a minute.
    suppertide::test::Deviation worst{"USDA: thawing by mass, min"};
    worst.near(static_cast<double>(thawTime(ThawBy::Fridge, 5 * pound)->least.count()), 24 * 60,
               1.0, "5 lb in the fridge, least");
    worst.near(static_cast<double>(thawTime(ThawBy::Fridge, 4 * pound)->most.count()), 24 * 60, 1.0,
               "4 lb in the fridge, most");
    worst.near(static_cast<double>(thawTime(ThawBy::ColdWater, 3 * pound)->most.count()), 90, 1.0,
               "3 lb in cold water");
    EXPECT_FALSE(thawTime(ThawBy::Counter, 1));
    EXPECT_FALSE(thawTime(ThawBy::Fridge, 0));
    EXPECT_FALSE(thawTime(ThawBy::Fridge, 26));
}

TEST(UsdaHomeAdvice, ThawsATurkeyByTheTable)
{
    struct Row
    {
        double from;
        double to;
        int days[2];
        int hours[2];
    };
    constexpr Row rows[] = {{4, 12, {1, 3}, {2, 6}},
                            {12, 16, {3, 4}, {6, 8}},
                            {16, 20, {4, 5}, {8, 10}},
                            {20, 24, {5, 6}, {10, 12}}};
    for (const Row& row : rows) {
        for (const double pounds : {row.from + 0.01, row.to - 0.01}) {
            const auto fridge = turkeyThawTime(ThawBy::Fridge, pounds);
            const auto water = turkeyThawTime(ThawBy::ColdWater, pounds);
            ASSERT_TRUE(fridge && water) << pounds;
            EXPECT_EQ(*fridge,
                      (KeepingTime{Minutes{row.days[0] * 1440}, Minutes{row.days[1] * 1440}}));
            EXPECT_EQ(*water,
                      (KeepingTime{Minutes{row.hours[0] * 60}, Minutes{row.hours[1] * 60}}));
        }
    }
    EXPECT_FALSE(turkeyThawTime(ThawBy::Fridge, 3.9));
    EXPECT_FALSE(turkeyThawTime(ThawBy::Fridge, 24.1));
}

TEST(UsdaHomeAdvice, ThawedInWaterIsCookedAtOnceAndAThawedBirdKeepsTwoDays)
{
    const auto thawed = [](ThawBy method) {
        return HistoryBuilder(FoodClass::RawPoultry)
            .thawed(method)
            .stay(Place::ThawWater, 60, -1, 2)
            .stay(Place::Fridge, 600, 3)
            .stay(Place::Oven, 60, 3, 80)
            .judged(home);
    };
    EXPECT_TRUE(breaks(thawed(ThawBy::ColdWater), "us_cook_after_thawing"));
    const auto kept = [](std::int64_t hours) {
        return HistoryBuilder(FoodClass::RawPoultry)
            .thawed(ThawBy::Fridge)
            .stay(Place::Fridge, hours * 60, 3)
            .stay(Place::Oven, 60, 3, 80)
            .judged(home);
    };
    ASSERT_TRUE(breaks(kept(48), "storage/raw_poultry"));
    EXPECT_EQ(find(kept(48), "storage/raw_poultry")->weight, Weight::Caution);
    EXPECT_EQ(find(kept(49), "storage/raw_poultry")->weight, Weight::Unsafe);
    EXPECT_FALSE(breaks(kept(24), "storage/raw_poultry"));
}

TEST(UsdaHomeAdvice, NeverThawsOnTheCounter)
{
    const auto thawed = HistoryBuilder(FoodClass::RawMeat)
                            .thawed(ThawBy::Counter)
                            .stay(Place::Counter, 60, -5, 3)
                            .stay(Place::Oven, 60, 3, 70)
                            .judged(home);
    EXPECT_TRUE(breaks(thawed, "us_home_thawing"));
}

} // namespace
} // namespace suppertide::safety
