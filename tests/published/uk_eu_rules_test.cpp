// UK Food Standards Agency and NHS advice, Food Safety and Hygiene (England) Regulations 2013,
// ACMSF (2007), Regulation (EC) 853/2004 Annex III, and for comparison New Zealand's template.
// Limits are exact figures. These regulations do not bind a private home.
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "core/safety/judge_history.h"
#include "core/safety/storage_days.h"
#include "core/safety/time_temperature.h"
#include "tests/core/safety/history_builder.h"
#include "tests/published/deviation.h"

namespace suppertide::safety {
namespace {

using suppertide::test::Deviation;
using test::breaks;
using test::find;
using test::HistoryBuilder;
using test::rulesOf;

constexpr RuleBook uk = RuleBook::UkEu;

double minutesAt(const char* table, double celsius)
{
    return findTimeTemperatureTable(table)->minutesAt(celsius).value();
}

TEST(UkEuRules, CoreEquivalentsAreReproducedRowByRow)
{
    Deviation worst{"FSA, ACMSF, NZ: core equivalents, min"};
    constexpr std::array<std::array<double, 2>, 5> fsa{
        {{60, 45}, {65, 10}, {70, 2}, {75, 0.5}, {80, 0.1}}};
    for (const auto& [celsius, minutes] : fsa) {
        worst.near(minutesAt("uk_core", celsius), minutes, 1e-9, "FSA " + std::to_string(celsius));
    }
    worst.near(minutesAt("uk_o157", 60), 93, 1e-9, "O157 60");
    worst.near(minutesAt("uk_o157", 65), 14, 1e-9, "O157 65");
    worst.near(minutesAt("uk_o157", 70), 2, 1e-9, "O157 70");
    worst.near(minutesAt("nz_core", 65), 15, 1e-9, "NZ 65");
    worst.near(minutesAt("nz_core", 70), 3, 1e-9, "NZ 70");
    worst.near(minutesAt("nz_core", 75), 0.5, 1e-9, "NZ 75");
    EXPECT_EQ(findTimeTemperatureTable("uk_core")->minutesAt(59.9), std::nullopt);
}

TEST(UkEuRules, PrintedEquivalentsAreNoShorterThanTheirSlope)
{
    // F(70 °C) of 2 min with z 7.5 °C; the list is rounded up from it. Computed: 43.1, 9.3, 2, 0.43
    // and 0.093 min; none is printed shorter, none longer by more than a sixth.
    for (const double celsius : {60.0, 65.0, 70.0, 75.0, 80.0}) {
        const double computed = 2 * std::pow(10.0, (70 - celsius) / 7.5);
        EXPECT_GE(minutesAt("uk_core", celsius), computed * 0.9999) << celsius;
        EXPECT_LE(minutesAt("uk_core", celsius), computed * 7 / 6) << celsius;
    }
    // z 6 °C: 92.8 and 13.6 min, printed to whole minutes.
    Deviation worst{"ACMSF: z 6 °C against the printed list, min"};
    worst.near(2 * std::pow(10.0, 10 / 6.0), minutesAt("uk_o157", 60), 0.5, "60");
    worst.near(2 * std::pow(10.0, 5 / 6.0), minutesAt("uk_o157", 65), 0.5, "65");
}

TEST(UkEuRules, CooksTo70DegreesForTwoMinutesOrItsEqual)
{
    const auto cooked = [](FoodClass food, double celsius, std::int64_t minutes) {
        return HistoryBuilder(food)
            .stay(Place::Oven, 30, 5, 55)
            .stay(Place::Oven, minutes, celsius)
            .judged(uk);
    };
    EXPECT_EQ(rulesOf(cooked(FoodClass::RawPoultry, 70, 2)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(cooked(FoodClass::RawPoultry, 70, 1), "uk_core"));
    EXPECT_EQ(rulesOf(cooked(FoodClass::RawPoultry, 65, 10)), std::vector<std::string>{});
    EXPECT_TRUE(breaks(cooked(FoodClass::RawPoultry, 65, 9), "uk_core"));
    EXPECT_TRUE(breaks(cooked(FoodClass::RawMince, 65, 13), "uk_mince_core"));
    EXPECT_EQ(rulesOf(cooked(FoodClass::RawMince, 65, 14)), std::vector<std::string>{});
}

TEST(UkEuRules, HotFoodStandsBelow63ForTwoHours)
{
    EXPECT_EQ(findRule("uk_hot_holding")->temperature->value, 63);
    const auto held = [](std::int64_t minutes, double celsius) {
        return HistoryBuilder(FoodClass::CookedDish)
            .stay(Place::Oven, 30, 75)
            .stay(Place::AtTable, minutes, celsius)
            .judged(uk);
    };
    EXPECT_EQ(rulesOf(held(600, 63)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(held(120, 62.9)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(held(121, 62.9)), std::vector<std::string>{"uk_hot_period"});
}

TEST(UkEuRules, ColdFoodStandsAboveEightForFourHours)
{
    const auto held = [](std::int64_t minutes, double celsius) {
        return HistoryBuilder(FoodClass::CookedDish)
            .stay(Place::Fridge, 30, 5)
            .stay(Place::AtTable, minutes, celsius)
            .judged(uk);
    };
    EXPECT_EQ(rulesOf(held(600, 8)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(held(240, 8.1)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(held(241, 8.1)), std::vector<std::string>{"uk_cold_period"});
}

TEST(UkEuRules, ChilledRawMeatsHaveLimitsOfTheirOwnInTrade)
{
    Deviation worst{"EU 853/2004: raw meats, °C"};
    for (const auto& [food, celsius] :
         {std::pair{FoodClass::RawMeat, 7.0}, std::pair{FoodClass::RawPoultry, 4.0},
          std::pair{FoodClass::RawOffal, 3.0}, std::pair{FoodClass::RawMince, 2.0}}) {
        const Rule* rule = ruleAbout(uk, Subject::ColdHolding, food);
        ASSERT_NE(rule, nullptr);
        EXPECT_EQ(rule->source, "Regulation (EC) 853/2004");
        worst.near(rule->temperature->value, celsius, 1e-9, rule->id);
        const auto kept = [&](double at) {
            return HistoryBuilder(food)
                .stay(Place::Fridge, 60, 1)
                .stay(Place::Fridge, 60, at)
                .judged(uk);
        };
        EXPECT_FALSE(breaks(kept(celsius), rule->id));
        ASSERT_TRUE(breaks(kept(celsius + 0.1), rule->id));
        EXPECT_EQ(find(kept(celsius + 0.1), rule->id)->weight, Weight::Caution);
    }
}

TEST(UkEuRules, RiceIsInTheFridgeWithinOneHourForOneDayAndReheatedOnce)
{
    const auto rice = [](std::int64_t cooling, std::int64_t hours) {
        return HistoryBuilder(FoodClass::CookedRice)
            .stay(Place::Hob, 20, 98)
            .stay(Place::Counter, cooling, 98, 20)
            .stay(Place::Fridge, 60, 20, 4)
            .stay(Place::Fridge, hours * 60, 4)
            .judged(uk);
    };
    EXPECT_EQ(rulesOf(rice(60, 23)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(rice(61, 23)), std::vector<std::string>{"uk_rice_cooling"});
    EXPECT_EQ(rulesOf(rice(60, 24)), std::vector<std::string>{"storage/rice_uk"});
    EXPECT_NE(findRule("uk_rice_cooling")->says.find("does not destroy"), std::string::npos);
    const auto again = HistoryBuilder(FoodClass::CookedRice)
                           .reheated()
                           .stay(Place::Hob, 20, 4, 90)
                           .stay(Place::Fridge, 30, 4)
                           .reheated()
                           .stay(Place::Hob, 20, 4, 90)
                           .judged(uk);
    ASSERT_TRUE(breaks(again, "uk_rice_once"));
    EXPECT_EQ(find(again, "uk_rice_once")->measured, 2);
}

TEST(UkEuRules, ReheatsUntilItSteamsAndInScotlandTo82)
{
    const Rule* scotland = findRule("scotland_reheating");
    ASSERT_NE(scotland, nullptr);
    EXPECT_EQ(scotland->temperature->value, 82);
    EXPECT_EQ(scotland->status, RowStatus::Secondary);
    EXPECT_TRUE(scotland->books.empty());
    const auto reheated = [](double celsius) {
        return HistoryBuilder(FoodClass::CookedDish)
            .reheated()
            .stay(Place::Oven, 30, 4, celsius)
            .stay(Place::Oven, 2, celsius)
            .judged(uk);
    };
    EXPECT_EQ(rulesOf(reheated(70)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(reheated(64)), std::vector<std::string>{"uk_reheating"});
}

TEST(UkEuRules, CodeMarkedLionEggsMayBeRawForEverybody)
{
    const auto mousse = [](std::vector<RiskFact> facts) {
        return HistoryBuilder(FoodClass::RawEggDessert, std::move(facts))
            .stay(Place::Fridge, 600, 4)
            .judged(uk, {RiskGroup::Pregnant});
    };
    EXPECT_TRUE(breaks(mousse({RiskFact::RawEgg}), "raw_egg_risk"));
    EXPECT_EQ(rulesOf(mousse({RiskFact::RawEgg, RiskFact::LionEgg})), std::vector<std::string>{});
    // Not by the US book.
    EXPECT_TRUE(
        breaks(HistoryBuilder(FoodClass::RawEggDessert, {RiskFact::RawEgg, RiskFact::LionEgg})
                   .stay(Place::Fridge, 600, 4)
                   .judged(RuleBook::UsHome, {RiskGroup::Pregnant}),
               "raw_egg_risk"));
}

} // namespace
} // namespace suppertide::safety
