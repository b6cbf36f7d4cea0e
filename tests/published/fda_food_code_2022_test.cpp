// FDA, Food Code 2022, parts 3-4 and 3-5: every limit as printed, and the histories at its very
// edge. Limits are exact figures: no tolerance but what doubles lose (1e-6 of the unit).
#include <gtest/gtest.h>

#include "core/safety/judge_history.h"
#include "core/safety/time_temperature.h"
#include "tests/core/safety/history_builder.h"
#include "tests/published/deviation.h"

namespace suppertide::safety {
namespace {

using test::breaks;
using test::fahrenheit;
using test::find;
using test::HistoryBuilder;
using test::rulesOf;

constexpr RuleBook trade = RuleBook::UsTrade;

void expectRow(const char* id, double temperature, double minutes, std::string_view section)
{
    const Rule* rule = findRule(id);
    ASSERT_NE(rule, nullptr) << id;
    EXPECT_EQ(rule->source, "FDA, Food Code 2022") << id;
    EXPECT_NE(rule->section.find(section), std::string::npos) << id << ": " << rule->section;
    if (temperature != 0) {
        EXPECT_EQ(rule->temperature,
                  (PublishedTemperature{temperature, TemperatureUnit::Fahrenheit}))
            << id;
    }
    if (minutes != 0) {
        EXPECT_NEAR(rule->minutes.value_or(0), minutes, 1e-9) << id;
    }
}

TEST(FdaFoodCode2022, PrintsTheLimitsOfCooking)
{
    expectRow("us_trade_meat_core", 145, 15.0 / 60, "3-401.11(A)(1)");
    expectRow("us_trade_fish_core", 145, 15.0 / 60, "3-401.11(A)(1)");
    expectRow("us_trade_mince_core", 155, 17.0 / 60, "3-401.11(A)(2)");
    expectRow("us_trade_poultry_core", 165, 0, "3-401.11(A)(3)");
    expectRow("us_trade_plant_core", 135, 0, "3-401.13");
    expectRow("us_trade_microwave", 165, 2, "3-401.12");
    expectRow("us_trade_roast_oven_still_small", 350, 0, "3-401.11(B)(1)");
    expectRow("us_trade_roast_oven_still_large", 250, 0, "3-401.11(B)(1)");
    expectRow("us_trade_roast_oven_fan_small", 325, 0, "3-401.11(B)(1)");
    expectRow("us_trade_roast_oven_fan_large", 250, 0, "3-401.11(B)(1)");
}

TEST(FdaFoodCode2022, PrintsTheLimitsOfReheatingFreezingAndHolding)
{
    expectRow("us_trade_reheating", 165, 15.0 / 60, "3-403.11");
    expectRow("us_trade_reheating_time", 0, 120, "3-403.11");
    expectRow("us_trade_reheating_packed", 135, 0, "3-403.11(C)");
    expectRow("parasites", -4, 7 * 1440, "3-402.11");
    expectRow("parasites_deep", -31, 15 * 60, "3-402.11");
    expectRow("us_cooling_first", 70, 120, "3-501.14(A)(1)");
    expectRow("us_cooling_total", 41, 360, "3-501.14(A)(2)");
    expectRow("us_cooling_from_room", 41, 240, "3-501.14(B)");
    expectRow("us_trade_hot_holding", 135, 0, "3-501.16");
    expectRow("us_trade_hot_holding_roast", 130, 0, "3-501.16");
    expectRow("us_trade_cold_holding", 41, 0, "3-501.16");
    expectRow("us_trade_shell_eggs", 45, 0, "3-501.16(B)");
    expectRow("us_date_mark", 41, 7 * 1440, "3-501.17");
    expectRow("us_trade_time_alone", 41, 240, "3-501.19(B)");
    expectRow("us_trade_time_alone_cold", 41, 360, "3-501.19(C)");
    expectRow("us_trade_thawing", 41, 0, "3-501.13");
    expectRow("us_trade_thawing_water", 70, 240, "3-501.13");
    EXPECT_EQ(findRule("us_cooling_first")->upper->value, 135);
    EXPECT_EQ(findRule("us_trade_time_alone_cold")->upper->value, 70);
    EXPECT_EQ(findRule("us_trade_thawing_water")->upper->value, 41);
}

TEST(FdaFoodCode2022, ChartOfWholeRoastsIsReproducedRowByRow)
{
    const std::pair<double, double> rows[] = {
        {130, 112},        {131, 89},        {133, 56},        {135, 36},        {136, 28},
        {138, 18},         {140, 12},        {142, 8},         {144, 5},         {145, 4},
        {147, 134.0 / 60}, {149, 85.0 / 60}, {151, 54.0 / 60}, {153, 34.0 / 60}, {155, 22.0 / 60},
        {157, 14.0 / 60},  {158, 0}};
    const auto* table = findTimeTemperatureTable("food_code_roasts");
    ASSERT_NE(table, nullptr);
    ASSERT_EQ(table->rows.size(), std::size(rows));
    suppertide::test::Deviation worst{"Food Code 2022: chart of roasts, min"};
    for (const auto& [degrees, minutes] : rows) {
        worst.near(table->minutesAt(fahrenheit(degrees)).value(), minutes, 1e-9,
                   std::to_string(degrees));
    }
    EXPECT_EQ(table->minutesAt(fahrenheit(129.9)), std::nullopt);
}

TEST(FdaFoodCode2022, ChartOfMinceIsReproducedRowByRow)
{
    const auto* table = findTimeTemperatureTable("food_code_mince");
    ASSERT_NE(table, nullptr);
    suppertide::test::Deviation worst{"Food Code 2022: chart of mince, min"};
    worst.near(table->minutesAt(fahrenheit(145)).value(), 3, 1e-9, "145");
    worst.near(table->minutesAt(fahrenheit(150)).value(), 1, 1e-9, "150");
    worst.near(table->minutesAt(fahrenheit(155)).value(), 17.0 / 60, 1e-9, "155");
    // Printed as less than a second.
    worst.near(table->minutesAt(fahrenheit(158)).value(), 1.0 / 60, 1e-9, "158");
}

// 1.1 edge tests --------------------------------------------------------------------------------

/// A soup that is at 135 °F for ten minutes, cools straight to 70 and then straight to 41 °F.
std::vector<Finding> cooled(std::int64_t first, std::int64_t second)
{
    return HistoryBuilder(FoodClass::SoupOrStew)
        .stay(Place::Hob, 30, 100)
        .stay(Place::Counter, 10, 100, fahrenheit(135))
        .stay(Place::IceBath, first, fahrenheit(135), fahrenheit(70))
        .stay(Place::Fridge, second, fahrenheit(70), fahrenheit(41))
        .stay(Place::Fridge, 600, 3)
        .judged(trade);
}

TEST(FdaFoodCode2022, FirstStageTakesTwoHoursAndNoMinuteMore)
{
    EXPECT_EQ(rulesOf(cooled(120, 200)), std::vector<std::string>{});
    const auto late = cooled(121, 200);
    ASSERT_EQ(rulesOf(late), std::vector<std::string>{"us_cooling_first"});
    EXPECT_NEAR(late[0].measured, 121, 1e-6);
    EXPECT_EQ(late[0].limit, 120);
    // The clock starts at minute 40, when the soup passes below 135 °F, ten minutes off the heat.
    ASSERT_EQ(late[0].counts.size(), 1U);
    EXPECT_NEAR(late[0].counts[0].from, 40, 1e-6);
    EXPECT_NEAR(late[0].counts[0].to, 161, 1e-6);
    EXPECT_EQ(late[0].weight, Weight::Unsafe);
    EXPECT_EQ(late[0].remedies.front(), Remedy::IceBath);
}

TEST(FdaFoodCode2022, BothStagesTakeSixHoursInTotalNotTwoPlusSix)
{
    EXPECT_EQ(rulesOf(cooled(120, 240)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(cooled(60, 300)), std::vector<std::string>{});
    const auto late = cooled(120, 241);
    ASSERT_EQ(rulesOf(late), std::vector<std::string>{"us_cooling_total"});
    EXPECT_NEAR(late[0].measured, 361, 1e-6);
    EXPECT_EQ(rulesOf(cooled(60, 301)), std::vector<std::string>{"us_cooling_total"});
}

TEST(FdaFoodCode2022, CoolingFromRoomTemperatureTakesFourHours)
{
    const auto cold = [](std::int64_t minutes) {
        return HistoryBuilder(FoodClass::MixedSalad)
            .stay(Place::Fridge, minutes, 20, fahrenheit(41))
            .stay(Place::Fridge, 60, 4)
            .judged(trade);
    };
    EXPECT_EQ(rulesOf(cold(240)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(cold(241), "us_cooling_from_room"));
}

TEST(FdaFoodCode2022, HoldsHotAt135AndRoastsAt130)
{
    const auto held = [](FoodClass food, double degrees) {
        return HistoryBuilder(food)
            .stay(Place::Oven, 60, fahrenheit(170))
            .stay(Place::WarmHold, 60, fahrenheit(degrees))
            .judged(trade);
    };
    EXPECT_FALSE(breaks(held(FoodClass::CookedDish, 135), "us_trade_hot_holding"));
    const auto cool = held(FoodClass::CookedDish, 134.9);
    ASSERT_TRUE(breaks(cool, "us_trade_hot_holding"));
    EXPECT_NEAR(find(cool, "us_trade_hot_holding")->measured, 134.9, 1e-6);
    EXPECT_EQ(find(cool, "us_trade_hot_holding")->measure, Measure::Fahrenheit);
    EXPECT_EQ(rulesOf(held(FoodClass::RawMeat, 130)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(held(FoodClass::RawMeat, 129.9), "us_trade_hot_holding_roast"));
}

TEST(FdaFoodCode2022, HoldsColdAt41AndEggsInTheShellAt45)
{
    const auto held = [](FoodClass food, double degrees) {
        return HistoryBuilder(food)
            .stay(Place::Fridge, 60, 2)
            .stay(Place::Fridge, 60, fahrenheit(degrees))
            .judged(trade);
    };
    EXPECT_EQ(rulesOf(held(FoodClass::Dairy, 41)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(held(FoodClass::Dairy, 41.1), "us_trade_cold_holding"));
    // Cut melon, leafy greens and tomatoes are food of controlled temperature: 1-201.10.
    EXPECT_TRUE(breaks(held(FoodClass::CutProduce, 41.1), "us_trade_cold_holding"));
    EXPECT_FALSE(breaks(held(FoodClass::ShellEgg, 45), "us_trade_shell_eggs"));
    EXPECT_FALSE(breaks(held(FoodClass::ShellEgg, 45), "us_trade_cold_holding"));
    EXPECT_TRUE(breaks(held(FoodClass::ShellEgg, 45.1), "us_trade_shell_eggs"));
}

TEST(FdaFoodCode2022, TimeAloneIsFourHoursOrSixIfNeverAbove70)
{
    const auto stood = [](std::int64_t minutes, double degrees) {
        return HistoryBuilder(FoodClass::MixedSalad)
            .stay(Place::Fridge, 60, fahrenheit(41))
            .stay(Place::AtTable, minutes, fahrenheit(degrees))
            .judged(trade);
    };
    EXPECT_EQ(rulesOf(stood(240, 71)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(stood(241, 71)), std::vector<std::string>{"us_trade_time_alone"});
    EXPECT_EQ(rulesOf(stood(360, 70)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(stood(361, 70)), std::vector<std::string>{"us_trade_time_alone_cold"});
}

TEST(FdaFoodCode2022, CooksToTheTemperatureForItsTime)
{
    const auto cooked = [](FoodClass food, double degrees, std::int64_t minutes) {
        return HistoryBuilder(food)
            .stay(Place::Hob, 20, 5, fahrenheit(100))
            .stay(Place::Hob, minutes, fahrenheit(degrees))
            .judged(trade);
    };
    EXPECT_EQ(rulesOf(cooked(FoodClass::LeanFish, 145, 1)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(cooked(FoodClass::LeanFish, 144.9, 1), "us_trade_fish_core"));
    EXPECT_EQ(rulesOf(cooked(FoodClass::RawMince, 155, 1)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(cooked(FoodClass::RawMince, 150, 1)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(cooked(FoodClass::RawMince, 149, 1), "us_trade_mince_core"));
    EXPECT_EQ(rulesOf(cooked(FoodClass::RawMince, 145, 3)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(cooked(FoodClass::RawMince, 145, 2), "us_trade_mince_core"));
    EXPECT_EQ(rulesOf(cooked(FoodClass::RawPoultry, 165, 1)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(cooked(FoodClass::RawPoultry, 164.9, 90), "us_trade_poultry_core"));
}

TEST(FdaFoodCode2022, RoastsMeetTheChartByTimeAtTheCore)
{
    const auto roast = [](double degrees, std::int64_t minutes) {
        return HistoryBuilder(FoodClass::RawMeat)
            .stay(Place::Oven, 60, 5, fahrenheit(120))
            .stay(Place::Oven, minutes, fahrenheit(degrees))
            .judged(trade);
    };
    EXPECT_EQ(rulesOf(roast(130, 112)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(roast(130, 111), "us_trade_meat_core"));
    EXPECT_EQ(rulesOf(roast(140, 12)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(roast(140, 11), "us_trade_meat_core"));
    EXPECT_TRUE(breaks(roast(129, 1000), "us_trade_meat_core")); // below the lowest row
}

TEST(FdaFoodCode2022, OvenOfARoastByItsMassOnlyIfItReliesOnTheChart)
{
    const auto roast = [](double kilograms, double oven, double core, bool isFan) {
        HistoryBuilder builder(FoodClass::RawMeat);
        builder.weighing(kilograms).stay(Place::Oven, 120, 5, fahrenheit(core));
        builder.in(fahrenheit(oven));
        if (isFan) {
            builder.fan();
        }
        return builder.stay(Place::Oven, 60, fahrenheit(core)).judged(trade);
    };
    EXPECT_FALSE(breaks(roast(4.4, 350, 136, false), "us_trade_roast_oven_still_small"));
    EXPECT_TRUE(breaks(roast(4.4, 349, 136, false), "us_trade_roast_oven_still_small"));
    EXPECT_FALSE(breaks(roast(4.4, 325, 136, true), "us_trade_roast_oven_fan_small"));
    EXPECT_TRUE(breaks(roast(4.4, 324, 136, true), "us_trade_roast_oven_fan_small"));
    EXPECT_EQ(rulesOf(roast(4.5, 250, 136, false)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(roast(4.5, 249, 136, false), "us_trade_roast_oven_still_large"));
    EXPECT_TRUE(breaks(roast(4.5, 249, 136, true), "us_trade_roast_oven_fan_large"));
    EXPECT_EQ(rulesOf(roast(4.4, 249, 146, false)), std::vector<std::string>{});
}

TEST(FdaFoodCode2022, PlantFoodReaches135IfItIsKeptHot)
{
    const auto kept = [](double degrees) {
        return HistoryBuilder(FoodClass::CookedVegetable)
            .stay(Place::Hob, 20, 20, fahrenheit(degrees))
            .stay(Place::WarmHold, 30, fahrenheit(degrees))
            .judged(trade);
    };
    EXPECT_EQ(rulesOf(kept(135)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(kept(134), "us_trade_plant_core"));
}

TEST(FdaFoodCode2022, MicrowavedFoodReaches165AndStandsTwoMinutes)
{
    const auto cooked = [](double degrees, std::int64_t minutes) {
        return HistoryBuilder(FoodClass::LeanFish)
            .stay(Place::Microwave, 8, 5, fahrenheit(degrees))
            .stay(Place::Counter, minutes, fahrenheit(degrees))
            .judged(trade);
    };
    EXPECT_EQ(rulesOf(cooked(165, 2)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(cooked(164, 2), "us_trade_microwave"));
    EXPECT_TRUE(breaks(cooked(165, 1), "us_trade_microwave"));
}

TEST(FdaFoodCode2022, ReheatsTo165WithinTwoHours)
{
    const auto reheated = [](FoodClass food, std::int64_t minutes, double degrees) {
        return HistoryBuilder(food)
            .stay(Place::Fridge, 60, 4)
            .reheated()
            .stay(Place::Oven, minutes, 4, fahrenheit(degrees))
            .stay(Place::WarmHold, 30, fahrenheit(140))
            .judged(trade);
    };
    EXPECT_EQ(rulesOf(reheated(FoodClass::CookedDish, 120, 165)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(reheated(FoodClass::CookedDish, 121, 165)),
              std::vector<std::string>{"us_trade_reheating_time"});
    const auto cool = reheated(FoodClass::CookedDish, 60, 164);
    EXPECT_EQ(rulesOf(cool), std::vector<std::string>{"us_trade_reheating"});
    EXPECT_NEAR(cool[0].measured, 164, 1e-6);
    EXPECT_EQ(rulesOf(reheated(FoodClass::ReadyMeal, 120, 141)), std::vector<std::string>{});
    // What is eaten at once may be reheated to any temperature: 3-403.10.
    EXPECT_EQ(rulesOf(HistoryBuilder(FoodClass::CookedDish)
                          .stay(Place::Fridge, 60, 4)
                          .reheated(false)
                          .stay(Place::Oven, 30, 4, 50)
                          .judged(trade)),
              std::vector<std::string>{});
}

TEST(FdaFoodCode2022, FishEatenRawWasFrozenSevenDaysOrFifteenHours)
{
    const auto frozen = [](double degrees, std::int64_t hours) {
        return HistoryBuilder(FoodClass::FattyFish, {RiskFact::RawFish})
            .stay(Place::Freezer, hours * 60, fahrenheit(degrees))
            .stay(Place::Fridge, 600, 3)
            .judged(trade);
    };
    EXPECT_FALSE(breaks(frozen(-4, 168), "parasites"));
    EXPECT_TRUE(breaks(frozen(-4, 167), "parasites"));
    EXPECT_TRUE(breaks(frozen(-3.9, 400), "parasites"));
    EXPECT_FALSE(breaks(frozen(-31, 15), "parasites"));
    EXPECT_TRUE(breaks(frozen(-31, 14), "parasites"));
    EXPECT_TRUE(breaks(frozen(-30.9, 15), "parasites"));
}

TEST(FdaFoodCode2022, ThawsInWaterAt70NotAbove41ForMoreThanFourHours)
{
    const auto thawed = [](double water, double food, std::int64_t minutes) {
        return HistoryBuilder(FoodClass::RawMeat)
            .stay(Place::Freezer, 600, -18)
            .thawed(ThawBy::RunningWater)
            .stay(Place::ThawWater, minutes, fahrenheit(food))
            .in(fahrenheit(water))
            .stay(Place::Oven, 60, 5, 70)
            .judged(trade);
    };
    EXPECT_EQ(rulesOf(thawed(70, 50, 240)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(thawed(71, 50, 10), "us_trade_thawing_water"));
    EXPECT_TRUE(breaks(thawed(70, 50, 241), "us_trade_thawing_water"));
    EXPECT_EQ(rulesOf(thawed(70, 41, 600)), std::vector<std::string>{});
}

// 1.1 date marks --------------------------------------------------------------------------------

Judging byTrade()
{
    Judging judging;
    judging.book = trade;
    return judging;
}

/// The plan time of noon, so many days after the first of a month.
std::int64_t noon(int day)
{
    return (day - 1) * 1440LL + 720;
}

TEST(FdaFoodCode2022, WorkedCaseOfFreezingKeepsUntil14October)
{
    // NC DEH fact sheet: cooked on 1 October, two days at 41 °F, frozen on the third, thawed on the
    // 10th: last day 14 October.
    const auto eatenOn = [](int day) {
        return HistoryBuilder(FoodClass::CookedDish)
            .at(noon(1))
            .made()
            .stay(Place::Fridge, noon(3) - noon(1), 4)
            .stay(Place::Freezer, noon(10) - noon(3), -18)
            .stay(Place::Fridge, noon(day) - noon(10), 4)
            .history();
    };
    const auto days = [&](int day) { return judgeHistory(eatenOn(day), byTrade()).value(); };
    EXPECT_FALSE(breaks(days(14), "us_date_mark"));
    const auto late = days(15);
    ASSERT_TRUE(breaks(late, "us_date_mark"));
    EXPECT_EQ(find(late, "us_date_mark")->measured, 8);
    EXPECT_EQ(find(late, "us_date_mark")->limit, 7);
}

TEST(FdaFoodCode2022, WorkedCaseOfMakingOn1AprilKeepsUntil7April)
{
    const auto eatenOn = [](int day) {
        return HistoryBuilder(FoodClass::CookedDish)
            .at(noon(1))
            .made()
            .stay(Place::Fridge, noon(day) - noon(1), 4)
            .judged(trade);
    };
    EXPECT_FALSE(breaks(eatenOn(7), "us_date_mark"));
    EXPECT_TRUE(breaks(eatenOn(8), "us_date_mark"));
}

TEST(FdaFoodCode2022, WorkedCaseOfAMixtureKeepsUntilItsOldestPartDoes)
{
    // S. Nevada HD: made on 1 June, used in another dish on 3 June: still 7 June.
    HistoryBuilder part(FoodClass::CookedMeat);
    part.at(noon(1)).made().stay(Place::Fridge, noon(3) - noon(1), 4);
    const MixedIn old = keptSoFar(part.history(), planTime(noon(3)), PlanCalendar{});
    EXPECT_EQ(old.midnights, 2);
    EXPECT_EQ(old.fridge, Minutes{2 * 1440});
    const auto eatenOn = [&](int day) {
        return HistoryBuilder(FoodClass::CookedDish)
            .at(noon(3))
            .made()
            .mixedIn(old)
            .stay(Place::Fridge, noon(day) - noon(3), 4)
            .judged(trade);
    };
    EXPECT_FALSE(breaks(eatenOn(7), "us_date_mark"));
    EXPECT_TRUE(breaks(eatenOn(8), "us_date_mark"));
}

} // namespace
} // namespace suppertide::safety
