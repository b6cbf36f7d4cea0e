// Zones off the beaten track, by the rules of the IANA time zone data base (files "northamerica",
// "southamerica", "asia", "australasia", release 2023 and later for these years).
#include <gtest/gtest.h>

#include "core/base/civil_time.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {
namespace {

TimeZone zone(const char* name)
{
    return *TimeZone::find(name);
}

TEST(TimeZone, BeginsADayThatHasNoMidnightWithItsFirstMinute)
{
    // Chile goes from 24:00 of the first Saturday on to 01:00 on Sunday 8 September 2024.
    const TimeZone santiago = zone("America/Santiago");
    EXPECT_EQ(santiago.kindOf({{2024, 9, 8}, {0, 0}}), ClockTimeKind::Skipped);
    EXPECT_EQ(santiago.civil(santiago.instant({{2024, 9, 8}, {0, 0}})),
              (CivilTime{{2024, 9, 8}, {1, 0}}));
    EXPECT_EQ(santiago.lengthOfDay({2024, 9, 8}), 23_h);
}

TEST(TimeZone, KnowsChangesOfHalfAnHour)
{
    // Lord Howe Island keeps half an hour of summer time: back at 02:00 on the first Sunday in
    // April, on at 02:00 on the first Sunday in October.
    const TimeZone island = zone("Australia/Lord_Howe");
    EXPECT_EQ(island.lengthOfDay({2025, 4, 6}), 24_h + 30_min);
    EXPECT_EQ(island.lengthOfDay({2025, 10, 5}), 24_h - 30_min);
}

TEST(TimeZone, KnowsZonesOfQuartersAndWithoutSummerTime)
{
    // Nepal: UTC+05:45, India: UTC+05:30, Phoenix: UTC−07:00 all the year.
    const Instant noon = TimeZone::utc().instant({{2027, 6, 19}, {12, 0}});
    EXPECT_EQ(toIso(zone("Asia/Kathmandu").civil(noon)), "2027-06-19T17:45");
    EXPECT_EQ(toIso(zone("Asia/Kolkata").civil(noon)), "2027-06-19T17:30");
    EXPECT_EQ(toIso(zone("America/Phoenix").civil(noon)), "2027-06-19T05:00");
    EXPECT_EQ(zone("America/Phoenix").lengthOfDay({2027, 3, 14}), 24_h);
}

TEST(TimeZone, GivesBackTheTimeThatItWasGivenUnlessItIsSkipped)
{
    test::forEachSeed(500, [](test::Random& random) {
        static const char* const names[] = {"Europe/London", "America/New_York", "America/Santiago",
                                            "Australia/Lord_Howe", "Etc/UTC"};
        const TimeZone there = zone(names[random.between(0, 4)]);
        const CivilTime time{
            addDays({2027, 1, 1}, static_cast<int>(random.between(0, 364))),
            {static_cast<int>(random.between(0, 23)), static_cast<int>(random.between(0, 59))}};
        const CivilTime back = there.civil(there.instant(time));
        if (there.kindOf(time) == ClockTimeKind::Skipped) {
            EXPECT_GT(back, time);
        } else {
            EXPECT_EQ(back, time);
        }
    });
}

TEST(CivilDate, CountsDaysBothWays)
{
    test::forEachSeed(300, [](test::Random& random) {
        const CivilDate date = addDays({2000, 1, 1}, static_cast<int>(random.between(0, 40'000)));
        const int days = static_cast<int>(random.between(-1000, 1000));
        EXPECT_TRUE(isValid(date));
        EXPECT_EQ(daysBetween(date, addDays(date, days)), days);
        EXPECT_EQ(*parseDate(toIso(date)), date);
    });
}

TEST(CivilDate, KnowsLeapYears)
{
    // Every fourth year, but of the full centuries only those divisible by 400 (Inter gravissimas,
    // 1582).
    EXPECT_TRUE(isValid({2028, 2, 29}));
    EXPECT_TRUE(isValid({2000, 2, 29}));
    EXPECT_FALSE(isValid({2100, 2, 29}));
    EXPECT_EQ(addDays({2100, 2, 28}, 1), (CivilDate{2100, 3, 1}));
}

} // namespace
} // namespace suppertide
