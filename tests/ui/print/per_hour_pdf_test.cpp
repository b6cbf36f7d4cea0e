// The PDF as another program reads it: text by pdftotext, pages by pdfinfo (poppler).
#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QStandardPaths>
#include <QTemporaryDir>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>

#include "tests/support/print/example_sheet.h"
#include "ui/print/per_hour_pdf.h"

namespace suppertide::ui {
namespace {

using testing::HasSubstr;

class PerHourPdf : public testing::Test
{
protected:
    void SetUp() override
    {
        ASSERT_TRUE(folder_.isValid());
        for (const char* program : {"pdftotext", "pdfinfo"}) {
            if (QStandardPaths::findExecutable(QString::fromLatin1(program)).isEmpty()) {
                FAIL() << program << " is not installed (poppler-utils)";
            }
        }
    }

    [[nodiscard]] std::filesystem::path path(const char* name) const
    {
        return folder_.filePath(QString::fromLatin1(name)).toStdString();
    }

    static QString outputOf(const char* program, const QStringList& arguments)
    {
        QProcess process;
        process.start(QString::fromLatin1(program), arguments);
        EXPECT_TRUE(process.waitForFinished());
        EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
        return QString::fromUtf8(process.readAllStandardOutput());
    }

    /// Ligatures and unbreakable blanks as plain letters, runs of blanks as one.
    static QString textOf(const std::filesystem::path& file)
    {
        return outputOf("pdftotext", {QStringLiteral("-raw"), QString::fromStdString(file.string()),
                                      QStringLiteral("-")})
            .normalized(QString::NormalizationForm_KC)
            .simplified();
    }

    static QString field(const std::filesystem::path& file, const char* name)
    {
        const QRegularExpression line{QStringLiteral("^%1: +(.*)$").arg(QString::fromLatin1(name)),
                                      QRegularExpression::MultilineOption};
        return line.match(outputOf("pdfinfo", {QString::fromStdString(file.string())})).captured(1);
    }

