// Amounts and fractions at their edges.
#include <gtest/gtest.h>

#include <limits>

#include "core/base/contracts.h"
#include "core/quantity/amount.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {
namespace {

TEST(RationalRounding, StaysWithinAHalfAndCeilingWithinOne)
{
    test::forEachSeed(500, [](test::Random& random) {
        const Rational value{random.between(-1'000'000, 1'000'000), random.between(1, 997)};
        const Rational off = value - Rational{value.rounded()};
        EXPECT_LE(off, Rational(1, 2));
        EXPECT_GE(off, Rational(-1, 2));
        const Rational above = Rational{value.ceiled()} - value;
        EXPECT_GE(above, Rational{0});
        EXPECT_LT(above, Rational{1});
    });
}

TEST(RationalRounding, HoldsAtTheEndsOfItsRange)
{
    constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max();
    EXPECT_EQ(Rational{most}.rounded(), most);
    EXPECT_EQ(Rational{-most}.ceiled(), -most);
    EXPECT_EQ(Rational(most, 2).rounded(), most / 2 + 1); // …3.5 goes to the even …4
    EXPECT_EQ(Rational(0, std::numeric_limits<std::int64_t>::min()), Rational{0});
    EXPECT_THROW(static_cast<void>(Rational{std::numeric_limits<std::int64_t>::min()}),
                 ContractViolation);
    EXPECT_LT(Rational(most - 1, most), Rational(most, most - 1));
}

TEST(AmountText, ShowsWhatIsThereAndNeverNothing)
{
    test::forEachSeed(500, [](test::Random& random) {
        const Amount amount{Rational{random.between(1, 5'000), random.between(1, 400)},
                            allUnits[static_cast<std::size_t>(random.between(0, 6))]};
        const std::string text = toText(amount);
        EXPECT_NE(text.substr(0, 2), "0 ") << amount.value.text();
        EXPECT_NE(text, "0") << amount.value.text();
    });
}

TEST(AmountText, IsOffByNoMoreThanAScaleShows)
{
    // As amount.h has it: 1 g below 100 g, 5 g below 1 kg, 10 g above.
    test::forEachSeed(500, [](test::Random& random) {
        const std::int64_t grams = random.between(1, 20'000);
        const std::string text = toText({Rational{grams}, Unit::Gram});
        const double shown = std::stod(text) * (text.ends_with(" kg") ? 1000 : 1);
        const double step = grams < 100 ? 1 : grams < 1000 ? 5 : 10;
        EXPECT_NEAR(shown, static_cast<double>(grams), step / 2 + 1e-6) << text;
    });
}

TEST(AmountText, ReadsTheSameInLargeAndInSmallUnits)
{
    // The litre is a thousand millilitres, the kilogram a thousand grams (NIST Handbook 44,
    // Appendix C, "Tables of Metric Units of Measurement").
    test::forEachSeed(200, [](test::Random& random) {
        const Rational value{random.between(1, 9'000), random.between(1, 60)};
        EXPECT_EQ(toText({value, Unit::Kilogram}), toText({value * Rational{1000}, Unit::Gram}));
        EXPECT_EQ(toText({value, Unit::Litre}), toText({value * Rational{1000}, Unit::Millilitre}));
    });
}

} // namespace
} // namespace suppertide
