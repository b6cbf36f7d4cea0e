// R. W. Dickerson, R. B. Read, Cooling rates of foods, J. Milk and Food Technology (1973): time
// goes as the square of the shortest dimension.
#include <gtest/gtest.h>

#include "core/science/chilling.h"
#include "core/science/transient_series.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(DickersonRead, DoubledDepthTakesFourTimesAsLong)
{
    test::Deviation worst{"Dickerson & Read, time by depth"};
    // Exact where the surface is held cold (moving water and ice, h endless).
    const auto seconds = [](double depth) {
        return secondsToCentre({Shape::Slab, 0.5 * depth, 0.55, 1.4e-7, 1e6}, 57.2, 4.0, 21.1)
            .value();
    };
    // With h 1e6 the surface still holds back 0.001 %.
    worst.nearShare(seconds(0.10) / seconds(0.05), 4.0, 1e-4, "2.8 scaling");
}

// 2.8 extreme: 8 gallons of white sauce 105 → 57 °F in 25 h, 14 gallons of stew 115 → 50 °F in 84
// h. Containers and air are not told, so only the order can be compared: tall pots, not stirred, in
// a fridge of 37 to 40 °F; half to twice.
TEST(DickersonRead, LargePotsTakeDays)
{
    const Composition sauce{0.84, 0.04, 0.026, 0.082, 0.0, 0.012};
    const auto hours = [&](double litres, double diameter, double from, double to) {
        return timeToChill({.food = sauce,
                            .litres = litres,
                            .diameter = diameter,
                            .from = from,
                            .to = to,
                            .place = Place::Fridge,
                            .placeTemperature = 3.5})
            .value();
    };
    const auto eight = hours(30.3, 0.34, 40.6, 13.9);
    EXPECT_GT(eight.most / 60.0, 25.0 / 2.0);
    EXPECT_LT(eight.least / 60.0, 25.0 * 2.0);
    const auto fourteen = hours(53.0, 0.41, 46.1, 10.0);
    EXPECT_GT(fourteen.most / 60.0, 84.0 / 2.0);
    EXPECT_LT(fourteen.least / 60.0, 84.0 * 2.0);
}

} // namespace
} // namespace suppertide::science
