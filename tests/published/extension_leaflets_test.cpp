// University of Idaho Extension (garlic and herbs in oil), University of Missouri Extension
// (pressure canning), foodsafety.gov (guests at higher risk), D. E. Baldwin (low baths). Exact
// figures.
#include <gtest/gtest.h>

#include "core/safety/judge_history.h"
#include "core/safety/storage_days.h"
#include "tests/core/safety/history_builder.h"

namespace suppertide::safety {
namespace {

using test::breaks;
using test::fahrenheit;
using test::find;
using test::HistoryBuilder;
using test::rulesOf;

TEST(ExtensionLeaflets, GarlicInOilKeepsFourDaysInTheFridgeAndNotOnTheShelf)
{
    const auto kept = [](std::int64_t shelf, std::int64_t fridge) {
        return HistoryBuilder(FoodClass::GarlicInOil)
            .stay(Place::Counter, shelf, 20)
            .stay(Place::Fridge, 60, 20, 4)
            .stay(Place::Fridge, fridge - 60, 4)
            .judged(RuleBook::UsHome);
    };
    EXPECT_EQ(rulesOf(kept(120, 4 * 1440)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(kept(120, 4 * 1440 + 1)), std::vector<std::string>{"storage/garlic_oil"});
    const auto shelf = kept(121, 1440);
    EXPECT_EQ(rulesOf(shelf), std::vector<std::string>{"garlic_oil_place"});
    EXPECT_EQ(shelf[0].remedies, (std::vector{Remedy::Fridge, Remedy::Freeze}));
}

TEST(ExtensionLeaflets, LowAcidCanningIsRefusedWhateverTheBook)
{
    for (const RuleBook book : allRuleBooks) {
        const auto canned =
            HistoryBuilder(FoodClass::LowAcidPreserve).stay(Place::Hob, 60, 99).judged(book);
        ASSERT_TRUE(breaks(canned, "canning"));
        EXPECT_EQ(find(canned, "canning")->limit, 240);
        EXPECT_EQ(find(canned, "canning")->weight, Weight::Unsafe);
    }
}

TEST(ExtensionLeaflets, ConfitKeepsAsCookedFood)
{
    EXPECT_EQ(findStorageRow("confit")->fridge, findStorageRow("cooked_meat")->fridge);
}

TEST(ExtensionLeaflets, RawEggIsForNobodyAtHigherRiskUnlessPasteurisedOrHeatedTo160)
{
    const auto mousse = [](std::vector<RiskFact> facts, double core, RiskGroup group) {
        return HistoryBuilder(FoodClass::RawEggDessert, std::move(facts))
            .stay(Place::Hob, 10, 20, fahrenheit(core))
            .judged(RuleBook::UsHome, {group});
    };
    for (const RiskGroup group : allRiskGroups) {
        EXPECT_TRUE(breaks(mousse({RiskFact::RawEgg}, 159, group), "raw_egg_risk"));
        EXPECT_FALSE(breaks(mousse({RiskFact::RawEgg}, 160, group), "raw_egg_risk"));
        EXPECT_FALSE(breaks(mousse({RiskFact::RawEgg, RiskFact::PasteurisedEgg}, 100, group),
                            "raw_egg_risk"));
    }
}

TEST(ExtensionLeaflets, GuestsAtHigherRiskEatNoRareMeatRawFishShellfishOrSuchCheese)
{
    const auto eaten = [](FoodClass food, RiskFact fact, std::vector<RiskGroup> guests) {
        return HistoryBuilder(food, {fact})
            .stay(Place::Fridge, 60, 3)
            .judged(RuleBook::UsHome, std::move(guests));
    };
    const std::vector<RiskGroup> risk{RiskGroup::Over65};
    EXPECT_TRUE(breaks(eaten(FoodClass::RawMeat, RiskFact::RareMeat, risk), "rare_meat_risk"));
    EXPECT_TRUE(breaks(eaten(FoodClass::RawMince, RiskFact::RareMeat, risk), "rare_meat_risk"));
    EXPECT_TRUE(breaks(eaten(FoodClass::FattyFish, RiskFact::RawFish, risk), "raw_fish_risk"));
    EXPECT_TRUE(
        breaks(eaten(FoodClass::Shellfish, RiskFact::RawShellfish, risk), "raw_shellfish_risk"));
    EXPECT_TRUE(breaks(eaten(FoodClass::ColdSmokedFish, RiskFact::ColdSmokedFish, risk),
                       "cold_smoked_fish_risk"));
    EXPECT_TRUE(breaks(eaten(FoodClass::Dairy, RiskFact::UnpasteurisedMilk, risk),
                       "unpasteurised_milk_risk"));
    EXPECT_EQ(rulesOf(eaten(FoodClass::Dairy, RiskFact::UnpasteurisedMilk, {})),
              std::vector<std::string>{});
    EXPECT_EQ(rulesOf(eaten(FoodClass::ColdSmokedFish, RiskFact::ColdSmokedFish, {})),
              std::vector<std::string>{});
}

TEST(ExtensionLeaflets, AWaterBathBelow130FahrenheitLastsFourHours)
{
    const auto bathed = [](std::int64_t minutes, double core) {
        return HistoryBuilder(FoodClass::CookedMeat)
            .stay(Place::WaterBath, minutes, fahrenheit(core))
            .judged(RuleBook::UsHome);
    };
    EXPECT_EQ(rulesOf(bathed(240, 129)), std::vector<std::string>{});
    EXPECT_EQ(rulesOf(bathed(241, 129)), std::vector<std::string>{"low_bath"});
    EXPECT_EQ(rulesOf(bathed(600, 130)), std::vector<std::string>{});
}

} // namespace
} // namespace suppertide::safety
