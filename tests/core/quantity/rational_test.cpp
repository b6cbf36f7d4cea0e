#include <gtest/gtest.h>

#include <limits>

#include "core/base/contracts.h"
#include "core/quantity/amount.h"
#include "core/quantity/quantity.h"
#include "core/quantity/rational.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {
namespace {

Rational anyRational(test::Random& random)
{
    return Rational{random.between(-400, 400), random.between(1, 60)};
}

TEST(Rational, IsKeptInLowestTerms)
{
    EXPECT_EQ(Rational(6, 4), Rational(3, 2));
    EXPECT_EQ(Rational(-6, -4).text(), "3/2");
    EXPECT_EQ(Rational(6, -4).text(), "-3/2");
    EXPECT_EQ(Rational(0, 9), Rational{});
}

TEST(Rational, KeepsTheLawsOfAField)
{
    test::forEachSeed(500, [](test::Random& random) {
        const Rational a = anyRational(random);
        const Rational b = anyRational(random);
        const Rational c = anyRational(random);
        EXPECT_EQ((a + b) + c, a + (b + c));
        EXPECT_EQ((a * b) * c, a * (b * c));
        EXPECT_EQ(a * (b + c), a * b + a * c);
        EXPECT_EQ((a - b) + b, a);
        if (b != Rational{0}) {
            EXPECT_EQ(a / b * b, a);
        }
        EXPECT_EQ(a < b, a.toDouble() < b.toDouble());
    });
}

TEST(Rational, ScalingTwiceEqualsScalingByTheProduct)
{
    test::forEachSeed(500, [](test::Random& random) {
        const Amount amount{anyRational(random), Unit::Gram};
        const Rational a = anyRational(random);
        const Rational b = anyRational(random);
        EXPECT_EQ(scaled(scaled(amount, a), b), scaled(amount, a * b));
    });
}

TEST(Rational, RoundsAHalfToTheEvenNeighbour)
{
    EXPECT_EQ(Rational(1, 2).rounded(), 0);
    EXPECT_EQ(Rational(3, 2).rounded(), 2);
    EXPECT_EQ(Rational(5, 2).rounded(), 2);
    EXPECT_EQ(Rational(-1, 2).rounded(), 0);
    EXPECT_EQ(Rational(-3, 2).rounded(), -2);
    EXPECT_EQ(Rational(7, 3).rounded(), 2);
    EXPECT_EQ(Rational(7, 3).ceiled(), 3);
    EXPECT_EQ(Rational(-7, 3).ceiled(), -2);
}

TEST(Rational, RefusesWhatDoesNotFit)
{
    constexpr auto most = std::numeric_limits<std::int64_t>::max();
    EXPECT_THROW(static_cast<void>(Rational(most) * Rational(2)), ContractViolation);
    EXPECT_THROW(static_cast<void>(Rational(1, 0)), ContractViolation);
    EXPECT_THROW(static_cast<void>(Rational(1) / Rational(0)), ContractViolation);
    EXPECT_EQ(Rational(most) / Rational(most), Rational(1));
}

TEST(Amount, ReadsAsAKitchenScaleShowsIt)
{
    const struct
    {
        Amount amount;
        const char* text;
    } cases[] = {
        {{Rational(96, 5), Unit::Gram}, "19 g"},
        {{Rational(233), Unit::Gram}, "235 g"},
        {{Rational(1234), Unit::Gram}, "1.23 kg"},
        {{Rational(6, 5), Unit::Kilogram}, "1.2 kg"},
        {{Rational(999), Unit::Millilitre}, "1 l"},
        {{Rational(5, 2), Unit::Tablespoon}, "2½ tbsp"},
        {{Rational(1, 10), Unit::Teaspoon}, "¼ tsp"},
        {{Rational(3), Unit::Piece}, "3"},
        {{Rational(1), Unit::Pinch}, "a pinch"},
        {{Rational(0), Unit::ToTaste}, "to taste"},
        {{Rational(1, 3), Unit::Gram}, "1 g"},
    };
    for (const auto& each : cases) {
        EXPECT_EQ(toText(each.amount), each.text);
    }
}

TEST(Amount, FindsEveryUnitByItsSymbol)
{
    for (const Unit unit : allUnits) {
        EXPECT_EQ(findUnit(symbolOf(unit)), unit);
    }
    EXPECT_FALSE(findUnit("furlong"));
}

TEST(Celsius, SubtractsToADifference)
{
    EXPECT_EQ(220_degC - 150_degC, TemperatureDelta::degrees(70));
    EXPECT_EQ(150_degC + TemperatureDelta::degrees(70), 220_degC);
    EXPECT_EQ(Celsius::tenths(1445).wholeDegrees(), 145);
    EXPECT_EQ(Celsius::tenths(-185).wholeDegrees(), -19);
}

TEST(Grams, ScaleHalfToEven)
{
    EXPECT_EQ(grams(250) * Rational(3, 2), grams(375));
    EXPECT_EQ(Grams::ofSmallest(1) * Rational(1, 2), Grams::ofSmallest(0));
    EXPECT_EQ(Grams::ofSmallest(3) * Rational(1, 2), Grams::ofSmallest(2));
}

} // namespace
} // namespace suppertide
