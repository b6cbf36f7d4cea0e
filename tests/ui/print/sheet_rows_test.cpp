#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/print/sheet_builder.h"
#include "ui/print/sheet_rows.h"

namespace suppertide::ui {
namespace {

using test::On;
using test::SheetBuilder;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

constexpr CivilDate day{2027, 6, 19};

On at(int hour, int minute = 0)
{
    return {day, hour, minute};
}

/// What a row holds, a line a part: "15:00-16:00 | a,b | c", "serving 1".
std::vector<std::string> outline(const PerHourPlan& plan, const SheetRow& row)
{
    const auto clock = [&](PlanTime time) {
        return toIso(plan.plan->formulation->calendar.civil(time).clock);
    };
    struct Name
    {
        std::string operator()(const SheetStep* step) const { return step->deed; }
        std::string operator()(const SheetNote* note) const { return note->text; }
        std::string operator()(const SheetFetch* fetch) const { return fetch->text; }
        std::string operator()(const SheetTable* /*table*/) const { return "table"; }
    };
    std::vector<std::string> lines;
    for (const RowPart& part : row.parts) {
        if (const auto* serving = std::get_if<const SheetServing*>(&part)) {
            lines.push_back("serving " + std::to_string((*serving)->number));
            continue;
        }
        const auto& stretch = std::get<Stretch>(part);
        std::string line = clock(stretch.when.start) + "-" + clock(stretch.when.end);
        for (const auto& column : stretch.columns) {
            line += " |";
            for (const SheetEntry& entry : column) {
                line += " " + std::visit(Name{}, entry);
            }
        }
        lines.push_back(line);
    }
    return lines;
}

SheetBuilder twoCooks()
{
    SheetBuilder sheet{day};
    sheet.cook("Maren");
    sheet.cook("Jory");
    return sheet;
}

TEST(SheetRows, CutAnHourWhereACourseIsServed)
{
    SheetBuilder sheet = twoCooks();
    sheet.step(at(19, 5), 10_min, handsOn, {"Maren"}, {}, {"before", "", {}});
    sheet.step(at(19, 30), 10_min, handsOn, {"Jory"}, {}, {"then", "", {}});
    sheet.serving(1, at(19, 30), "Serve soup", {});
    sheet.table(CookIndex{0}, at(19, 30), at(19, 50));
    const PerHourPlan plan = sheet.build();
    const auto rows = sheetRowsOf(plan, {0, 1});
    ASSERT_THAT(rows, SizeIs(1));
    EXPECT_THAT(outline(plan, rows[0]),
                ElementsAre("19:00-19:30 | before |", "serving 1", "19:30-20:00 | table | then"));
}

TEST(SheetRows, LeaveOutTheRestOfADaysLastHourAfterItsServing)
{
    SheetBuilder sheet = twoCooks();
    sheet.step(at(21, 5), 10_min, handsOn, {"Maren"}, {}, {"top", "", {}});
    sheet.serving(4, at(21, 20), "Serve pavlova", {});
    const PerHourPlan plan = sheet.build();
    const auto rows = sheetRowsOf(plan, {0, 1});
    ASSERT_THAT(rows, SizeIs(1));
    EXPECT_THAT(outline(plan, rows[0]), ElementsAre("21:00-21:20 | top |", "serving 4"));
}

TEST(SheetRows, ServeTwoCoursesOfOneMinuteUnderEachOther)
{
    SheetBuilder sheet = twoCooks();
    sheet.serving(1, at(20), "Serve soup", {});
    sheet.serving(2, at(20), "Serve bread", {});
    const PerHourPlan plan = sheet.build();
    const auto rows = sheetRowsOf(plan, {0, 1});
    ASSERT_THAT(rows, SizeIs(1));
    EXPECT_THAT(outline(plan, rows[0]), ElementsAre("serving 1", "serving 2"));
}

TEST(SheetRows, FoldHoursInWhichNothingHappens)
{
    SheetBuilder sheet = twoCooks();
    sheet.step(at(10), 10_min, handsOn, {"Maren"}, {}, {"a", "", {}});
    sheet.step(at(15), 10_min, handsOn, {"Maren"}, {}, {"b", "", {}});
    const PerHourPlan plan = sheet.build();
    const auto rows = sheetRowsOf(plan, {0, 1});
    ASSERT_THAT(rows, SizeIs(3));
    EXPECT_TRUE(rows[1].isFold);
    EXPECT_FALSE(rows[1].isBusy);
    EXPECT_THAT(outline(plan, rows[1]), ElementsAre("11:00-15:00 | |"));
}

TEST(SheetRows, CallAFoldBusyWhileAStepThatTakesAttentionRunsOn)
{
    SheetBuilder sheet = twoCooks();
    sheet.step(at(10, 30), 60_min, keepAnEye, {"Maren"}, {}, {"stock", "", {}});
    sheet.step(at(15), 10_min, handsOn, {"Jory"}, {}, {"b", "", {}});
    sheet.step(at(15), 10_min, handsOn, {"Maren"}, {}, {"c", "", {}});
    const PerHourPlan plan = sheet.build();
    EXPECT_TRUE(sheetRowsOf(plan, {0, 1}).at(1).isBusy);
    // Jory's own sheet begins at 15:00 and has no fold.
    EXPECT_THAT(sheetRowsOf(plan, {1}), SizeIs(1));
}

TEST(SheetRows, DoNotFoldTheNightBetweenTwoDays)
{
    SheetBuilder sheet = twoCooks();
    sheet.step(at(22), 10_min, handsOn, {"Maren"}, {}, {"a", "", {}});
    sheet.step({{2027, 6, 20}, 9, 0}, 10_min, handsOn, {"Maren"}, {}, {"b", "", {}});
    const PerHourPlan plan = sheet.build();
    const auto rows = sheetRowsOf(plan, {0, 1});
    ASSERT_THAT(rows, SizeIs(2));
    EXPECT_EQ(rows[0].day, 0U);
    EXPECT_EQ(rows[1].day, 1U);
}

TEST(SheetRows, PutAStepThatNamesNobodyWithTheDishesLastCook)
{
    SheetBuilder sheet = twoCooks();
    const DishId gratin = sheet.dish("gratin", "Gratin", 1);
    sheet.step(at(10), 10_min, handsOn, {"Jory"}, gratin, {"slice", "", {}});
    sheet.step(at(10, 20), 10_min, unattended, {}, gratin, {"bake", "", {}});
    sheet.step(at(10, 30), 10_min, unattended, {}, {}, {"air", "", {}});
    const PerHourPlan plan = sheet.build();
    EXPECT_THAT(outline(plan, sheetRowsOf(plan, {0, 1}).at(0)),
                ElementsAre("10:00-11:00 | air | slice bake"));
}

TEST(SheetRows, PutAJointStepInBothColumnsAndANoteForNobodyInAll)
{
    SheetBuilder sheet = twoCooks();
    sheet.step(at(10), 10_min, handsOn, {"Maren", "Jory"}, {}, {"lift", "", {}});
    sheet.note(at(10), "hot", {});
    sheet.fetch(at(10, 5), "butter out", {});
    const PerHourPlan plan = sheet.build();
    EXPECT_THAT(outline(plan, sheetRowsOf(plan, {0, 1}).at(0)),
                ElementsAre("10:00-11:00 | lift hot butter out | lift hot"));
}

TEST(SheetRows, GiveTwoCooksOneSheetAndThreeOneEach)
{
    SheetBuilder sheet = twoCooks();
    EXPECT_THAT(sheetsOf(sheet.build(), false), ElementsAre(SheetCooks{0, 1}));
    EXPECT_THAT(sheetsOf(sheet.build(), true), ElementsAre(SheetCooks{0}, SheetCooks{1}));
    sheet.cook("Wenna");
    EXPECT_THAT(sheetsOf(sheet.build(), false),
                ElementsAre(SheetCooks{0}, SheetCooks{1}, SheetCooks{2}));
}

TEST(SheetRows, GiveCooksWhoWouldReadTooLongASheetEach)
{
    SheetBuilder sheet = twoCooks();
    std::string words;
    for (int i = 0; i < 1201; ++i) {
        words += "word ";
    }
    sheet.step(at(10), 10_min, handsOn, {"Maren"}, {}, {"read", words, {}});
    EXPECT_THAT(sheetsOf(sheet.build(), false), SizeIs(2));
}

TEST(SheetRows, HaveOneColumnEvenWithoutCooks)
{
    SheetBuilder sheet{day};
    sheet.step(at(10), 10_min, handsOn, {}, {}, {"rise", "", {}});
    const PerHourPlan plan = sheet.build();
    const auto sheets = sheetsOf(plan, true);
    ASSERT_THAT(sheets, ElementsAre(SheetCooks{0}));
    EXPECT_THAT(outline(plan, sheetRowsOf(plan, sheets[0]).at(0)),
                ElementsAre("10:00-11:00 | rise"));
}

TEST(SheetRows, AreNoneForAnEmptyPlan)
{
    EXPECT_THAT(sheetRowsOf(twoCooks().build(), {0, 1}), IsEmpty());
}

} // namespace
} // namespace suppertide::ui
