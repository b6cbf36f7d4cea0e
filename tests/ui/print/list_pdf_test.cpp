// Lists on paper as another program reads them (poppler): every line is there, on A4 and on Letter,
// within the margins.
#include <QProcess>
#include <QRegularExpression>
#include <QStandardPaths>
#include <QTemporaryDir>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "core/shopping/shopping_text.h"
#include "ui/print/list_html.h"
#include "ui/print/list_pdf.h"

namespace suppertide::ui {
namespace {

using namespace Qt::StringLiterals;
using shopping::ShoppingLine;
using shopping::ShoppingList;

constexpr std::size_t trips = 3;
constexpr std::size_t linesOfATrip = 40; // together some six pages

ShoppingLine line(std::size_t trip, std::size_t number)
{
    ShoppingLine made;
    made.key = fmt::format("thing-{}-{}", trip, number);
    made.ingredient = fmt::format("ingredient{}of{} <with> & sign", number, trip);
    made.section = fmt::format("section{}", number / 8);
    made.toBuy = made.needed = {Rational{static_cast<std::int64_t>(100 + number)}, Unit::Gram};
    made.leftOver = {Rational{static_cast<std::int64_t>(number)}, Unit::Gram};
    made.cost = static_cast<std::int64_t>(100 + number);
    shopping::ShoppingNeed need;
    need.recipeName = fmt::format("Dish{}x{} of a rather long name that goes on", trip, number);
    need.amount = made.needed;
    made.needs = {need};
    made.notes = {fmt::format("Note{}x{} says, at some length, what must be known to buy it, so "
                              "that it takes more than one row of the paper.",
                              trip, number)};
    made.trip = trip;
    return made;
}

ShoppingList longList()
{
    ShoppingList list;
    list.occasion = "Supper for many";
    list.zone = "Europe/London";
    list.currency = "GBP";
    for (std::size_t trip = 0; trip < trips; ++trip) {
        list.trips.push_back({std::nullopt,
                              fmt::format("Trip number {}", trip),
                              {{2027, 6, 15 + static_cast<unsigned>(trip)}, {18, 0}}});
        for (std::size_t number = 0; number < linesOfATrip; ++number) {
            list.lines.push_back(line(trip, number));
            list.cost += *list.lines.back().cost;
        }
    }
    list.lines.push_back(line(0, linesOfATrip));
    list.lines.back().trip.reset(); // all of it is at home
    list.spare = {{"whey", {Rational{300}, Unit::Millilitre}, "Fresh cheese", {}}};
    list.spareUses = {"Flatbreads"};
    list.sentences = {"A sentence of what could not be counted."};
    return list;
}

struct PageSize
{
    PaperSize size;
    double width; // pt
    double height;
};

class ListPdf : public testing::TestWithParam<PageSize>
{
protected:
    void SetUp() override
    {
        ASSERT_TRUE(folder_.isValid());
        ASSERT_FALSE(QStandardPaths::findExecutable(u"pdftotext"_s).isEmpty())
            << "pdftotext is not installed (poppler-utils)";
        const auto written =
            writeHtmlPdf(shoppingHtml(list_), u"What to buy"_s, file(), GetParam().size);
        ASSERT_TRUE(written) << written.error().forCook;
    }
    [[nodiscard]] std::filesystem::path file() const
    {
        return folder_.filePath(u"list.pdf"_s).toStdString();
    }
    [[nodiscard]] QString read(const QStringList& options) const
    {
        QProcess process;
        process.start(u"pdftotext"_s,
                      options + QStringList{QString::fromStdString(file().string()), u"-"_s});
        EXPECT_TRUE(process.waitForFinished());
        EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
        return QString::fromUtf8(process.readAllStandardOutput());
    }

    QTemporaryDir folder_;
    ShoppingList list_ = longList();
};

TEST_P(ListPdf, HasEveryLineWithWhatItSays)
{
    const QString text = read({u"-raw"_s}).normalized(QString::NormalizationForm_KC).simplified();
    const auto has = [&text](const std::string& words) {
        return text.contains(QString::fromStdString(words).simplified());
    };
    for (const ShoppingLine& each : list_.lines) {
        EXPECT_TRUE(has(each.ingredient)) << each.ingredient;
        if (each.trip) {
            EXPECT_TRUE(has(shopping::buyText(each))) << each.ingredient;
            EXPECT_TRUE(has(priceText(*each.cost, list_.currency))) << each.ingredient;
        }
        EXPECT_TRUE(has(each.needs.front().recipeName)) << each.ingredient;
        EXPECT_TRUE(has(each.notes.front())) << each.ingredient;
    }
    for (const shopping::TripOfList& trip : list_.trips) {
        EXPECT_TRUE(has(trip.name)) << trip.name;
    }
    EXPECT_TRUE(has("whey, 300 ml, from “Fresh cheese”: could go into Flatbreads"));
    EXPECT_TRUE(has(list_.sentences.front()));
    EXPECT_TRUE(has(shopping::labelCaution()));
    EXPECT_TRUE(has("Page 1 of "));
    EXPECT_TRUE(has(priceText(list_.cost, list_.currency)));
}

TEST_P(ListPdf, StaysWithinTheMarginsOfItsPaper)
{
    const QString boxes = read({u"-bbox"_s});
    const QRegularExpression page{u"<page width=\"([0-9.]+)\" height=\"([0-9.]+)\">"_s};
    auto pages = page.globalMatch(boxes);
    ASSERT_TRUE(pages.hasNext());
    while (pages.hasNext()) {
        const auto each = pages.next();
        EXPECT_NEAR(each.captured(1).toDouble(), GetParam().width, 1);
        EXPECT_NEAR(each.captured(2).toDouble(), GetParam().height, 1);
    }
    const QRegularExpression word{
        u"<word xMin=\"([0-9.]+)\" yMin=\"([0-9.]+)\" xMax=\"([0-9.]+)\" yMax=\"([0-9.]+)\">"_s};
    constexpr double margin = 15 / 25.4 * 72 - 1; // pt; a rounding less
    int words = 0;
    for (auto all = word.globalMatch(boxes); all.hasNext(); ++words) {
        const auto each = all.next();
        EXPECT_GE(each.captured(1).toDouble(), margin);
        EXPECT_GE(each.captured(2).toDouble(), margin);
        EXPECT_LE(each.captured(3).toDouble(), GetParam().width - margin);
        EXPECT_LE(each.captured(4).toDouble(), GetParam().height - margin);
    }
    EXPECT_GT(words, 1000);
}

INSTANTIATE_TEST_SUITE_P(OfBothPapers, ListPdf,
                         testing::Values(PageSize{PaperSize::A4, 595.28, 841.89},
                                         PageSize{PaperSize::Letter, 612, 792}));

TEST(ListHtml, SaysAmountsInTheReadersMeasures)
{
    ShoppingList list = longList();
    list.measures = MeasureSystem::UsCustomary;
    const QString html = shoppingHtml(list);
    EXPECT_TRUE(html.contains(u"3¾ oz"_s)); // 100 g are 3.53 oz, and no less is to be bought
    EXPECT_FALSE(html.contains(u">100 g<"_s));
}

TEST(ListHtml, WritesWhatCooksTypeAsText)
{
    const QString html = shoppingHtml(longList());
    EXPECT_TRUE(html.contains(u"&lt;with&gt; &amp; sign"_s));
    EXPECT_FALSE(html.contains(u"<with>"_s));
}

} // namespace
} // namespace suppertide::ui
