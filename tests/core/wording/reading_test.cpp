#include <gtest/gtest.h>

#include "core/wording/wording.h"

namespace suppertide {
namespace {

TEST(TemperatureText, ReadsInBothScales)
{
    EXPECT_EQ(temperatureText(150), "150 °C");
    EXPECT_EQ(temperatureText(-18), "−18 °C");
    EXPECT_EQ(temperatureText(0), "0 °C");
}

// By definition °F = 9/5 °C + 32; above boiling rounded to what a knob shows.
TEST(TemperatureText, RoundsFahrenheitToTheKnobOnlyWhereItIsAnOven)
{
    const ReadingStyle style{true, false};
    EXPECT_EQ(temperatureText(150, style), "300 °F");
    EXPECT_EQ(temperatureText(180, style), "355 °F");
    EXPECT_EQ(temperatureText(220, style), "430 °F");
    EXPECT_EQ(temperatureText(100, style), "212 °F");
    EXPECT_EQ(temperatureText(63, style), "145 °F");
    EXPECT_EQ(temperatureText(5, style), "41 °F");
    EXPECT_EQ(temperatureText(-18, style), "0 °F");
    EXPECT_EQ(temperatureText(-40, style), "−40 °F");
}

TEST(DurationText, ReadsMinutesHoursAndDays)
{
    EXPECT_EQ(durationText(Minutes{0}), "0 min");
    EXPECT_EQ(durationText(Minutes{45}), "45 min");
    EXPECT_EQ(durationText(Minutes{60}), "1 h");
    EXPECT_EQ(durationText(Minutes{65}), "1 h 05");
    EXPECT_EQ(durationText(Minutes{150}), "2 h 30");
    EXPECT_EQ(durationText(Minutes{24 * 60}), "1 day");
    EXPECT_EQ(durationText(Minutes{3 * 24 * 60}), "3 days");
    EXPECT_EQ(durationText(Minutes{26 * 60 + 5}), "1 day 2 h 05");
    EXPECT_EQ(durationText(Minutes{24 * 60 + 5}), "1 day 5 min");
    EXPECT_EQ(durationText(Minutes{-12}), "−12 min");
}

PlanCalendar london(const CivilTime& origin)
{
    const TimeZone zone = *TimeZone::find("Europe/London");
    return {zone.instant(origin), zone};
}

TEST(TimeText, NamesTheDayOnlyWhereItIsAnother)
{
    const PlanCalendar calendar = london({{2027, 6, 18}, {0, 0}});
    EXPECT_EQ(timeText(calendar, planTime(19 * 60 + 30)), "19:30");
    EXPECT_EQ(timeText(calendar, planTime(20 * 60), CivilDate{2027, 6, 18}), "20:00");
    EXPECT_EQ(timeText(calendar, planTime(20 * 60), CivilDate{2027, 6, 19}), "Fri 18 June 20:00");
}

TEST(TimeText, ReadsATwelveHourClock)
{
    const PlanCalendar calendar = london({{2027, 6, 18}, {0, 0}});
    const ReadingStyle style{false, true};
    EXPECT_EQ(timeText(calendar, planTime(0), {}, style), "12:00 am");
    EXPECT_EQ(timeText(calendar, planTime(12 * 60), {}, style), "12:00 pm");
    EXPECT_EQ(timeText(calendar, planTime(19 * 60 + 5), {}, style), "7:05 pm");
}

// British Summer Time ends on 31 October 2027 at 02:00 local time (last Sunday of October,
// The Summer Time Order 2002): the hour from 01:00 comes twice.
TEST(TimeText, IsRightOnTheNightOfAClockChange)
{
    const PlanCalendar calendar = london({{2027, 10, 31}, {0, 0}});
    EXPECT_EQ(timeText(calendar, planTime(90)), "01:30");
    EXPECT_EQ(timeText(calendar, planTime(150)), "01:30");
    EXPECT_EQ(timeText(calendar, planTime(210)), "02:30");
}

TEST(DayText, NamesWeekdayDayAndMonth)
{
    EXPECT_EQ(dayText({2027, 6, 19}), "Saturday 19 June");
    EXPECT_EQ(dayText({2028, 2, 29}), "Tuesday 29 February");
}

} // namespace
} // namespace suppertide
