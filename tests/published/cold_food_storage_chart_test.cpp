// foodsafety.gov, Cold Food Storage Chart (fridge at 40 °F or below); USDA's older edition where it
// is stricter. Exact figures.
#include <gtest/gtest.h>

#include "core/safety/storage_days.h"
#include "tests/core/safety/history_builder.h"
#include "tests/published/deviation.h"

namespace suppertide::safety {
namespace {

constexpr double day = 1440;

TEST(ColdFoodStorageChart, IsReproducedRowByRow)
{
    struct Row
    {
        const char* id;
        double least;
        double most;
    };
    constexpr Row rows[] = {
        {"raw_poultry", 1, 2},      {"raw_mince", 1, 2},       {"raw_meat", 3, 5},
        {"fresh_ham_cooked", 3, 4}, {"dry_cured_ham", 60, 90}, {"fatty_fish", 1, 3},
        {"lean_fish", 1, 2},        {"crab_lobster", 2, 4},    {"crab_lobster_live", 1, 1},
        {"cooked_meat", 3, 4},      {"soup_stew", 3, 4},       {"gravy_broth", 1, 2},
        {"mixed_salad", 3, 4},      {"shell_egg", 21, 35},     {"egg_parts", 2, 4},
        {"hard_egg", 7, 7},         {"egg_dish", 3, 4},        {"custard", 3, 4},
        {"pasteurised_egg", 3, 3},  {"bacon", 7, 7},           {"cut_fruit", 3, 4},
        {"cooked_vegetable", 3, 4}, {"raw_egg_dessert", 2, 2}};
    suppertide::test::Deviation worst{"foodsafety.gov chart: fridge, days"};
    for (const Row& row : rows) {
        const StorageRow* found = findStorageRow(row.id);
        ASSERT_NE(found, nullptr) << row.id;
        ASSERT_TRUE(found->fridge) << row.id;
        worst.near(static_cast<double>(found->fridge->least.count()) / day, row.least, 1e-9,
                   row.id);
        worst.near(static_cast<double>(found->fridge->most.count()) / day, row.most, 1e-9, row.id);
        EXPECT_FALSE(found->source.empty()) << row.id;
    }
}

TEST(ColdFoodStorageChart, FreezerRowsAreReproduced)
{
    struct Row
    {
        const char* id;
        int least;
        int most;
    };
    // Months of 30 days.
    constexpr Row rows[] = {{"raw_poultry", 9, 12}, {"raw_mince", 3, 4},   {"raw_meat", 4, 12},
                            {"fatty_fish", 2, 3},   {"lean_fish", 4, 8},   {"cooked_meat", 2, 6},
                            {"soup_stew", 2, 3},    {"egg_parts", 12, 12}, {"bacon", 1, 1}};
    for (const Row& row : rows) {
        const StorageRow* found = findStorageRow(row.id);
        ASSERT_TRUE(found != nullptr && found->freezer) << row.id;
        EXPECT_EQ(found->freezer->least, Minutes{row.least * 30 * 1440}) << row.id;
        EXPECT_EQ(found->freezer->most, Minutes{row.most * 30 * 1440}) << row.id;
    }
}

TEST(ColdFoodStorageChart, ASetCreamKeptTooLongIsFound)
{
    const auto cream = [](std::int64_t minutes) {
        return test::HistoryBuilder(FoodClass::GelatineCream)
            .stay(Place::Fridge, minutes, 4)
            .judged(RuleBook::UsHome);
    };
    EXPECT_EQ(test::rulesOf(cream(3 * 1440)), std::vector<std::string>{});
    EXPECT_EQ(cream(3 * 1440 + 1).at(0).weight, Weight::Caution);
    EXPECT_EQ(cream(4 * 1440).at(0).weight, Weight::Caution);
    const Finding late = cream(4 * 1440 + 1).at(0);
    EXPECT_EQ(late.rule, "storage/set_cream");
    EXPECT_EQ(late.weight, Weight::Unsafe);
    EXPECT_EQ(late.limit, 4);
    EXPECT_EQ(late.remedies.front(), Remedy::DayLater);
}

} // namespace
} // namespace suppertide::safety