    QTemporaryDir folder_;
};

qsizetype timesIn(const QString& text, const std::string& part)
{
    return text.count(QString::fromStdString(part).normalized(QString::NormalizationForm_KC));
}

TEST_F(PerHourPdf, HasEveryStepAndServingOnce)
{
    const PerHourPlan plan = test::exampleSheet();
    ASSERT_TRUE(writePerHourPdf(plan, path("a4.pdf"), PaperSize::A4));
    const QString text = textOf(path("a4.pdf"));
    for (const SheetDay& day : plan.days) {
        for (const SheetHour& hour : day.hours) {
            for (const SheetStep& step : hour.steps) {
                const CivilTime civil = plan.plan->formulation->calendar.civil(step.start);
                // A joint step stands in both cooks' columns.
                EXPECT_EQ(timesIn(text, toIso(civil.clock) + " " + step.deed),
                          static_cast<qsizetype>(step.cooks.size()))
                    << step.deed;
                for (const std::string& amount : step.amounts) {
                    EXPECT_GE(timesIn(text, amount), 1) << amount;
                }
            }
            for (const SheetServing& serving : hour.servings) {
                EXPECT_EQ(timesIn(text, serving.text), 1) << serving.text;
                for (const std::string& helping : serving.helpings) {
                    EXPECT_EQ(timesIn(text, helping), 1) << helping;
                }
            }
            for (const SheetNote& note : hour.notes) {
                EXPECT_EQ(timesIn(text, note.text), 1) << note.text;
            }
            for (const SheetFetch& fetch : hour.fetches) {
                EXPECT_EQ(timesIn(text, fetch.text), 1) << fetch.text;
            }
        }
    }
    EXPECT_EQ(timesIn(text, "At table to 19:50"), 1);
    EXPECT_EQ(timesIn(text, "Page 3 of 3"), 1);
}

TEST_F(PerHourPdf, HasThePaperAsked)
{
    const PerHourPlan plan = test::exampleSheet();
    ASSERT_TRUE(writePerHourPdf(plan, path("a4.pdf"), PaperSize::A4));
    ASSERT_TRUE(writePerHourPdf(plan, path("letter.pdf"), PaperSize::Letter));
    EXPECT_THAT(field(path("a4.pdf"), "Page size").toStdString(), HasSubstr("595 x 842"));
    EXPECT_THAT(field(path("letter.pdf"), "Page size").toStdString(), HasSubstr("612 x 792"));
    EXPECT_EQ(field(path("a4.pdf"), "Pages"), QStringLiteral("3"));
    EXPECT_EQ(field(path("letter.pdf"), "Pages"), QStringLiteral("3"));
    EXPECT_EQ(field(path("a4.pdf"), "Title"), QStringLiteral("Midsummer supper at Skerry Light"));
}

TEST_F(PerHourPdf, KeepsNamesInAnyScript)
{
    test::SheetBuilder sheet{{2027, 6, 19}};
    sheet.words.title = "Ужин у маяка, Δείπνο";
    sheet.cook("Łucja Ångström");
    sheet.cook("مريم");
    const test::On at{{2027, 6, 19}, 18, 0};
    sheet.step(at, 10_min, handsOn, {"Łucja Ångström"}, {},
               {"Crème brûlée 🍮 for everyone", "½ tsp · ¼ l", {"½ l cream"}});
    sheet.step(at, 10_min, handsOn, {"مريم"}, {}, {"לערוך את השולחן", "", {}});
    sheet.step({{2027, 6, 19}, 18, 20}, 10_min, handsOn, {"مريم"}, {},
               {"line\nbreak\tand tab", "", {}});
    ASSERT_TRUE(writePerHourPdf(sheet.build(), path("scripts.pdf"), PaperSize::A4));
    const QString text = textOf(path("scripts.pdf"));
    for (const char* part : {"Ужин у маяка, Δείπνο", "Łucja Ångström", "18:00 Crème brûlée",
                             "for everyone", "line break and tab"}) {
        EXPECT_EQ(timesIn(text, part), 1) << part;
    }
    EXPECT_EQ(field(path("scripts.pdf"), "Pages"), QStringLiteral("1"));
}

TEST_F(PerHourPdf, SaysWhereItCouldNotBeWritten)
{
    const auto missing = path("no-such-folder") / "plan.pdf";
    const Result<void> written = writePerHourPdf(test::exampleSheet(), missing, PaperSize::A4);
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().kind, FailureKind::Io);
    EXPECT_THAT(written.error().forCook, HasSubstr(missing.string()));
    EXPECT_THAT(written.error().forCook, HasSubstr("Choose another folder"));
    EXPECT_FALSE(std::filesystem::exists(missing));
}

TEST_F(PerHourPdf, LeavesAFolderOfThatNameAlone)
{
    std::filesystem::create_directory(path("plan.pdf"));
    const Result<void> written =
        writePerHourPdf(test::exampleSheet(), path("plan.pdf"), PaperSize::A4);
    ASSERT_FALSE(written);
    EXPECT_TRUE(std::filesystem::is_directory(path("plan.pdf")));
}

TEST_F(PerHourPdf, DiffersFromASecondOneOnlyInItsDate)
{
    const auto bytesOf = [](const std::filesystem::path& file) {
        QFile in{QString::fromStdString(file.string())};
        EXPECT_TRUE(in.open(QIODevice::ReadOnly));
        QString all = QString::fromLatin1(in.readAll());
        return all.remove(QRegularExpression{QStringLiteral("/CreationDate ?\\([^)]*\\)")});
    };
    ASSERT_TRUE(writePerHourPdf(test::exampleSheet(), path("one.pdf"), PaperSize::A4));
    ASSERT_TRUE(writePerHourPdf(test::exampleSheet(), path("two.pdf"), PaperSize::A4));
    EXPECT_EQ(bytesOf(path("one.pdf")), bytesOf(path("two.pdf")));
}

} // namespace
} // namespace suppertide::ui
