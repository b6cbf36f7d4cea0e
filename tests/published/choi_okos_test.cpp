// Y. Choi, M. R. Okos 1986, as printed in ASHRAE Refrigeration, “Thermal properties of foods”,
// Tables 1 and 2; compositions from USDA SR.
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "core/science/food_properties.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(ChoiOkos, ComponentsAreThoseOfTheTablesAtZeroAndAtAHundredDegrees)
{
    struct Row
    {
        const char* name;
        Component component;
        double k[3];
        double density[3];
        double cp[3]; // kJ/(kg·K)
    };
    constexpr Row rows[] = {
        {"water",
         Component::Water,
         {0.57109, 1.7625e-3, -6.7036e-6},
         {997.18, 3.1439e-3, -3.7574e-3},
         {4.1762, -9.0864e-5, 5.4731e-6}},
        {"ice",
         Component::Ice,
         {2.2196, -6.2489e-3, 1.0154e-4},
         {916.89, -0.13071, 0},
         {2.0623, 6.0769e-3, 0}},
        {"protein",
         Component::Protein,
         {0.17881, 1.1958e-3, -2.7178e-6},
         {1329.9, -0.51840, 0},
         {2.0082, 1.2089e-3, -1.3129e-6}},
        {"fat",
         Component::Fat,
         {0.18071, -2.7604e-4, -1.7749e-7},
         {925.59, -0.41757, 0},
         {1.9842, 1.4733e-3, -4.8008e-6}},
        {"carbohydrate",
         Component::Carbohydrate,
         {0.20141, 1.3874e-3, -4.3312e-6},
         {1599.1, -0.31046, 0},
         {1.5488, 1.9625e-3, -5.9399e-6}},
        {"fibre",
         Component::Fibre,
         {0.18331, 1.2497e-3, -3.1683e-6},
         {1311.5, -0.36589, 0},
         {1.8459, 1.8306e-3, -4.6509e-6}},
        {"ash",
         Component::Ash,
         {0.32962, 1.4011e-3, -2.9069e-6},
         {2423.8, -0.28063, 0},
         {1.0926, 1.8896e-3, -3.6817e-6}},
    };
    test::Deviation worst{"Choi & Okos 1986, components"};
    constexpr double exact = 1e-12; // the same polynomials
    for (const Row& row : rows) {
        for (const double t : {0.0, 5.0, 60.0, 100.0, 150.0}) {
            const auto p = componentProperties(row.component, t).value();
            const auto at = [t](const double(&c)[3]) { return c[0] + c[1] * t + c[2] * t * t; };
            worst.nearShare(p.conductivity, at(row.k), exact, std::string{"2.5 k "} + row.name);
            worst.nearShare(p.density, at(row.density), exact, std::string{"2.5 ρ "} + row.name);
            worst.nearShare(p.heatCapacity, 1000.0 * at(row.cp), exact,
                            std::string{"2.5 cp "} + row.name);
        }
    }
    // Fat conducts less the warmer it is: copies that drop the sign are in circulation.
    EXPECT_LT(componentProperties(Component::Fat, 60.0).value().conductivity,
              componentProperties(Component::Fat, 5.0).value().conductivity);
}

TEST(ChoiOkos, FoodsAreThoseComputedFromTheTables)
{
    struct Row
    {
        const char* name;
        double t;
        Composition food;
        double density;
        double cp;
        double k;
        double diffusivity; // 1e-7 m²/s
        double kDigit;
    };
    const Composition beef{.7173, .2207, .0520, 0, 0, .0104};
    const Composition potato{.7934, .0202, .0009, .1527, .022, .0109};
    const Composition chicken{.7486, .2309, .0124, 0, 0, .0102};
    const Row rows[] = {{"lean beef 5 °C", 5, beef, 1056.8, 3.555, 0.4854, 1.292, 0.0001},
                        {"lean beef 60 °C", 60, beef, 1040.5, 3.583, 0.5494, 1.473, 0.0001},
                        {"potato 20 °C", 20, potato, 1074.9, 3.652, 0.5494, 1.400, 0.0001},
                        {"chicken breast 5 °C", 5, chicken, 1061.1, 3.627, 0.500, 1.299, 0.001}};
    // The figures are for the parts as they are printed, which make 1.0001…1.0021; ours are scaled
    // to 1. That divides volume and heat by the sum and leaves conductivity and diffusivity.
    // Tolerance: half a digit.
    test::Deviation worst{"Choi & Okos 1986, foods"};
    for (const Row& row : rows) {
        const double sum = row.food.sum();
        const auto food = foodProperties(row.food, row.t).value();
        const std::string name{row.name};
        worst.near(food.density / sum, row.density, 0.051, "2.5 ρ " + name);
        worst.near(food.heatCapacity * sum / 1000.0, row.cp, 0.00051, "2.5 cp " + name);
        worst.near(food.conductivity, row.k, 0.51 * row.kDigit, "2.5 k " + name);
        worst.near(1e7 * food.diffusivity(), row.diffusivity, 0.00051, "2.5 α " + name);
        EXPECT_LT(food.conductivityAcross, food.conductivity);
    }
}

} // namespace
} // namespace suppertide::science
