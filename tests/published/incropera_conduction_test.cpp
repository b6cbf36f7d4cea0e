// F. P. Incropera, D. P. DeWitt, T. L. Bergman, A. S. Lavine, Fundamentals of Heat and Mass
// Transfer, Table 5.1 (coefficients of the one-term approximation; the same as Y. A. Çengel, Heat
// and Mass Transfer, Table 4-2), and the end-of-chapter problem on how far one term holds.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/science/eigenvalues.h"
#include "core/science/transient_series.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

struct Row
{
    double biot;
    OneTerm slab;
    OneTerm cylinder;
    OneTerm sphere;
};

constexpr Row table51[] = {
    {0.01, {0.0998, 1.0017}, {0.1412, 1.0025}, {0.1730, 1.0030}},
    {0.02, {0.1410, 1.0033}, {0.1995, 1.0050}, {0.2445, 1.0060}},
    {0.1, {0.3111, 1.0161}, {0.4417, 1.0246}, {0.5423, 1.0298}},
    {0.2, {0.4328, 1.0311}, {0.6170, 1.0483}, {0.7593, 1.0592}},
    {0.5, {0.6533, 1.0701}, {0.9408, 1.1143}, {1.1656, 1.1441}},
    {1, {0.8603, 1.1191}, {1.2558, 1.2071}, {1.5708, 1.2732}},
    {2, {1.0769, 1.1785}, {1.5994, 1.3384}, {2.0288, 1.4793}},
    {5, {1.3138, 1.2402}, {1.9898, 1.5029}, {2.5704, 1.7870}},
    {7, {1.3766, 1.2532}, {2.0937, 1.5411}, {2.7165, 1.8673}},
    {10, {1.4289, 1.2620}, {2.1795, 1.5677}, {2.8363, 1.9249}},
    {20, {1.4961, 1.2699}, {2.2880, 1.5919}, {2.9857, 1.9781}},
    {40, {1.5325, 1.2723}, {2.3455, 1.5993}, {3.0632, 1.9942}},
    {50, {1.5400, 1.2727}, {2.3572, 1.6002}, {3.0788, 1.9962}},
    {100, {1.5552, 1.2731}, {2.3809, 1.6015}, {3.1102, 1.9990}},
    {infinity, {1.5708, 1.2732}, {2.4048, 1.6020}, {3.1416, 2.0000}},
};

TEST(Incropera, OneTermCoefficientsAreThoseOfTable51)
{
    constexpr double lastDigit = 0.0001; // printed to four decimals
    test::Deviation worst{"Incropera Table 5.1: ζ₁ and C₁"};
    for (const Row& row : table51) {
        const auto slab = oneTerm(Shape::Slab, row.biot).value();
        const auto cylinder = oneTerm(Shape::Cylinder, row.biot).value();
        const auto sphere = oneTerm(Shape::Sphere, row.biot).value();
        SCOPED_TRACE(row.biot);
        worst.near(slab.zeta, row.slab.zeta, lastDigit, "2.1 slab ζ");
        worst.near(slab.coefficient, row.slab.coefficient, lastDigit, "2.1 slab C");
        worst.near(cylinder.zeta, row.cylinder.zeta, lastDigit, "2.1 cylinder ζ");
        worst.near(cylinder.coefficient, row.cylinder.coefficient, lastDigit, "2.1 cylinder C");
        worst.near(sphere.zeta, row.sphere.zeta, lastDigit, "2.1 sphere ζ");
        worst.near(sphere.coefficient, row.sphere.coefficient, lastDigit, "2.1 sphere C");
    }
}

TEST(Incropera, FullSeriesOfASlabIsThatOfTheProblemOnOneTerm)
{
    constexpr double half = 0.00005 + 1e-9; // half of the last printed digit
    test::Deviation worst{"Incropera, problem on the validity of one term: θ"};
    struct Case
    {
        double biot;
        double fourier;
        double middle;
        double surface;
        double oneTermMiddle;
    };
    for (const Case& c :
         {Case{0.1, 0.1, 0.9992, 0.9653, 1.0063}, Case{0.1, 1, 0.9224, 0.8781, 0.9224},
          Case{1, 0.1, 0.9931, 0.7236, 1.0393}, Case{1, 1, 0.5339, 0.3482, 0.5339}}) {
        const auto series = TransientSeries::make(Shape::Slab, c.biot).value();
        const auto one = oneTerm(Shape::Slab, c.biot).value();
        SCOPED_TRACE(testing::Message() << "Bi " << c.biot << " Fo " << c.fourier);
        worst.near(series.centre(c.fourier).value(), c.middle, half, "2.2 middle");
        worst.near(series.surface(c.fourier).value(), c.surface, half, "2.2 surface");
        worst.near(one.coefficient * std::exp(-one.zeta * one.zeta * c.fourier), c.oneTermMiddle,
                   half, "2.2 one term");
    }
}

TEST(Incropera, OneTermHoldsWithinTwoPerCentFromAFourierNumberOfAFifth)
{
    for (const Shape shape : {Shape::Slab, Shape::Cylinder, Shape::Sphere}) {
        for (const double biot : {0.01, 0.1, 1.0, 10.0, 100.0}) {
            const auto series = TransientSeries::make(shape, biot).value();
            const auto one = oneTerm(shape, biot).value();
            const double exact = series.centre(0.2).value();
            const double approximate = one.coefficient * std::exp(-one.zeta * one.zeta * 0.2);
            EXPECT_NEAR(approximate / exact, 1.0, 0.02) << biot;
        }
    }
}

} // namespace
} // namespace suppertide::science
