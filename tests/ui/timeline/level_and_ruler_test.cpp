// What rises and falls in a lane, and the marks of the clock above it.
#include <gtest/gtest.h>

#include "tests/support/timeline/example_scene.h"
#include "ui/timeline/hands_load.h"
#include "ui/timeline/heat_path.h"
#include "ui/timeline/ruler_marks.h"
#include "ui/timeline/time_words.h"

namespace suppertide::ui {
namespace {

// 150°        ______
//            /      \ .
// 20°  _____/        \____
//      0   100 130  200  280
OvenLane oven()
{
    OvenLane lane;
    lane.curve = {{planTime(0), 20_degC},
                  {planTime(100), 20_degC},
                  {planTime(130), 150_degC},
                  {planTime(200), 150_degC},
                  {planTime(280), 20_degC}};
    lane.settings = {{interval(100, 200), 150_degC, false}};
    return lane;
}

TEST(HeatPath, RunsThroughAllKnotsAndSaysWhereTheOvenIsOn)
{
    const TimeAxis axis{interval(0, 300), 60, {}, 28};
    const auto path = heatPath(oven().curve, oven().settings, axis);
    ASSERT_EQ(path.size(), 5U);
    EXPECT_EQ(path[2], (HeatPoint{130, 1500, true}));
    EXPECT_FALSE(path[0].isOn);
    EXPECT_TRUE(path[1].isOn);
    EXPECT_FALSE(path[3].isOn); // from 200 on
}

TEST(HeatPath, HasACornerWhereAFoldBeginsAndEnds)
{
    const TimeAxis axis{interval(0, 300), 60, std::vector{interval(140, 180)}, 28};
    const auto path = heatPath(oven().curve, oven().settings, axis);
    EXPECT_EQ(path.size(), 7U);
    const auto corner = std::find_if(path.begin(), path.end(), [&](const HeatPoint& point) {
        return point.x == axis.xOf(planTime(180));
    });
    ASSERT_NE(corner, path.end());
    EXPECT_DOUBLE_EQ(corner->tenths, 1500);
}

TEST(HeatPath, IsEmptyForAnOvenThatIsNeverOn)
{
    EXPECT_TRUE(heatPath({}, {}, TimeAxis{interval(0, 60), 60, {}, 28}).empty());
}

TEST(Holds, BeginWhereTheSettingIsReached)
{
    const auto holds = holdsOf(oven());
    ASSERT_EQ(holds.size(), 1U);
    EXPECT_EQ(holds[0].from, planTime(130));
    EXPECT_EQ(holds[0].temperature, 150_degC);
    EXPECT_TRUE(holds[0].isFromRise);
}

TEST(Holds, AreNoneForASettingThatIsNeverReached)
{
    OvenLane lane = oven();
    lane.settings.front().set = 220_degC;
    EXPECT_TRUE(holdsOf(lane).empty());
}

TEST(HandsLoad, AddsUpAllCooksAndTakesTheMostOfEachStep)
{
    Scene scene;
    scene.horizon = interval(0, 60);
    scene.lanes = {{"a", "Maren", "", CookLane{}, 0, std::nullopt},
                   {"b", "Jory", "", CookLane{}, 1, std::nullopt},
                   {"m", "Mixer", "", ApplianceLane{}, 2, std::nullopt}};
    SceneBlock stir;
    stir.id = "stir";
    stir.start = planTime(10);
    stir.likely = 10_min;
    stir.attention = Attention::percent(80);
    stir.places = {{"a", 0, 1}, {"m", 0, 1}};
    SceneBlock carry = stir;
    carry.id = "carry";
    carry.start = planTime(18);
    carry.attention = Attention::percent(100);
    carry.places = {{"a", 0, 1}, {"b", 0, 1}};
    scene.blocks = {stir, carry};
    EXPECT_EQ(handsLoad(scene, 15_min), (std::vector{80, 280, 0, 0}));
    scene.blocks.back().ghost = Ghost{};
    EXPECT_EQ(handsLoad(scene, 15_min), (std::vector{80, 80, 0, 0}));
}

PlanCalendar london(const char* midnight)
{
    return {parseInstant(midnight).value(), TimeZone::find("Europe/London").value()};
}

TEST(RulerMarks, StandEveryQuarterHourWithANumeralAtTheFullOne)
{
    const PlanCalendar calendar = london("2027-06-18T23:00Z"); // midnight of 19 June
    const TimeAxis axis{interval(0, 1440), 86, {}, 28};
    const auto marks = rulerMarks(calendar, axis, interval(600, 661), 20);
    ASSERT_EQ(marks.size(), 5U);
    EXPECT_EQ(marks[0].hour, 10);
    EXPECT_TRUE(marks[0].hasNumeral);
    EXPECT_EQ(marks[0].rank, MarkRank::Hour);
    EXPECT_EQ(marks[1].rank, MarkRank::Finer);
    EXPECT_EQ(marks[2].rank, MarkRank::Half);
    EXPECT_FALSE(marks[2].hasNumeral);
    EXPECT_EQ(marks[4].hour, 11);
}

TEST(RulerMarks, StandEveryThreeHoursInTheDaysZoomAndEveryFiveMinutesInTheFinest)
{
    const PlanCalendar calendar = london("2027-06-18T23:00Z");
    const TimeAxis day{interval(0, 1440), 28, {}, 20};
    const auto hours = rulerMarks(calendar, day, interval(0, 1440), 10);
    for (const RulerMark& mark : hours) {
        EXPECT_EQ(mark.hour % 3, 0);
    }
    EXPECT_EQ(hours.size(), 9U);
    const TimeAxis fine{interval(0, 1440), 280, {}, 28};
    EXPECT_EQ(rulerMarks(calendar, fine, interval(600, 660), 10).size(), 13U);
}

// In Britain the clocks go back at 02:00 on the last Sunday of October, the 31st in 2027
// (Summer Time Order 2002, S.I. 2002/262): 01:00 comes twice.
TEST(RulerMarks, SayAnHourTwiceWhenTheClocksGoBack)
{
    const PlanCalendar calendar = london("2027-10-30T23:00Z"); // midnight of 31 October
    const TimeAxis axis{interval(0, 1500), 86, {}, 28};
    std::vector<int> hours;
    for (const RulerMark& mark : rulerMarks(calendar, axis, interval(0, 240), 10)) {
        if (mark.rank == MarkRank::Hour) {
            hours.push_back(mark.hour);
        }
    }
    EXPECT_EQ(hours, (std::vector{0, 1, 1, 2, 3}));
}

TEST(RulerMarks, AreNoneInsideAFold)
{
    const PlanCalendar calendar = london("2027-06-18T23:00Z");
    const TimeAxis axis{interval(0, 1440), 86, std::vector{interval(0, 540)}, 28};
    for (const RulerMark& mark : rulerMarks(calendar, axis, interval(0, 1440), 20)) {
        EXPECT_GE(mark.time, planTime(540));
    }
}

TEST(TimeWords, AreThoseOfTheDesign)
{
    EXPECT_EQ(clockText(london("2027-06-18T23:00Z"), planTime(1170)), "19:30");
    EXPECT_EQ(lengthText(50_min), "50 min");
    EXPECT_EQ(lengthText(240_min), "4 h");
    EXPECT_EQ(lengthText(215_min), "3 h 35");
    EXPECT_EQ(lengthText(65_min), "1 h 05");
    EXPECT_EQ(roughLengthText(690_min), "11½ h");
    EXPECT_EQ(roughLengthText(240_min), "4 h");
    EXPECT_EQ(roughLengthText(50_min), "50 min");
    EXPECT_EQ(countdownText(105_min), "−1:45");
}

} // namespace
} // namespace suppertide::ui
