#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/print/example_sheet.h"
#include "ui/print/per_hour_html.h"

namespace suppertide::ui {
namespace {

using testing::HasSubstr;

std::size_t countOf(const std::string& text, const std::string& part)
{
    std::size_t count = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
        ++count;
    }
    return count;
}

TEST(PerHourHtml, SaysEveryStepAndServingOnce)
{
    const PerHourPlan plan = test::exampleSheet();
    const std::string html = perHourHtml(plan);
    for (const SheetDay& day : plan.days) {
        EXPECT_EQ(countOf(html, "<h2>" + day.heading + "</h2>"), 1U);
        for (const SheetHour& hour : day.hours) {
            for (const SheetStep& step : hour.steps) {
                EXPECT_EQ(countOf(html, ": " + step.deed + "."), 1U) << step.deed;
            }
            for (const SheetServing& serving : hour.servings) {
                EXPECT_EQ(countOf(html, serving.text + "."), 1U) << serving.text;
            }
            for (const SheetOvenTurn& turn : hour.ovenTurns) {
                EXPECT_EQ(countOf(html, ": " + turn.text), 1U) << turn.text;
            }
        }
    }
}

TEST(PerHourHtml, ReadsAStepAsSentences)
{
    EXPECT_THAT(
        perHourHtml(test::exampleSheet()),
        HasSubstr(
            "<li>18:05: Slice the potatoes, layer the gratin. 2 mm thick · 45 min. 1.2 kg "
            "potatoes, 600 ml cream, 1 clove garlic. Jory. hands-on. For: Potato gratin.</li>"));
}

TEST(PerHourHtml, KeepsTheOrderOfThePaper)
{
    const std::string html = perHourHtml(test::crowdedSheet());
    std::size_t from = 0;
    for (const char* part :
         {"Not yet settled", "Friday 18 June", "Saturday 19 June", "Ladle the soup", "Serve soup",
          "Maren at table to 19:50", "Shoulder out.", "Throughout", "they prevail"}) {
        const auto found = html.find(part, from);
        ASSERT_NE(found, std::string::npos) << part;
        from = found;
    }
}

TEST(PerHourHtml, EscapesWhatTheCookWrote)
{
    test::SheetBuilder sheet{{2027, 6, 19}};
    sheet.words.title = "Salt & <pepper>";
    sheet.cook("\"Ann\"");
    const std::string html = perHourHtml(sheet.build());
    EXPECT_THAT(html, HasSubstr("<h1>Salt &amp; &lt;pepper&gt;</h1>"));
    EXPECT_EQ(html.find("<pepper>"), std::string::npos);
}

} // namespace
} // namespace suppertide::ui
