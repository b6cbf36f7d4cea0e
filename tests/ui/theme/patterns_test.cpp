#include <QImage>
#include <QPainter>

#include <gtest/gtest.h>

#include <bit>
#include <set>

#include "ui/theme/palette.h"
#include "ui/theme/patterns.h"

namespace suppertide::ui {
namespace {

bool isMark(const PatternRows& rows, int x, int y)
{
    const unsigned row = rows.at(static_cast<std::size_t>(y & 7));
    return ((row >> (7 - (x & 7))) & 1U) != 0;
}

int marksOf(const PatternRows& rows)
{
    int count = 0;
    for (const std::uint8_t row : rows) {
        count += std::popcount(row);
    }
    return count;
}

/// Whether a wanted tile is `other` shifted by some whole pixels: on a block they would look alike.
bool isShifted(const PatternRows& one, const PatternRows& other)
{
    for (int dx = 0; dx < 8; ++dx) {
        for (int dy = 0; dy < 8; ++dy) {
            bool isSame = true;
            for (int i = 0; i < 64; ++i) {
                isSame =
                    isSame && isMark(one, i % 8, i / 8) == isMark(other, i % 8 + dx, i / 8 + dy);
            }
            if (isSame) {
                return true;
            }
        }
    }
    return false;
}

TEST(Patterns, AreAllUnlikeEachOther)
{
    for (const Pattern a : allPatterns) {
        for (const Pattern b : allPatterns) {
            EXPECT_EQ(isShifted(rowsOf(a), rowsOf(b)), a == b);
        }
    }
}

TEST(Patterns, LeaveMostOfTheHueToBeSeen)
{
    EXPECT_EQ(marksOf(rowsOf(Pattern::Plain)), 0);
    for (const Pattern pattern : allPatterns) {
        EXPECT_LE(marksOf(rowsOf(pattern)), 32);
    }
}

// Diagonals mean a clash, always and only: a pattern must have no line that runs on aslant.
TEST(Patterns, HaveNoLongDiagonals)
{
    for (const Pattern pattern : allPatterns) {
        const PatternRows rows = rowsOf(pattern);
        for (const int lean : {-1, 1}) {
            for (int x = 0; x < 8; ++x) {
                int run = 0;
                int longest = 0;
                for (int y = 0; y < 16; ++y) {
                    // A step aslant counts only where it is the only way on.
                    const bool isStep = isMark(rows, x + lean * y, y) &&
                                        !isMark(rows, x + lean * y + lean, y) &&
                                        !isMark(rows, x + lean * y, y + 1);
                    run = isStep ? run + 1 : 0;
                    longest = std::max(longest, run);
                }
                EXPECT_LT(longest, 5) << static_cast<int>(pattern);
            }
        }
    }
}

TEST(Patterns, AreDrawnAsRectanglesMarkByMarkFromTheTopLeft)
{
    for (const Pattern pattern : allPatterns) {
        QImage image{20, 20, QImage::Format_RGB32};
        image.fill(Qt::green);
        {
            QPainter painter{&image};
            fillPatternedAsVectors(painter, QRectF{3, 2, 14, 15}, pattern, Qt::blue, Qt::white);
        }
        for (int y = 0; y < 20; ++y) {
            for (int x = 0; x < 20; ++x) {
                const bool isInside = x >= 3 && x < 17 && y >= 2 && y < 17;
                const QColor wanted = !isInside                               ? Qt::green
                                      : isMark(rowsOf(pattern), x - 3, y - 2) ? Qt::white
                                                                              : Qt::blue;
                EXPECT_EQ(image.pixelColor(x, y), wanted) << x << " " << y;
            }
        }
    }
}

TEST(Dishes, GoThroughSixtyFourPairsOfHueAndPatternBeforeOneComesAgain)
{
    const Palette& palette = paletteFor(Appearance::Light);
    std::set<std::pair<QRgb, Pattern>> pairs;
    for (int look = 0; look < 64; ++look) {
        const DishFill dish = palette.dish(look);
        pairs.insert({dish.fill.colour.rgb(), dish.pattern});
    }
    EXPECT_EQ(pairs.size(), 64U);
}

TEST(Dishes, HaveTheSamePatternInBothLooks)
{
    for (int look = 0; look < 16; ++look) {
        EXPECT_EQ(paletteFor(Appearance::Light).dish(look).pattern,
                  paletteFor(Appearance::Dark).dish(look).pattern);
    }
}

TEST(Dishes, AreLetteredOnBeyondZ)
{
    EXPECT_EQ(dishLetter(0), QStringLiteral("A"));
    EXPECT_EQ(dishLetter(25), QStringLiteral("Z"));
    EXPECT_EQ(dishLetter(26), QStringLiteral("AA"));
    EXPECT_EQ(dishLetter(52), QStringLiteral("BA"));
    EXPECT_EQ(dishLetter(701), QStringLiteral("ZZ"));
    EXPECT_EQ(dishLetter(702), QStringLiteral("AAA"));
}

} // namespace
} // namespace suppertide::ui
