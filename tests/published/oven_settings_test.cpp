// Oven settings: gas marks (several charts), fan ovens (NSW Health), high-altitude cakes
// (university extension table), and rules of common practice for pre-heating and cooling.
#include <gtest/gtest.h>

#include "core/science/high_altitude_cakes.h"
#include "core/science/oven_curve.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(OvenSettings, GasMarksInBothUnits)
{
    test::Deviation worst{"gas mark charts: °F, °C, dials"};
    struct Row
    {
        double mark;
        double fahrenheit;
        double celsius;
        double dialLeast;
        double dialMost;
    };
    for (const Row& row :
         {Row{0.25, 225, 107, 110, 110}, Row{0.5, 250, 121, 120, 130}, Row{1, 275, 135, 140, 140},
          Row{2, 300, 149, 150, 150}, Row{3, 325, 163, 160, 170}, Row{4, 350, 177, 180, 180},
          Row{5, 375, 191, 190, 190}, Row{6, 400, 204, 200, 200}, Row{7, 425, 218, 220, 220},
          Row{8, 450, 232, 230, 230}, Row{9, 475, 246, 240, 240}}) {
        SCOPED_TRACE(row.mark);
        worst.near(fahrenheitOfGasMark(row.mark).value(), row.fahrenheit, 1e-12,
                   "2.10 gas mark °F");
        const double celsius = celsiusOfGasMark(row.mark).value();
        worst.near(celsius, row.celsius, 0.5, "2.10 gas mark °C");
        // Dials round by custom, to 10 °C either way.
        worst.within(celsius, row.dialLeast - 6.2, row.dialMost + 6.2, "2.10 gas mark on dials");
    }
    EXPECT_FALSE(fahrenheitOfGasMark(0));
    EXPECT_FALSE(fahrenheitOfGasMark(1.5));
    EXPECT_FALSE(fahrenheitOfGasMark(10));
}

TEST(OvenSettings, FanOvensAreSetLower)
{
    test::Deviation worst{"NSW Health, fan ovens: °C"};
    worst.near(180 - fanSetting(180).value(), 20, 1e-12, "2.10 fan");
    worst.near(conventionalSetting(fanSetting(200).value()).value(), 200, 1e-12,
               "2.10 fan and back");
}

TEST(OvenSettings, PreheatingAndCoolingAsCommonPracticeHasThem)
{
    test::Deviation worst{"common practice, ovens: min, °C/min"};
    const auto usual = usualPreheat(175).value();
    worst.near(usual.least, 10, 1e-12, "2.10 pre-heat 175 °C, least");
    worst.near(usual.most, 15, 1e-12, "2.10 pre-heat 175 °C, most");
    worst.near(usualPreheat(225).value().likely - usual.likely, 5, 1e-12,
               "2.10 pre-heat, 50 °C more");
    worst.within(OvenCooling::usual(20, false).rateAt(200), 2, 3, "2.10 cool-down, shut");
    worst.within(OvenCooling::usual(20, true).rateAt(200), 5, 8, "2.10 cool-down, ajar");
}

TEST(OvenSettings, HighAltitudeCakesAsInTheExtensionTable)
{
    test::Deviation worst{"extension table, high-altitude cakes"};
    constexpr double exact = 1e-12;
    const auto row = [&worst](double value, double printed, const char* name) {
        worst.near(value, printed, exact, name);
    };
    const auto middle = cakeChangesAt(1500).value().value();
    row(middle.feet, 5000, "2.10 5000 ft");
    row(middle.lessPowder.least, 1.0 / 8, "2.10 5000 ft powder least");
    row(middle.lessPowder.most, 1.0 / 4, "2.10 5000 ft powder most");
    row(middle.lessSugar.value().least, 0, "2.10 5000 ft sugar least");
    row(middle.lessSugar.value().most, 2, "2.10 5000 ft sugar most");
    row(middle.moreLiquid.least, 2, "2.10 5000 ft liquid least");
    row(middle.moreLiquid.most, 4, "2.10 5000 ft liquid most");
    row(middle.hotterOven.value().least, 15, "2.10 5000 ft oven least");
    row(middle.hotterOven.value().most, 25, "2.10 5000 ft oven most");
    const auto low = cakeChangesAt(914).value().value();
    row(low.lessPowder.least, 1.0 / 8, "2.10 3000 ft powder");
    row(low.moreLiquid.least, 1, "2.10 3000 ft liquid least");
    row(low.moreLiquid.most, 2, "2.10 3000 ft liquid most");
    const auto high = cakeChangesAt(2134).value().value();
    row(high.lessPowder.least, 1.0 / 4, "2.10 7000 ft powder");
    row(high.moreLiquid.least, 3, "2.10 7000 ft liquid least");
    row(high.moreLiquid.most, 4, "2.10 7000 ft liquid most");
    EXPECT_EQ(cakeChangesAt(300).value(), std::nullopt);
    EXPECT_FALSE(cakeChangesAt(9000));
}

} // namespace
} // namespace suppertide::science
