// V. E. Sweat, Trans. ASAE 18 (1975): conductivity of meat; V. E. Sweat, C. G. Haugh, W. J.
// Stadelman, J. Food Science 38 (1973): measured conductivity of white chicken meat.
#include <gtest/gtest.h>

#include "core/science/food_properties.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(SweatConductivity, OfMeatFollowsItsWater)
{
    test::Deviation worst{"Sweat 1975, conductivity of meat: W/(m·K)"};
    worst.near(conductivityOfMeat(0.683).value(), 0.485, 0.0005, "2.3 k meat, printed");
    worst.near(conductivityOfMeat(0.683).value(), 0.4847, 0.00005, "2.3 k meat, computed");
}

TEST(SweatConductivity, OfWhiteChickenLiesWithinTenPerCentOfTheModel)
{
    test::Deviation worst{"Sweat et al. 1973, white chicken meat: W/(m·K)"};
    const Composition chicken{0.7486, 0.2309, 0.0124, 0.0, 0.0, 0.0102};
    // Stated error of the mixing rule: 10 %.
    for (const double t : {5.0, 10.0, 20.0}) {
        worst.nearShare(foodProperties(chicken, t).value().conductivity, 0.476 + 0.00060 * t, 0.10,
                        "2.5 white chicken");
    }
    worst.nearShare(foodProperties(chicken, 5.0).value().conductivity, 0.479 * 1.04, 0.01,
                    "2.5 white chicken, 4 % high at 5 °C");
}

} // namespace
} // namespace suppertide::science
