// Who gets what on paper as another program reads it (poppler): on A4 and on Letter, the demo's and
// names that are far too long, nothing is cut off and nothing stands upon anything else.
#include <QProcess>
#include <QRectF>
#include <QRegularExpression>
#include <QStandardPaths>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <filesystem>
#include <vector>

#include "core/sheet/place_sheet.h"
#include "tests/support/demo_evening.h"
#include "ui/models/place_words.h"
#include "ui/print/place_pages.h"

namespace suppertide::ui {
namespace {

using namespace Qt::StringLiterals;

struct Word
{
    QRectF box; // pt
    QString text;
};
using Page = std::vector<Word>;

/// As they come from the place that is hardest on the paper: nine guests, of whom the last is on a
/// page of their own, nine dishes each, names without a blank.
PlaceSheet longSheet()
{
    PlaceSheet sheet;
    sheet.title = "Midsummer supper with all of the neighbours and those who came by boat, in the "
                  "old net store if it rains, and otherwise outside";
    sheet.day = "Saturday 19 June 2027";
    sheet.caution = "A caution of some length, which stands at the foot of each page of the table.";
    for (int column = 0; column < 9; ++column) {
        sheet.columns.push_back("Accompaniments" + std::to_string(column));
    }
    for (int guest = 0; guest < 9; ++guest) {
        PlaceSheetRow row;
        const std::string number = std::to_string(guest);
        row.guest = guest % 2 == 0 ? "Maximilienne-Theodora Featherstonehaugh" + number
                                   : "Llanfairpwllgwyngyllgogerychwyrndrobwll" + number;
        row.needs = "coeliac, no crustacean, no mollusc, no celery, pregnant" + number;
        for (int column = 0; column < 9; ++column) {
            const std::string at = number + "x" + std::to_string(column);
            row.cells.push_back({"Dish" + at + " of a rather long name that goes on, vegetarian",
                                 column == 3 ? "not for them: milk" + at : ""});
        }
        sheet.rows.push_back(std::move(row));
    }
    return sheet;
}

PlaceSheet demoSheet()
{
    return placeSheet(*placesInput(test::demoLibrary()));
}

struct Case
{
    PaperSize size;
    QSizeF paper; // pt
    bool isDemo;
};

class PlacePages : public testing::TestWithParam<Case>
{
protected:
    void SetUp() override
    {
        ASSERT_TRUE(folder_.isValid());
        ASSERT_FALSE(QStandardPaths::findExecutable(u"pdftotext"_s).isEmpty())
            << "pdftotext is not installed (poppler-utils)";
        const std::filesystem::path file = folder_.filePath(u"places.pdf"_s).toStdString();
        const auto written = writePlacesPdf(sheet_, file, GetParam().size);
        ASSERT_TRUE(written) << written.error().forCook;
        QProcess process;
        process.start(u"pdftotext"_s, {u"-bbox"_s, QString::fromStdString(file.string()), u"-"_s});
        ASSERT_TRUE(process.waitForFinished());
        ASSERT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
        readPages(QString::fromUtf8(process.readAllStandardOutput()));
    }

    void readPages(const QString& boxes)
    {
        const QRegularExpression either{
            u"<page width=\"([0-9.]+)\" height=\"([0-9.]+)\">|<word xMin=\"([0-9.]+)\" "
            u"yMin=\"([0-9.]+)\" xMax=\"([0-9.]+)\" yMax=\"([0-9.]+)\">([^<]*)</word>"_s};
        for (auto all = either.globalMatch(boxes); all.hasNext();) {
            const auto each = all.next();
            const auto number = [&each](int at) { return each.captured(at).toDouble(); };
            if (!each.captured(1).isEmpty()) {
                EXPECT_NEAR(number(1), GetParam().paper.width(), 1);
                EXPECT_NEAR(number(2), GetParam().paper.height(), 1);
                pages_.emplace_back();
            } else {
                pages_.back().push_back(
                    {QRectF(QPointF(number(3), number(4)), QPointF(number(5), number(6))),
                     each.captured(7)});
            }
        }
    }
    /// All that stands in the box, without blanks: where a word is broken does not matter.
    [[nodiscard]] static QString textIn(const Page& page, const QRectF& box)
    {
        QString text;
        for (const Word& word : page) {
            if (box.contains(word.box.center())) {
                text += word.text;
            }
        }
        return plain(text);
    }
    [[nodiscard]] static QString plain(QString text)
    {
        return text.replace(u"&amp;"_s, u"&"_s)
            .replace(u"&apos;"_s, u"'"_s)
            .normalized(QString::NormalizationForm_KC)
            .remove(QRegularExpression(u"\\s"_s));
    }
    [[nodiscard]] static QString plain(const std::string& text)
    {
        return plain(QString::fromStdString(text));
    }
    /// Two to a row, four rows within margins of 40 pt.
    [[nodiscard]] QRectF card(std::size_t number) const
    {
        const QSizeF paper = GetParam().paper;
        const double wide = (paper.width() - 80) / 2;
        const double high = (paper.height() - 80) / 4;
        const auto place = static_cast<int>(number % 8);
        return {40 + wide * (place % 2), 40 + high * (place / 2), wide, high};
    }
    [[nodiscard]] std::size_t cardPages() const { return (sheet_.rows.size() + 7) / 8; }

