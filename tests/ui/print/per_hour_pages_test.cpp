// Pages as marks: what must hold of any page, whatever stands on it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/print/example_sheet.h"
#include "ui/print/per_hour_pages.h"

namespace suppertide::ui {
namespace {

using test::crowdedSheet;
using test::exampleSheet;
using testing::ElementsAre;

std::vector<PageStyle> allStyles()
{
    std::vector<PageStyle> styles;
    for (const PaperSize paper : {PaperSize::A4, PaperSize::Letter}) {
        for (const TextSize text : {TextSize::Normal, TextSize::Large}) {
            styles.push_back({paper, text, {}});
        }
    }
    return styles;
}

PerHourPlan americanSheet()
{
    PerHourPlan plan = exampleSheet();
    plan.style = {true, true};
    return plan;
}

std::vector<QString> textsOf(const PaperMarks& page)
{
    std::vector<QString> texts;
    for (const PaperMark& mark : page) {
        if (const auto* text = std::get_if<TextMark>(&mark)) {
            texts.push_back(text->text);
        }
    }
    return texts;
}

std::size_t countOf(const PerHourPages& pages, const QString& text)
{
    std::size_t count = 0;
    for (const PaperMarks& page : pages.pages) {
        const auto texts = textsOf(page);
        count += static_cast<std::size_t>(std::count(texts.begin(), texts.end(), text));
    }
    return count;
}

/// Texts stand clear of each other: not one letter's box in another's.
void expectNoTextOnText(const PaperMarks& page)
{
    std::vector<std::pair<QRectF, QString>> boxes;
    for (const PaperMark& mark : page) {
        if (const auto* text = std::get_if<TextMark>(&mark)) {
            // Descenders may reach into the ascenders of the next line, as in any text.
            const double give = text->font.size * 0.15;
            const QRectF box = boundsOf(mark);
            boxes.emplace_back(text->isUpright ? box.adjusted(give, 0, -give, 0)
                                               : box.adjusted(0, give, 0, -give),
                               text->text);
        }
    }
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        for (std::size_t j = i + 1; j < boxes.size(); ++j) {
            EXPECT_FALSE(boxes[i].first.intersects(boxes[j].first))
                << boxes[i].second.toStdString() << " on " << boxes[j].second.toStdString();
        }
    }
}

void expectWithinPaper(const PerHourPages& pages)
{
    // The foot's margin is the smallest: 8 mm.
    const double margin = 8 * 72.0 / 25.4;
    const QRectF printable = QRectF{{0, 0}, pages.paper}.adjusted(margin, margin, -margin, -margin);
    for (const PaperMarks& page : pages.pages) {
        for (const PaperMark& mark : page) {
            const QRectF box = boundsOf(mark);
            EXPECT_TRUE(printable.contains(box) || box.isEmpty())
                << box.left() << " " << box.top() << " " << box.right() << " " << box.bottom();
        }
    }
}

TEST(PerHourPages, StayOnThePaperWithoutTextOnText)
{
    for (const PerHourPlan& plan : {exampleSheet(), crowdedSheet(), americanSheet()}) {
        for (const PageStyle& style : allStyles()) {
            const PerHourPages pages = layOutPages(plan, style);
            expectWithinPaper(pages);
            for (const PaperMarks& page : pages.pages) {
                expectNoTextOnText(page);
            }
        }
    }
}

TEST(PerHourPages, HaveTheSizeOfThePaper)
{
    EXPECT_EQ(layOutPages(exampleSheet()).paper, QSizeF(595, 842));
    EXPECT_EQ(layOutPages(exampleSheet(), {PaperSize::Letter, {}, {}}).paper, QSizeF(612, 792));
}

TEST(PerHourPages, NumberThemselves)
{
    const PerHourPages pages = layOutPages(exampleSheet());
    ASSERT_EQ(pages.pages.size(), 3U);
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
        EXPECT_EQ(countOf(pages, QStringLiteral("Page %1 of 3").arg(i + 1)), 1U);
    }
}

TEST(PerHourPages, NameLocalCodesOnEveryPage)
{
    const PerHourPages pages = layOutPages(exampleSheet());
    EXPECT_EQ(countOf(pages, QStringLiteral("Where local food-safety codes ask for more than this "
                                            "plan, they prevail.")),
              pages.pages.size());
}

TEST(PerHourPages, TagEveryTurnOfAKnob)
{
    const PerHourPages pages = layOutPages(exampleSheet());
    EXPECT_EQ(countOf(pages, QStringLiteral("120°")), 1U);
    EXPECT_EQ(countOf(pages, QStringLiteral("150°")), 1U);
    EXPECT_EQ(countOf(pages, QStringLiteral("180°")), 1U);
    EXPECT_EQ(countOf(pages, QStringLiteral("220°")), 1U);
    EXPECT_EQ(countOf(pages, QStringLiteral("off")), 3U);
}

