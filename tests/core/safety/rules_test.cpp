#include <gtest/gtest.h>

#include <algorithm>

#include "core/safety/cautions.h"
#include "core/safety/rules.h"
#include "core/safety/storage_days.h"
#include "core/safety/thaw_time.h"
#include "core/safety/time_temperature.h"

namespace suppertide::safety {
namespace {

constexpr std::string_view header =
    "id\tsubject\tbooks\tfoods\ttemperature\tupper\ttime\tequivalents\tstrength\tweight\tstatus\t"
    "source\tsection\tsays\n";

std::string table(std::string_view row)
{
    return std::string(header) + std::string(row) + "\n";
}

TEST(SafetyRules, EachRowNamesItsSourceAndSaysWhatItAsks)
{
    ASSERT_GT(allRules().size(), 70U);
    for (const Rule& rule : allRules()) {
        EXPECT_FALSE(rule.source.empty()) << rule.id;
        EXPECT_GT(rule.says.size(), 20U) << rule.id;
        EXPECT_TRUE(rule.equivalents.empty() ||
                    findTimeTemperatureTable(rule.equivalents) != nullptr)
            << rule.id;
        EXPECT_EQ(rule.books.empty(), rule.subject == Subject::Reference) << rule.id;
        EXPECT_EQ(findRule(rule.id), &rule);
        if (rule.source != "common practice" && rule.source != "this program") {
            EXPECT_FALSE(rule.section.empty()) << rule.id;
        }
        if (rule.status == RowStatus::CommonPractice) {
            EXPECT_EQ(rule.strength, Strength::CommonPractice) << rule.id;
        }
    }
    EXPECT_EQ(findRule("no such rule"), nullptr);
}

/// This program finds rules that are broken; it never says that food is safe.
TEST(SafetyRules, NoTextSaysThatFoodIsSafe)
{
    const auto expectNoPromise = [](const std::string& text) {
        for (const char* promise : {"is safe", "are safe", "safe to eat", "is fine"}) {
            EXPECT_EQ(text.find(promise), std::string::npos) << text;
        }
    };
    for (const Rule& rule : allRules()) {
        expectNoPromise(rule.says);
    }
    for (const CautionText& caution : allCautions()) {
        expectNoPromise(caution.says);
    }
    EXPECT_EQ(localCodesPrevail(), "Local food codes and licensed practice prevail.");
}

TEST(SafetyRules, WhatJudgesNeedOfARowIsThere)
{
    for (const Rule& rule : allRules()) {
        switch (rule.subject) {
        case Subject::DangerZone:
        case Subject::TimeAlone:
        case Subject::TimeAloneCold:
        case Subject::HotPeriod:
        case Subject::ColdPeriod:
        case Subject::CoolingFirst:
        case Subject::CoolingTotal:
        case Subject::ComingUp:
        case Subject::ThawingWater:
            EXPECT_TRUE(rule.temperature && rule.upper && rule.minutes) << rule.id;
            break;
        case Subject::DangerZoneHotAir:
        case Subject::CoolingFromRoom:
        case Subject::Rest:
        case Subject::Microwave:
        case Subject::LowBath:
        case Subject::DateMark:
        case Subject::Parasites:
            EXPECT_TRUE(rule.temperature && rule.minutes) << rule.id;
            break;
        case Subject::HotHolding:
        case Subject::HotHoldingRoast:
        case Subject::ColdHolding:
        case Subject::Freezing:
        case Subject::Reheating:
        case Subject::CoreTemperature:
        case Subject::RoastingOven:
        case Subject::Canning:
            EXPECT_TRUE(rule.temperature) << rule.id;
            break;
        case Subject::ReheatingTime:
        case Subject::RiceCooling:
        case Subject::GarlicInOil:
            EXPECT_TRUE(rule.minutes) << rule.id;
            break;
        case Subject::ReheatingOnce:
        case Subject::Thawing:
        case Subject::CookAfterThawing:
        case Subject::RawEgg:
        case Subject::RareMeat:
        case Subject::RawFish:
        case Subject::RawShellfish:
        case Subject::ColdSmokedFish:
        case Subject::UnpasteurisedMilk:
        case Subject::FridgeOrder:
        case Subject::BoardOrder:
        case Subject::AllergenOrder:
        case Subject::NotKnown:
        case Subject::Reference:
            break;
        }
    }
}

TEST(SafetyRules, TheRowForAFoodStandsBeforeTheRowForAll)
{
    const auto eggs = rulesAbout(RuleBook::UsTrade, Subject::ColdHolding, FoodClass::ShellEgg);
    ASSERT_EQ(eggs.size(), 2U);
    EXPECT_EQ(eggs[0]->id, "us_trade_shell_eggs");
    EXPECT_EQ(eggs[1]->id, "us_trade_cold_holding");
    EXPECT_TRUE(rulesAbout(RuleBook::UsHome, Subject::ColdHolding, FoodClass::DryGoods).empty());
    EXPECT_EQ(ruleAbout(RuleBook::UsHome, Subject::HotPeriod, FoodClass::CookedDish), nullptr);
    EXPECT_FALSE(watches(RuleBook::UkEu, FoodClass::ShellEgg));
    EXPECT_TRUE(watches(RuleBook::UsHome, FoodClass::ShellEgg));
}

TEST(SafetyRules, EachBookHoldsHotAndColdCooksAndReheats)
{
    for (const RuleBook book : allRuleBooks) {
        for (const Subject subject :
             {Subject::HotHolding, Subject::ColdHolding, Subject::Reheating, Subject::CoolingFirst,
              Subject::CoolingTotal, Subject::Thawing, Subject::RawEgg, Subject::NotKnown}) {
            EXPECT_NE(ruleAbout(book, subject, FoodClass::CookedDish), nullptr)
                << nameOf(book) << static_cast<int>(subject);
        }
        for (const FoodClass food : {FoodClass::RawPoultry, FoodClass::RawMince, FoodClass::RawMeat,
                                     FoodClass::LeanFish}) {
            EXPECT_NE(ruleAbout(book, Subject::CoreTemperature, food), nullptr)
                << nameOf(book) << nameOf(food);
        }
    }
}

TEST(SafetyRules, AFaultNamesItsLine)
{
    const char* const good = "a\thot holding\tus_home\t*\t140 °F\t-\t2 h\t-\tadvice\tunsafe\t"
                             "confirmed\tX\t1\tKeep it hot.";
    ASSERT_TRUE(readRules(table(good)));
    EXPECT_EQ(readRules(table(good))->front().minutes, 120);
    for (const char* bad : {
             "a\thot folding\tus_home\t*\t140 °F\t-\t2 h\t-\tadvice\tunsafe\tconfirmed\tX\t1\tK.",
             "a\thot holding\tmars\t*\t140 °F\t-\t2 h\t-\tadvice\tunsafe\tconfirmed\tX\t1\tK.",
             "a\thot holding\tus_home\tmoss\t140 °F\t-\t2 "
             "h\t-\tadvice\tunsafe\tconfirmed\tX\t1\tK.",
             "a\thot holding\tus_home\t*\t140 K\t-\t2 h\t-\tadvice\tunsafe\tconfirmed\tX\t1\tK.",
             "a\thot holding\tus_home\t*\t140 °F\t-\t2 y\t-\tadvice\tunsafe\tconfirmed\tX\t1\tK.",
             "a\thot holding\tus_home\t*\t140 °F\t-\t-2 h\t-\tadvice\tunsafe\tconfirmed\tX\t1\tK.",
             "a\thot holding\tus_home\t*\t140 °F\t-\t2 h\t-\tadvice\tunsafe\tconfirmed\t-\t1\tK.",
         }) {
        const auto read = readRules(table(bad));
        ASSERT_FALSE(read) << bad;
        EXPECT_NE(read.error().forCook.find("line 2"), std::string::npos) << read.error().forCook;
    }
    const auto twice = readRules(table(std::string(good) + "\n" + good));
    ASSERT_FALSE(twice);
    EXPECT_NE(twice.error().forCook.find("line 3"), std::string::npos);
}

TEST(SafetyTables, KeepingTimesAndThawingTimesHaveSourcesAndRefuseNonsense)
{
    for (const StorageRow& row : allStorageRows()) {
        EXPECT_FALSE(row.source.empty()) << row.id;
        EXPECT_EQ(findStorageRow(row.id), &row);
    }
    for (const ThawRow& row : allThawRows()) {
        EXPECT_FALSE(row.source.empty()) << row.id;
    }
    constexpr std::string_view columns =
        "id\tlabel\tfoods\tbooks\tfridge_least\tfridge_most\tfreezer_least\tfreezer_most\t"
        "strength\tweight\tstatus\tsource\tsection\n";
    const auto rows = [&](std::string_view times) {
        return readStorageRows(std::string(columns) + "a\ta\tdairy\tus_home\t" +
                               std::string(times) + "\tadvice\tunsafe\tconfirmed\tX\t-\n");
    };
    EXPECT_TRUE(rows("1 d\t2 d\t-\t-"));
    EXPECT_FALSE(rows("3 d\t2 d\t-\t-"));
    EXPECT_FALSE(rows("3 d\t-\t-\t-"));
    EXPECT_FALSE(readThawRows("id\tmethod\tfrom\tto\tleast\tmost\tstatus\tsource\tsection\n"
                              "a\tfridge\t1 kg\t2 lb\t1 h\t2 h\tconfirmed\tX\t-\n"));
    EXPECT_FALSE(readThawRows("id\tmethod\tfrom\tto\tleast\tmost\tstatus\tsource\tsection\n"
                              "a\tfridge\t1 lb\t2 lb\t3 h\t2 h\tconfirmed\tX\t-\n"));
}

TEST(SafetyTables, TimesAtACoreFallFromRowToRowInOneUnit)
{
    constexpr std::string_view columns = "table\ttemperature\ttime\tstatus\tsource\tsection\n";
    const auto rows = [&](std::string_view two) {
        return readTimeTemperatureTables(std::string(columns) +
                                         "a\t60 °C\t45 min\tconfirmed\tX\t-\n" + std::string(two) +
                                         "\tconfirmed\tX\t-\n");
    };
    EXPECT_TRUE(rows("a\t65 °C\t10 min"));
    EXPECT_FALSE(rows("a\t65 °C\t50 min"));
    EXPECT_FALSE(rows("a\t59 °C\t10 min"));
    EXPECT_FALSE(rows("a\t150 °F\t10 min"));
    EXPECT_FALSE(rows("a\t65 °C\t-"));
}

TEST(SafetyTables, NamesRoundTrip)
{
    for (const FoodClass food : allFoodClasses) {
        EXPECT_EQ(findFoodClass(nameOf(food)), food);
    }
    for (const RiskFact fact : allRiskFacts) {
        EXPECT_EQ(findRiskFact(nameOf(fact)), fact);
    }
    for (const RiskGroup group : allRiskGroups) {
        EXPECT_EQ(findRiskGroup(nameOf(group)), group);
    }
    for (const CautionKind kind : allCautionKinds) {
        EXPECT_EQ(findCautionKind(nameOf(kind)), kind);
        EXPECT_EQ(cautionOf(kind).kind, kind);
        EXPECT_FALSE(cautionOf(kind).when.empty());
    }
    EXPECT_EQ(findFoodClass("moss"), std::nullopt);
}

TEST(SafetyTables, CookedFoodIsNotRaw)
{
    for (const FoodClass food : allFoodClasses) {
        EXPECT_FALSE(isRawAnimal(cooked(food))) << nameOf(food);
    }
    EXPECT_TRUE(isRawAnimal(FoodClass::RawPoultry));
    EXPECT_FALSE(isRawAnimal(FoodClass::ColdSmokedFish)); // eaten as it is
    EXPECT_TRUE(isTimeTemperatureControlled(FoodClass::CutProduce));
    EXPECT_FALSE(isTimeTemperatureControlled(FoodClass::DryGoods));
}

TEST(Cautions, FollowFromWhatAStepDoes)
{
    using enum CautionKind;
    EXPECT_TRUE(cautionsFor({}).empty());
    StepHeat oil;
    oil.oil = 120;
    EXPECT_TRUE(cautionsFor(oil).empty());
    oil.oil = 120.1;
    EXPECT_EQ(cautionsFor(oil), std::vector{HotOil});
    oil.poursAlcohol = true;
    EXPECT_EQ(cautionsFor(oil), (std::vector{HotOil, AlcoholFlame}));
    StepHeat wine;
    wine.poursAlcohol = true; // into a cold bowl
    EXPECT_TRUE(cautionsFor(wine).empty());
    wine.isOnBurner = true;
    EXPECT_EQ(cautionsFor(wine), std::vector{AlcoholFlame});
    StepHeat table;
    table.servesAlcohol = true;
    table.servesRawEgg = true;
    EXPECT_EQ(cautionsFor(table), (std::vector{Alcohol, RawEgg}));
    StepHeat roast;
    roast.liftsFromOven = true;
    roast.handlesRawAnimal = true;
    EXPECT_EQ(cautionsFor(roast), (std::vector{HotOven, RawMeat}));
    StepHeat caramel;
    caramel.sugar = 165;
    caramel.hasBlade = true;
    EXPECT_EQ(cautionsFor(caramel), (std::vector{Caramel, SharpBlade}));
    StepHeat pressure;
    pressure.isUnderPressure = true;
    EXPECT_EQ(cautionsFor(pressure), (std::vector{Pressure, Steam}));
    StepHeat torch;
    torch.hasFlame = true;
    EXPECT_EQ(cautionsFor(torch), std::vector{Torch});
    EXPECT_FALSE(readCautions("kind\twhen\tsays\tsource\nhot oil\ta\tb\tc\n"));
}

} // namespace
} // namespace suppertide::safety
