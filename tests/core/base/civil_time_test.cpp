// Local time against published rules for summer time.
//  - European Union: Directive 2000/84/EC, articles 2 and 3: from the last Sunday in March to the
//  last Sunday in
//    October, both at 01:00 UTC. The United Kingdom keeps the same days (Summer Time Order 2002).
//  - United States: Energy Policy Act of 2005, section 110: from the second Sunday in March to the
//  first Sunday in
//    November, at 02:00 local time.
#include <gtest/gtest.h>

#include "core/base/civil_time.h"

namespace suppertide {
namespace {

TimeZone zone(const char* name)
{
    return *TimeZone::find(name);
}

/// The n-th Sunday (from 1) of a month; n = 0: the last.
CivilDate sunday(int year, unsigned month, int n)
{
    CivilDate last{};
    int seen = 0;
    for (CivilDate day{year, month, 1}; day.month == month; day = addDays(day, 1)) {
        if (weekdayOf(day) == Weekday::Sunday) {
            last = day;
            if (++seen == n) {
                return day;
            }
        }
    }
    return last;
}

TEST(CivilTime, FollowsTheEuropeanRuleFor2007To2035)
{
    for (int year = 2007; year <= 2035; ++year) {
        const CivilDate march = sunday(year, 3, 0);
        const CivilDate october = sunday(year, 10, 0);
        // London stands at UTC, Berlin one hour ahead, before 01:00 UTC of the March Sunday.
        const Instant spring = TimeZone::utc().instant({march, {1, 0}});
        EXPECT_EQ(zone("Europe/London").civil(spring - 1_min), (CivilTime{march, {0, 59}}));
        EXPECT_EQ(zone("Europe/London").civil(spring), (CivilTime{march, {2, 0}}));
        EXPECT_EQ(zone("Europe/Berlin").civil(spring - 1_min), (CivilTime{march, {1, 59}}));
        EXPECT_EQ(zone("Europe/Berlin").civil(spring), (CivilTime{march, {3, 0}}));
        const Instant autumn = TimeZone::utc().instant({october, {1, 0}});
        EXPECT_EQ(zone("Europe/London").civil(autumn - 1_min), (CivilTime{october, {1, 59}}));
        EXPECT_EQ(zone("Europe/London").civil(autumn), (CivilTime{october, {1, 0}}));
        EXPECT_EQ(zone("Europe/Berlin").lengthOfDay(march), 23_h);
        EXPECT_EQ(zone("Europe/Berlin").lengthOfDay(october), 25_h);
        EXPECT_EQ(zone("Europe/Berlin").lengthOfDay(addDays(march, 1)), 24_h);
    }
}

TEST(CivilTime, FollowsTheAmericanRuleFor2007To2035)
{
    for (int year = 2007; year <= 2035; ++year) {
        const CivilDate march = sunday(year, 3, 2);
        const CivilDate november = sunday(year, 11, 1);
        const TimeZone newYork = zone("America/New_York");
        EXPECT_EQ(newYork.kindOf({march, {1, 59}}), ClockTimeKind::Unique);
        EXPECT_EQ(newYork.kindOf({march, {2, 0}}), ClockTimeKind::Skipped);
        EXPECT_EQ(newYork.kindOf({march, {2, 59}}), ClockTimeKind::Skipped);
        EXPECT_EQ(newYork.kindOf({march, {3, 0}}), ClockTimeKind::Unique);
        EXPECT_EQ(newYork.kindOf({november, {0, 59}}), ClockTimeKind::Unique);
        EXPECT_EQ(newYork.kindOf({november, {1, 0}}), ClockTimeKind::Repeated);
        EXPECT_EQ(newYork.kindOf({november, {1, 59}}), ClockTimeKind::Repeated);
        EXPECT_EQ(newYork.kindOf({november, {2, 0}}), ClockTimeKind::Unique);
        EXPECT_EQ(newYork.lengthOfDay(march), 23_h);
        EXPECT_EQ(newYork.lengthOfDay(november), 25_h);
    }
}

TEST(CivilTime, TakesTheJumpForASkippedAndTheFirstForARepeatedTime)
{
    const TimeZone berlin = zone("Europe/Berlin");
    EXPECT_EQ(toIso(berlin.instant({{2027, 3, 28}, {2, 30}})), "2027-03-28T01:00Z");
    EXPECT_EQ(toIso(berlin.instant({{2027, 10, 31}, {2, 30}})), "2027-10-31T00:30Z");
}

TEST(CivilTime, ReadsThePlanAcrossTheNightOfAChange)
{
    // Midnight of the October Sunday; 25 plan hours later it is midnight again.
    const PlanCalendar calendar{zone("Europe/London").instant({{2027, 10, 31}, {0, 0}}),
                                zone("Europe/London")};
    EXPECT_EQ(toIso(calendar.civil(planTime(90))), "2027-10-31T01:30");
    EXPECT_EQ(toIso(calendar.civil(planTime(150))), "2027-10-31T01:30");
    EXPECT_EQ(toIso(calendar.civil(planTime(25 * 60))), "2027-11-01T00:00");
    EXPECT_EQ(calendar.planTime(CivilTime{{2027, 10, 31}, {12, 0}}), planTime(13 * 60));
}

TEST(CivilTime, KnowsTheWeekday)
{
    EXPECT_EQ(weekdayOf({2027, 6, 19}), Weekday::Saturday);
    EXPECT_EQ(weekdayOf({2000, 1, 1}), Weekday::Saturday);
    EXPECT_EQ(daysBetween({2027, 6, 16}, {2027, 6, 19}), 3);
}

TEST(CivilTime, RefusesWhatIsNoDateWithASentence)
{
    for (const char* text :
         {"", "2027-6-19", "19.6.2027", "2027-13-01", "2027-02-29", "2027-06-1x"}) {
        const auto date = parseDate(text);
        ASSERT_FALSE(date) << text;
        EXPECT_NE(date.error().forCook.find(text), std::string::npos);
    }
    for (const char* text : {"", "24:00", "7:30", "19:60", "-1:30", "+9:30"}) {
        EXPECT_FALSE(parseClock(text)) << text;
    }
    EXPECT_FALSE(parseCivil("2027-06-19 19:30"));
    EXPECT_FALSE(parseInstant("2027-06-19T19:30"));
    EXPECT_FALSE(TimeZone::find("Atlantis/Capital"));
}

TEST(CivilTime, ReadsWhatItWrites)
{
    EXPECT_EQ(toIso(*parseDate("2028-02-29")), "2028-02-29");
    EXPECT_EQ(toIso(*parseClock("07:05")), "07:05");
    EXPECT_EQ(toIso(*parseInstant("2027-06-19T18:30Z")), "2027-06-19T18:30Z");
}

} // namespace
} // namespace suppertide
