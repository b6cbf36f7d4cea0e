// Y. A. Çengel, Heat and Mass Transfer, Example 4-3 (boiling an egg) and problems of chapter 4.
#include <gtest/gtest.h>

#include <cmath>

#include "core/science/eigenvalues.h"
#include "core/science/transient_series.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

// A sphere of 5 cm, 5 °C, in water of 95 °C, h 1200 W/(m²·K), k 0.627 W/(m·K), α 0.151e-6 m²/s,
// until 70 °C.
constexpr Conduction egg{Shape::Sphere, 0.025, 0.627, 0.151e-6, 1200.0};

double oneTermSeconds(double length)
{
    const auto one = oneTerm(Shape::Sphere, egg.coefficient * length / egg.conductivity).value();
    const double theta = (70.0 - 95.0) / (5.0 - 95.0);
    return std::log(one.coefficient / theta) / (one.zeta * one.zeta) * length * length /
           egg.diffusivity;
}

TEST(CengelEgg, TakesFourteenAndAHalfMinutes)
{
    test::Deviation worst{"Çengel, Example 4-3: egg, s"};
    // The book reads its table straight between two lines, which is worth 3 s.
    const double full = secondsToCentre(egg, 5.0, 95.0, 70.0).value();
    worst.near(oneTermSeconds(0.025), 865.0, 4.0, "2.3 egg, printed, one term");
    worst.near(full, 865.0, 4.0, "2.3 egg, printed, full series");
    worst.near(full / 60.0, 14.4, 0.05, "2.3 egg, minutes");
    // Computed independently for one term and for the series, to a tenth of a second.
    worst.near(oneTermSeconds(0.025), 862.6, 0.1, "2.3 egg, one term");
    worst.near(full, 861.5, 0.1, "2.3 egg, series");
}

TEST(CengelEgg, IsNotTheAnswerOfVolumeOverAreaPutIntoOneTerm)
{
    // Solutions in circulation use L = D/6 with the sphere's coefficients; that is minutes off.
    const double wrong = oneTermSeconds(0.05 / 6.0);
    const double ours = secondsToCentre(egg, 5.0, 95.0, 70.0).value();
    EXPECT_GT(std::abs(wrong - ours), 300.0);
}

TEST(CengelEgg, CoefficientsAreThoseOfTheSolvedProblems)
{
    test::Deviation worst{"Çengel, chapter 4 solutions: ζ₁ and C₁"};
    const auto slab = oneTerm(Shape::Slab, 0.2).value();
    worst.near(slab.zeta, 0.4328, 0.0001, "2.1 slab Bi 0.2 ζ");
    worst.near(slab.coefficient, 1.0311, 0.0001, "2.1 slab Bi 0.2 C");
    // The book goes straight from the line of Bi 40 to that of 50 in its table; so does this row.
    const auto low = oneTerm(Shape::Sphere, 40.0).value();
    const auto high = oneTerm(Shape::Sphere, 50.0).value();
    const auto between = [](double a, double b) { return a + 0.78 * (b - a); };
    worst.near(between(low.zeta, high.zeta), 3.0754, 0.0001, "2.1 sphere Bi 47.8 ζ");
    worst.near(between(low.coefficient, high.coefficient), 1.9958, 0.0001, "2.1 sphere Bi 47.8 C");
    const auto exact = oneTerm(Shape::Sphere, 47.8).value();
    EXPECT_GT(exact.zeta, 3.0754); // ζ bends, so the straight line lies below it
    EXPECT_LT(exact.zeta, high.zeta);
}

} // namespace
} // namespace suppertide::science
