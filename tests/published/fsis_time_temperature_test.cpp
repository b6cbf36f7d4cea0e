// USDA FSIS: Appendix A (1999) and Cooking Guideline for Meat and Poultry Products (2021), times at
// the core. Rows are exact; a figure between rows is interpolated in the logarithm of time.
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "core/safety/time_temperature.h"
#include "tests/core/safety/history_builder.h"
#include "tests/published/deviation.h"

namespace suppertide::safety {
namespace {

using suppertide::test::Deviation;
using test::fahrenheit;

double minutesIn(const char* table, double degrees)
{
    return findTimeTemperatureTable(table)->minutesAt(fahrenheit(degrees)).value();
}

TEST(FsisTimeTemperature, MeatIsReproducedRowByRow)
{
    constexpr std::array<std::array<double, 3>, 10> rows{{{130, 112 * 60, 121 * 60},
                                                          {131, 89 * 60, 97 * 60},
                                                          {135, 36 * 60, 37 * 60},
                                                          {136, 28 * 60, 32 * 60},
                                                          {140, 12 * 60, 12 * 60},
                                                          {145, 4 * 60, 4 * 60},
                                                          {147, 134, 144},
                                                          {150, 67, 72},
                                                          {155, 22, 23},
                                                          {158, 0, 0}}};
    Deviation worst{"FSIS Appendix A: meat, s"};
    for (const auto& [degrees, log65, log70] : rows) {
        worst.near(minutesIn("fsis_meat_65", degrees) * 60, log65, 1e-6,
                   "6.5 log " + std::to_string(degrees));
        worst.near(minutesIn("fsis_meat_70", degrees) * 60, log70, 1e-6,
                   "7 log " + std::to_string(degrees));
    }
    EXPECT_EQ(minutesIn("fsis_meat_65", 200), 0);
}

TEST(FsisTimeTemperature, PoultryIsReproducedRowByRow)
{
    constexpr std::array<std::array<double, 4>, 6> rows{{{136, 63.3, 81.4, 64},
                                                         {140, 25.2, 35, 28.1},
                                                         {145, 8.4, 13, 10.5},
                                                         {150, 2.7, 4.2, 3.8},
                                                         {160, 13.7 / 60, 16.9 / 60, 25.6 / 60},
                                                         {165, 0, 0, 0}}};
    Deviation worst{"FSIS 2021: poultry, min"};
    for (const auto& [degrees, chicken1, chicken12, turkey] : rows) {
        worst.near(minutesIn("fsis_chicken_1", degrees), chicken1, 1e-9, "chicken 1 %");
        worst.near(minutesIn("fsis_chicken_12", degrees), chicken12, 1e-9, "chicken 12 %");
        worst.near(minutesIn("fsis_turkey_1", degrees), turkey, 1e-9, "turkey 1 %");
        // Of birds of unknown kind or fat the longest counts.
        EXPECT_EQ(minutesIn("fsis_poultry", degrees), std::max({chicken1, chicken12, turkey}));
    }
}

TEST(FsisTimeTemperature, NothingCountsBelowTheLowestRow)
{
    EXPECT_EQ(findTimeTemperatureTable("fsis_meat_65")->minutesAt(fahrenheit(129.99)),
              std::nullopt);
    EXPECT_EQ(findTimeTemperatureTable("fsis_poultry")->minutesAt(fahrenheit(135.99)),
              std::nullopt);
    const CoreReading low[] = {{0, fahrenheit(129)}, {100'000, fahrenheit(129.9)}};
    EXPECT_EQ(shareGathered(*findTimeTemperatureTable("fsis_meat_65"), low), 0);
}

/// °F for a tenfold change of time between two rows.
double zBetween(const char* table, double low, double high)
{
    return (high - low) / std::log10(minutesIn(table, low) / minutesIn(table, high));
}

TEST(FsisTimeTemperature, SlopesAreThoseOfSalmonella)
{
    // z as computed from the same rows, to a decimal.
    Deviation worst{"FSIS: slopes z, °F"};
    worst.near(zBetween("fsis_meat_65", 130, 145), 10.4, 0.05, "meat 130–145 °F");
    worst.near(zBetween("fsis_chicken_1", 136, 160), 9.8, 0.05, "chicken 1 % 136–160 °F");
    worst.near(zBetween("fsis_turkey_1", 136, 160), 11.0, 0.05, "turkey 1 % 136–160 °F");
}

TEST(FsisTimeTemperature, BetweenRowsTheLogarithmIsLinear)
{
    EXPECT_NEAR(minutesIn("fsis_meat_65", 142.5), std::sqrt(12.0 * 4.0), 1e-9);
    // Above the last row with a time, that row's time: never shorter than printed.
    EXPECT_NEAR(minutesIn("fsis_meat_65", 157.9) * 60, 22, 1e-6);
}

TEST(FsisTimeTemperature, HeatingUpBetween50And130FahrenheitTakesSixHours)
{
    const Rule* rule = findRule("us_coming_up");
    ASSERT_NE(rule, nullptr);
    EXPECT_EQ(rule->temperature->value, 50);
    EXPECT_EQ(rule->upper->value, 130);
    const auto heated = [](std::int64_t minutes) {
        return test::HistoryBuilder(FoodClass::RawMeat)
            .stay(Place::Oven, minutes, fahrenheit(50), fahrenheit(130))
            .stay(Place::Oven, 60, fahrenheit(130), fahrenheit(160))
            .judged(RuleBook::UsTrade);
    };
    EXPECT_FALSE(test::breaks(heated(360), "us_coming_up"));
    EXPECT_TRUE(test::breaks(heated(361), "us_coming_up"));
}

} // namespace
} // namespace suppertide::safety