    QTemporaryDir folder_;
    PlaceSheet sheet_ = GetParam().isDemo ? demoSheet() : longSheet();
    std::vector<Page> pages_;
};

TEST_P(PlacePages, GiveEachPlaceACardWithAllThatItsGuestGets)
{
    ASSERT_GT(pages_.size(), cardPages());
    const std::size_t first = pages_.size() - cardPages();
    for (std::size_t i = 0; i < sheet_.rows.size(); ++i) {
        const QString said = textIn(pages_[first + i / 8], card(i));
        const PlaceSheetRow& row = sheet_.rows[i];
        EXPECT_TRUE(said.contains(plain(row.guest))) << said.toStdString();
        EXPECT_TRUE(said.contains(plain(sheet_.title))) << said.toStdString();
        for (const PlaceSheetCell& cell : row.cells) {
            EXPECT_TRUE(said.contains(plain(cell.dish))) << cell.dish << said.toStdString();
        }
    }
}

TEST_P(PlacePages, CutNothingOffAtTheEdgeOfACard)
{
    const std::size_t first = pages_.size() - cardPages();
    int words = 0;
    for (std::size_t page = first; page < pages_.size(); ++page) {
        for (const Word& word : pages_[page]) {
            bool isInside = false;
            for (std::size_t i = 0; i < 8; ++i) {
                // Room to cut along.
                isInside = isInside || card(i).adjusted(8, 8, -8, -8).contains(word.box);
            }
            EXPECT_TRUE(isInside) << word.text.toStdString();
            ++words;
        }
    }
    EXPECT_GE(words, static_cast<int>(sheet_.rows.size()) * 4);
}

TEST_P(PlacePages, HaveNothingUponAnythingElse)
{
    for (const Page& page : pages_) {
        for (std::size_t i = 0; i < page.size(); ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                // A line's box may reach a little into the next one's.
                const QRectF both = page[i].box.intersected(page[j].box);
                EXPECT_TRUE(both.width() < 1 ||
                            both.height() <
                                0.35 * std::min(page[i].box.height(), page[j].box.height()))
                    << page[i].text.toStdString() << " on " << page[j].text.toStdString();
            }
        }
    }
}

TEST_P(PlacePages, KeepTheTableWithinThePaperAndSayAllOfIt)
{
    const QRectF paper{QPointF{}, GetParam().paper};
    QString said;
    for (std::size_t page = 0; page < pages_.size() - cardPages(); ++page) {
        for (const Word& word : pages_[page]) {
            EXPECT_TRUE(paper.adjusted(38, 38, -38, -38).contains(word.box))
                << word.text.toStdString();
        }
        const QString onPage = textIn(pages_[page], paper);
        EXPECT_TRUE(onPage.contains(plain(sheet_.caution))) << "at the foot of each page";
        said += onPage;
    }
    EXPECT_TRUE(said.contains(plain(sheet_.day)));
    // Beside one another, cells are read line by line across: words are looked for, not rows.
    QStringList wanted;
    for (const std::string& column : sheet_.columns) {
        wanted += QString::fromStdString(column).split(u' ');
    }
    for (const PlaceSheetRow& row : sheet_.rows) {
        wanted += QString::fromStdString(row.needs).split(u' ');
        for (const PlaceSheetCell& cell : row.cells) {
            wanted += QString::fromStdString(cell.dish).split(u' ');
            wanted += QString::fromStdString(cell.mark).split(u' ');
        }
    }
    for (const QString& word : wanted) {
        if (word.size() <= 8) { // a longer one may be broken
            EXPECT_TRUE(said.contains(plain(word))) << word.toStdString();
        }
    }
}

INSTANTIATE_TEST_SUITE_P(OfBothPapers, PlacePages,
                         testing::Values(Case{PaperSize::A4, {595.28, 841.89}, true},
                                         Case{PaperSize::Letter, {612, 792}, true},
                                         Case{PaperSize::A4, {595.28, 841.89}, false},
                                         Case{PaperSize::Letter, {612, 792}, false}));

} // namespace
} // namespace suppertide::ui
