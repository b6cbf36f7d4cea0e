#include <QFontMetrics>

#include <gtest/gtest.h>

#include "ui/window/two_line_label.h"

namespace suppertide::ui {

namespace {

const QString shortOne = QStringLiteral("This plan holds.");
const QString longOne =
    QStringLiteral("A better plan: 1 step done another way; 14 steps move, most of all the roots "
                   "by 35 min; one change of the oven's setting fewer. Still looking: 4 s of 30.");

QStringList linesAt(const QString& sentence, int width)
{
    return inTwoLines(sentence, QFont(), width).split(QLatin1Char('\n'));
}

} // namespace

TEST(TwoLineLabel, LeavesWhatHasRoom)
{
    EXPECT_EQ(inTwoLines(shortOne, QFont(), 500), shortOne);
    EXPECT_EQ(inTwoLines({}, QFont(), 500), QString());
    const int whole = QFontMetrics(QFont()).horizontalAdvance(longOne);
    const QStringList lines = linesAt(longOne, whole * 3 / 4);
    ASSERT_EQ(lines.size(), 2);
    EXPECT_EQ(lines[0] + QLatin1Char(' ') + lines[1], longOne);
}

TEST(TwoLineLabel, CutsTheSecondLineAndShowsIt)
{
    for (int width = 60; width <= 300; width += 20) {
        const QStringList lines = linesAt(longOne, width);
        ASSERT_EQ(lines.size(), 2) << width;
        EXPECT_TRUE(lines[1].endsWith(QStringLiteral("…"))) << width;
        EXPECT_LE(QFontMetrics(QFont()).horizontalAdvance(lines[1]), width);
        EXPECT_TRUE(
            longOne.startsWith(lines[0] + QLatin1Char(' ') + lines[1].chopped(1).trimmed()));
    }
}

TEST(TwoLineLabel, FitsAnewAtAnotherWidthAndTellsTheWhole)
{
    TwoLineLabel label;
    label.resize(160, 40);
    label.setSentence(longOne);
    label.show();
    EXPECT_TRUE(label.text().endsWith(QStringLiteral("…")));
    EXPECT_EQ(label.toolTip(), longOne);
    EXPECT_EQ(label.accessibleName(), longOne);
    label.resize(4000, 40);
    EXPECT_EQ(label.text(), longOne);
}

} // namespace suppertide::ui
