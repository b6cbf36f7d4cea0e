// Units against NIST Special Publication 811 (2008), B.8, and NIST Handbook 44, Appendix C; the
// imperial ones against the Weights and Measures Act 1985, Schedule 1 (from memory). All exact.
#include <gtest/gtest.h>

#include "core/quantity/amount.h"
#include "tests/published/deviation.h"

namespace suppertide {
namespace {

struct UnitRow
{
    Unit unit;
    double size; // g, ml or mm
};

TEST(NistUnits, AreExactTo12Digits)
{
    test::Deviation worst{"units: NIST SP 811, HB 44; Weights and Measures Act 1985"};
    for (const UnitRow& row : {UnitRow{Unit::UsGallon, 3785.411784},
                               UnitRow{Unit::UsQuart, 946.352946},
                               UnitRow{Unit::UsPint, 473.176473},
                               UnitRow{Unit::UsCup, 236.5882365},
                               UnitRow{Unit::UsFluidOunce, 29.5735295625},
                               UnitRow{Unit::UsTablespoon, 14.78676478125},
                               UnitRow{Unit::UsTeaspoon, 4.92892159375},
                               UnitRow{Unit::Pound, 453.59237},
                               UnitRow{Unit::Ounce, 28.349523125},
                               UnitRow{Unit::ImperialGallon, 4546.09},
                               UnitRow{Unit::ImperialQuart, 1136.5225},
                               UnitRow{Unit::ImperialPint, 568.26125},
                               UnitRow{Unit::ImperialFluidOunce, 28.4130625},
                               UnitRow{Unit::Inch, 25.4},
                               UnitRow{Unit::MetricCup, 250},
                               UnitRow{Unit::Tablespoon, 15},
                               UnitRow{Unit::AustralianTablespoon, 20},
                               UnitRow{Unit::Teaspoon, 5},
                               UnitRow{Unit::Centilitre, 10},
                               UnitRow{Unit::Decilitre, 100},
                               UnitRow{Unit::Litre, 1000},
                               UnitRow{Unit::Kilogram, 1000}}) {
        worst.near(sizeOf(row.unit).toDouble(), row.size, row.size * 1e-13,
                   symbolOf(row.unit).data());
    }
}

TEST(NistUnits, AreExactAsFractions)
{
    // 231 cubic inches of 16.387 064 ml.
    EXPECT_EQ(sizeOf(Unit::UsGallon), Rational(231) * Rational(16'387'064, 1'000'000));
    EXPECT_EQ(sizeOf(Unit::UsCup) * Rational{16}, sizeOf(Unit::UsGallon));
    EXPECT_EQ(sizeOf(Unit::UsTeaspoon) * Rational{48}, sizeOf(Unit::UsCup));
    EXPECT_EQ(sizeOf(Unit::Ounce) * Rational{16}, sizeOf(Unit::Pound));
    EXPECT_EQ(sizeOf(Unit::ImperialFluidOunce) * Rational{20}, sizeOf(Unit::ImperialPint));
    // A US pint is not an imperial one, and an ounce no fluid ounce.
    EXPECT_NE(sizeOf(Unit::UsPint), sizeOf(Unit::ImperialPint));
    EXPECT_EQ(inUnit({Rational{1}, Unit::Ounce}, Unit::UsFluidOunce), std::nullopt);
}

} // namespace
} // namespace suppertide
