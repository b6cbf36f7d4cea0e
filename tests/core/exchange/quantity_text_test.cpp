#include <gtest/gtest.h>

#include "core/exchange/decimal.h"
#include "core/exchange/quantity_text.h"

namespace suppertide {

namespace {

TEST(QuantityText, ReadsFractionsExactly)
{
    EXPECT_EQ(parseFraction("3"), Rational(3));
    EXPECT_EQ(parseFraction("1/2"), Rational(1, 2));
    EXPECT_EQ(parseFraction("2 1/2"), Rational(5, 2));
    EXPECT_EQ(parseFraction("0.125"), Rational(1, 8));
    EXPECT_EQ(parseFraction("0"), Rational(0));
}

TEST(QuantityText, RefusesOtherNumbers)
{
    for (const char* text :
         {"",        " ",      "x",           "1/0",    "-1",     "+1",     "1e3",
          ".5",      "1.",     "1 2",         "1  1/2", "1/2/3",  "0.1234", "1 0.5",
          "1000001", "1/1001", "12345678901", "½",      "1 1/2 ", "nan"}) {
        EXPECT_EQ(parseFraction(text), std::nullopt) << text;
    }
}

TEST(QuantityText, ReadsAndWritesAmounts)
{
    for (const char* text : {"400 g", "1/2 piece", "2 1/2 tbsp", "pinch", "2 pinch", "to taste",
                             "1 l", "1 ml", "0 g", "1/3 tsp", "2-3 clove", "1 1/2-2 US cup",
                             "2 US tsp", "1 imperial pint", "8 oz", "10 US fl oz", "1-2 pinch"}) {
        const auto amount = parseAmount(text);
        ASSERT_TRUE(amount) << text;
        EXPECT_EQ(amountText(*amount), text);
    }
    EXPECT_EQ(amountText(*parseAmount("1.2 kg")), "1 1/5 kg");
    EXPECT_EQ(amountText(*parseAmount("1 pinch")), "pinch");
    for (const char* text :
         {"", "g", "400", "400g", "400  g", "a piece", "400 G", "3 cups", "3 cup", " g", "3-2 g",
          "2-2 g", "-2 g", "2- g", "1-2-3 g", "2 US US cup", "2 - 3 g"}) {
        EXPECT_EQ(parseAmount(text), std::nullopt) << text;
    }
}

TEST(QuantityText, ReadsLengthsOfTime)
{
    EXPECT_EQ(parseMinutes("90 min"), Minutes{90});
    EXPECT_EQ(parseMinutes("1 h 30 min"), Minutes{90});
    EXPECT_EQ(parseMinutes("1 day 2 h"), Minutes{26 * 60});
    EXPECT_EQ(parseMinutes("3 days"), Minutes{3 * 1440});
    for (const char* text : {"", "h", "30", "30 min 1 h", "1 h 1 h", "1.5 h", "-5 min", "1 week",
                             "999999999 days", "1 h ", "1h"}) {
        EXPECT_EQ(parseMinutes(text), std::nullopt) << text;
    }
}

TEST(Decimal, IsTakenAsItIsWritten)
{
    EXPECT_EQ(wholeAt(parseDecimal("150.5"), 1), 1505);
    EXPECT_EQ(wholeAt(parseDecimal("-0.3"), 1), -3);
    EXPECT_EQ(wholeAt(parseDecimal("1.5e2"), 1), 1500);
    EXPECT_EQ(wholeAt(parseDecimal("100e-2"), 0), 1);
    EXPECT_EQ(wholeAt(parseDecimal("0.0"), 1), 0);
    EXPECT_EQ(wholeAt(parseDecimal("0.05"), 1), std::nullopt);
    EXPECT_EQ(wholeAt(parseDecimal("1e400"), 1), std::nullopt);
}

TEST(Decimal, IsWrittenWithoutZerosAtTheEnd)
{
    EXPECT_EQ(decimalText(1505, 1), "150.5");
    EXPECT_EQ(decimalText(1500, 1), "150");
    EXPECT_EQ(decimalText(-3, 1), "-0.3");
    EXPECT_EQ(decimalText(12'345, 3), "12.345");
    EXPECT_EQ(decimalText(-12'340, 3), "-12.34");
    EXPECT_EQ(decimalText(7, 0), "7");
}

} // namespace

} // namespace suppertide