TEST(PerHourPages, ReadFahrenheitAndTwelveHours)
{
    const PerHourPages pages = layOutPages(americanSheet());
    EXPECT_EQ(countOf(pages, QStringLiteral("300°")), 1U);       // 150 °C is 302 °F
    EXPECT_EQ(countOf(pages, QStringLiteral("pm")), 0U + 3 + 7); // hours of Friday and Saturday
}

TEST(PerHourPages, SayWhatCollidesBeforeAnythingElse)
{
    const PerHourPages pages = layOutPages(crowdedSheet());
    const auto texts = textsOf(pages.pages.front());
    const auto clash =
        std::find(texts.begin(), texts.end(),
                  QStringLiteral("Not yet settled: this plan cannot be cooked as it stands."));
    const auto hour = std::find(texts.begin(), texts.end(), QStringLiteral("17"));
    ASSERT_NE(clash, texts.end());
    ASSERT_NE(hour, texts.end());
    EXPECT_LT(clash, hour);
    EXPECT_EQ(countOf(layOutPages(exampleSheet()), *clash), 0U);
}

TEST(PerHourPages, GiveEachCookASheetInTheLargeType)
{
    PageStyle style;
    style.text = TextSize::Large;
    const PerHourPages pages = layOutPages(exampleSheet(), style);
    EXPECT_GT(countOf(pages, QStringLiteral("for Maren")), 0U);
    EXPECT_GT(countOf(pages, QStringLiteral("for Jory")), 0U);
    EXPECT_EQ(countOf(pages, QStringLiteral("for Maren")) +
                  countOf(pages, QStringLiteral("for Jory")),
              pages.pages.size());
}

TEST(PerHourPages, UseTheLooksOfTheTimeline)
{
    const auto keyOf = [](const PerHourPages& pages) {
        for (const PaperMark& mark : pages.pages.front()) {
            if (const auto* pattern = std::get_if<PatternMark>(&mark)) {
                return pattern->pattern; // the first of the dishes' key: the soup
            }
        }
        return Pattern::Bond;
    };
    PageStyle style;
    EXPECT_EQ(keyOf(layOutPages(exampleSheet(), style)), Pattern::Plain);
    style.looks = {{DishId{"soup"}, 1}};
    EXPECT_EQ(keyOf(layOutPages(exampleSheet(), style)), Pattern::Rain);
}

TEST(PerHourPages, KeepEveryTypeAtTheStoveReadableAtAMetre)
{
    // An eye of 6/12 resolves capitals of 10 minutes of arc: 2.91 mm at 1 m (tan 10').
    // Cap height of DejaVu Sans: 0.729 em (its OS/2 table). Numerals of tags and names beside bars
    // repeat what the columns say.
    const double leastSize = 1000 * 0.00290889 / 0.729 * 72 / 25.4; // 11.3 pt
    for (const PaperMarks& page : layOutPages(exampleSheet()).pages) {
        for (const PaperMark& mark : page) {
            const auto* text = std::get_if<TextMark>(&mark);
            const bool isAtTheStove =
                text != nullptr && text->at.x() > 200 && text->at.y() > 110 && text->at.y() < 790;
            if (isAtTheStove) {
                EXPECT_GE(text->font.size, leastSize) << text->text.toStdString();
            }
        }
    }
}

TEST(PerHourPages, ShowAnEmptyPlanAsOnePageWithItsHead)
{
    test::SheetBuilder sheet{{2027, 6, 19}};
    sheet.words.title = "Nothing yet";
    const PerHourPages pages = layOutPages(sheet.build());
    ASSERT_EQ(pages.pages.size(), 1U);
    EXPECT_EQ(countOf(pages, QStringLiteral("Nothing yet")), 1U);
}

TEST(PerHourPages, BreakAnHourThatNoPageHoldsBetweenItsSteps)
{
    test::SheetBuilder sheet{{2027, 6, 19}};
    sheet.cook("Maren");
    for (int minute = 0; minute < 60; ++minute) {
        sheet.step({{2027, 6, 19}, 18, minute}, 5_min, handsOn, {"Maren"}, {},
                   {"Deed " + std::to_string(minute), "somewhere", {}});
    }
    const PerHourPages pages = layOutPages(sheet.build());
    EXPECT_GT(pages.pages.size(), 2U);
    expectWithinPaper(pages);
    for (int minute = 0; minute < 60; ++minute) {
        EXPECT_EQ(countOf(pages, QStringLiteral("Deed %1").arg(minute)), 1U);
    }
}

TEST(PerHourPages, HoldLongTextsInTheirColumns)
{
    const PerHourPlan plan = test::wordySheet();
    for (const PageStyle& style : allStyles()) {
        const PerHourPages pages = layOutPages(plan, style);
        expectWithinPaper(pages);
        for (const PaperMarks& page : pages.pages) {
            expectNoTextOnText(page);
        }
    }
}

} // namespace
} // namespace suppertide::ui
