// Gas marks against what several charts print beside the dials of electric ovens.
#include <gtest/gtest.h>

#include <cmath>

#include "core/quantity/gas_mark.h"

namespace suppertide {
namespace {

TEST(GasMarks, AreFoundFromTheirDials)
{
    struct Row
    {
        int celsius;
        const char* text;
    };
    for (const Row& row : {Row{110, "gas mark ¼"}, Row{120, "gas mark ½"}, Row{130, "gas mark ½"},
                           Row{140, "gas mark 1"}, Row{150, "gas mark 2"}, Row{160, "gas mark 3"},
                           Row{170, "gas mark 3"}, Row{180, "gas mark 4"}, Row{190, "gas mark 5"},
                           Row{200, "gas mark 6"}, Row{220, "gas mark 7"}, Row{230, "gas mark 8"},
                           Row{240, "gas mark 9"}}) {
        const auto mark = gasMarkNear(Celsius::degrees(row.celsius));
        ASSERT_TRUE(mark) << row.celsius;
        EXPECT_EQ(gasMarkText(*mark), row.text) << row.celsius;
    }
    EXPECT_EQ(gasMarkNear(94_degC), std::nullopt);
    EXPECT_EQ(gasMarkNear(261_degC), std::nullopt);
}

TEST(GasMarks, ComeBackFromTheirOwnDial)
{
    for (const Rational& mark :
         {Rational(1, 4), Rational(1, 2), Rational(1), Rational(2), Rational(3), Rational(4),
          Rational(5), Rational(6), Rational(7), Rational(8), Rational(9)}) {
        const auto dial = dialOfGasMark(mark);
        ASSERT_TRUE(dial) << mark.text();
        EXPECT_EQ(gasMarkNear(*dial), mark);
        // 250 + 25 n °F; dials round by custom, to 10 °C either way.
        if (mark >= Rational{1}) {
            const double exact = (250 + 25 * mark.toDouble() - 32) / 1.8;
            EXPECT_LE(std::abs(dial->wholeDegrees() - exact), 6.2) << mark.text();
        }
    }
    EXPECT_EQ(dialOfGasMark(Rational{10}), std::nullopt);
    EXPECT_EQ(dialOfGasMark(Rational(3, 2)), std::nullopt);
}

} // namespace
} // namespace suppertide
