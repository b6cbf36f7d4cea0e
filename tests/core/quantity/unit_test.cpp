// Units: each by its exact definition, and by its names.
#include <gtest/gtest.h>

#include <set>

#include "core/quantity/amount.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {
namespace {

TEST(Units, HaveNamesOfTheirOwnByWhichTheyAreFound)
{
    std::set<std::string_view> symbols;
    for (const Unit unit : allUnits) {
        EXPECT_TRUE(symbols.insert(symbolOf(unit)).second) << symbolOf(unit);
        EXPECT_EQ(findUnit(symbolOf(unit)), unit) << symbolOf(unit);
        EXPECT_EQ(findUnitWord(pluralOf(unit)), unit) << pluralOf(unit);
    }
    EXPECT_EQ(findUnitWord("us CUPS"), Unit::UsCup);
    EXPECT_EQ(findUnit("cup"), std::nullopt); // of which country?
    EXPECT_EQ(findUnit(""), std::nullopt);
}

TEST(Units, ConvertWithinWhatIsMeasuredOnly)
{
    EXPECT_TRUE(isConvertible(Unit::Ounce, Unit::Kilogram));
    EXPECT_TRUE(isConvertible(Unit::UsCup, Unit::ImperialPint));
    EXPECT_TRUE(isConvertible(Unit::Inch, Unit::Centimetre));
    EXPECT_TRUE(isConvertible(Unit::Clove, Unit::Clove));
    EXPECT_FALSE(isConvertible(Unit::Clove, Unit::Head));
    EXPECT_FALSE(isConvertible(Unit::Pinch, Unit::Dash));
    EXPECT_FALSE(isConvertible(Unit::Gram, Unit::Millilitre));
    EXPECT_FALSE(isConvertible(Unit::Ounce, Unit::UsFluidOunce));
    EXPECT_EQ(inUnit({Rational{3}, Unit::Bunch}, Unit::Sprig), std::nullopt);
}

TEST(Units, ConvertThereAndBackExactly)
{
    test::forEachSeed(500, [](test::Random& random) {
        const auto any = [&random] {
            return allUnits[static_cast<std::size_t>(
                random.between(0, static_cast<std::int64_t>(allUnits.size()) - 1))];
        };
        Amount amount{Rational{random.between(1, 2000), random.between(1, 12)}, any()};
        if (random.oneIn(2)) {
            amount.upTo = amount.value + Rational{1};
        }
        const Unit other = any();
        if (const auto there = inUnit(amount, other)) {
            EXPECT_EQ(inUnit(*there, amount.unit), amount) << toText(amount);
        } else {
            EXPECT_FALSE(isConvertible(amount.unit, other));
        }
    });
}

TEST(ScaledAmount, ByAThenBEqualsByAbAlsoForRanges)
{
    test::forEachSeed(500, [](test::Random& random) {
        const Amount amount{Rational{random.between(1, 500), random.between(1, 8)}, Unit::UsCup,
                            Rational{501}};
        const Rational a{random.between(1, 60), random.between(1, 24)};
        const Rational b{random.between(1, 60), random.between(1, 24)};
        EXPECT_EQ(scaled(scaled(amount, a), b), scaled(amount, a * b));
    });
    EXPECT_EQ(scaled({Rational{2}, Unit::Clove, Rational{3}}, Rational{0}),
              (Amount{Rational{0}, Unit::Clove}));
}

TEST(AmountText, SaysARangeWithItsUnitOnce)
{
    EXPECT_EQ(toText({Rational{2}, Unit::Clove, Rational{3}}), "2–3 cloves");
    EXPECT_EQ(toText({Rational{400}, Unit::Gram, Rational{500}}), "400–500 g");
    EXPECT_EQ(toText({Rational{900}, Unit::Gram, Rational{1200}}), "900 g – 1.2 kg");
    EXPECT_EQ(toText({Rational{1, 2}, Unit::UsCup, Rational{1}}), "½–1 US cup");
    EXPECT_EQ(toText({Rational{1}, Unit::Piece, Rational{2}}), "1–2");
    EXPECT_EQ(toText({Rational{1}, Unit::Pinch, Rational{2}}), "1–2 pinches");
    // Both ends are shown alike: one number.
    EXPECT_EQ(toText({Rational{1000}, Unit::Gram, Rational{1001}}), "1 kg");
}

TEST(AmountText, HasThirdsOfACupAndWordsInTheirNumber)
{
    EXPECT_EQ(toText({Rational{1, 3}, Unit::UsCup}), "⅓ US cup");
    EXPECT_EQ(toText({Rational{5, 3}, Unit::MetricCup}), "1⅔ metric cups");
    EXPECT_EQ(toText({Rational{1, 4}, Unit::UsCup}), "¼ US cup");
    EXPECT_EQ(toText({Rational{2}, Unit::Leaf}), "2 leaves");
    EXPECT_EQ(toText({Rational{1}, Unit::Handful}), "a handful");
    EXPECT_EQ(toText({Rational{3}, Unit::Dash}), "3 dashes");
    EXPECT_EQ(toText({Rational{5}, Unit::Decilitre}), "500 ml");
}

} // namespace
} // namespace suppertide
