#include <gtest/gtest.h>

#include "core/library/redate.h"

namespace suppertide {
namespace {

OccasionRecord supper()
{
    OccasionRecord record;
    record.occasion.id = OccasionId{"supper"};
    record.occasion.name = "Supper";
    record.occasion.zone = "Europe/London";
    Course soup;
    soup.id = CourseId{"soup"};
    soup.serving = {{2027, 6, 19}, {19, 30}};
    record.occasion.courses.push_back(soup);
    record.occasion.houseJobs.push_back({HouseJobId{"table"},
                                         "Lay the table",
                                         20_min,
                                         handsOn,
                                         {{2027, 6, 18}, {9, 0}},
                                         {{2027, 6, 19}, {18, 0}},
                                         {}});
    record.occasion.hours[CookId{"maren"}].push_back({{2027, 6, 19}, {}});
    record.layout.starts["soup/ladle"] = *parseInstant("2027-06-19T18:15Z");
    return record;
}

TEST(Redate, MovesEverythingByWholeDays)
{
    const auto moved = redated(supper(), 7);
    ASSERT_TRUE(moved);
    EXPECT_EQ(toIso(moved->occasion.courses[0].serving), "2027-06-26T19:30");
    EXPECT_EQ(toIso(moved->occasion.houseJobs[0].earliest), "2027-06-25T09:00");
    EXPECT_EQ(toIso(moved->occasion.hours.at(CookId{"maren"})[0].date), "2027-06-26");
    EXPECT_EQ(toIso(moved->layout.starts.at("soup/ladle")), "2027-06-26T18:15Z");
}

TEST(Redate, KeepsTheClockTimeAcrossAChangeOfClocks)
{
    // Summer time ends on 31 October 2027 in London: 19:15 is then 19:15 UTC instead of 18:15.
    const auto moved = redated(supper(), daysBetween({2027, 6, 19}, {2027, 11, 6}));
    ASSERT_TRUE(moved);
    EXPECT_EQ(toIso(moved->layout.starts.at("soup/ladle")), "2027-11-06T19:15Z");
}

TEST(Redate, RefusesAZoneThatIsNotThere)
{
    OccasionRecord record = supper();
    record.occasion.zone = "Nowhere/Atall";
    EXPECT_FALSE(redated(record, 1));
}

TEST(Redate, FindsTheSameWeekdayOfTheSameMonth)
{
    const CivilDate thirdSaturday{2027, 6, 19};
    EXPECT_EQ(nextOfItsKind(thirdSaturday, {2026, 11, 25}), thirdSaturday);
    EXPECT_EQ(nextOfItsKind(thirdSaturday, {2027, 6, 19}), thirdSaturday);
    // The day after, it is the third Saturday of June 2028.
    EXPECT_EQ(nextOfItsKind(thirdSaturday, {2027, 6, 20}), (CivilDate{2028, 6, 17}));
}

TEST(Redate, TakesTheLastWhereAMonthHasNoFifth)
{
    // 31 January 2027 is a fifth Sunday; January 2028 has five too, January 2029 only four.
    EXPECT_EQ(nextOfItsKind({2027, 1, 31}, {2028, 2, 1}), (CivilDate{2029, 1, 28}));
}

} // namespace
} // namespace suppertide
