// D, z and F: University of Melbourne (exercises of food microbiology); a canning text (F₀ by equal
// steps); closed forms computed independently; lumped bodies: Incropera et al.
#include <gtest/gtest.h>

#include <cmath>

#include "core/science/eigenvalues.h"
#include "core/science/lethality.h"
#include "core/science/transient_series.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(LethalityTextbooks, DAndZ)
{
    test::Deviation worst{"University of Melbourne, D and z: min"};
    const double d = dFromCounts(12, 1e6, 1e2).value();
    worst.near(d, 3, 1e-12, "2.9 D by counts");
    worst.near(5 * d, 15, 1e-12, "2.9 five decimal reductions");
    const HeatResistance germ{"", "", "", 4.5, 150, 10, 6, ""};
    worst.near(germ.dAt(160), 0.45, 1e-12, "2.9 z 10, D₁₆₀");
}

TEST(LethalityTextbooks, EqualStepsAndClosedForms)
{
    test::Deviation worst{"canning text and closed forms, F: min"};
    // Nine rates of equal steps of 5 min whose sum is 2.925: constant stretches, so ΣL·Δt. Printed
    // to a tenth.
    double sum = 0;
    for (int i = 0; i < 9; ++i) {
        const double celsius = 121.1 + 10.0 * std::log10(2.925 / 9.0);
        sum += lethality({{0, celsius}, {5, celsius}}, 121.1, 10).value();
    }
    worst.near(sum, 14.6, 0.05, "2.9 F₀ by equal steps");
    worst.near(lethality({{0, 60}, {10, 70}}, 70, 7.5).value(), 3.106, 0.0005, "2.9 ramp");
    const std::vector<TimeTemperature> profile{{0, 50},  {5, 55},  {10, 60}, {15, 65}, {20, 68},
                                               {25, 70}, {30, 70}, {35, 66}, {40, 60}};
    const double exact = lethality(profile, 70, 7.5).value();
    worst.near(exact, 14.75, 0.005, "2.9 profile, straight lines");
    double trapezoid = 0;
    for (std::size_t i = 1; i < profile.size(); ++i) {
        trapezoid += 2.5 * (lethalRate(profile[i - 1].celsius, 70, 7.5).value() +
                            lethalRate(profile[i].celsius, 70, 7.5).value());
    }
    worst.near(trapezoid, 15.65, 0.005, "2.9 profile, trapezoids on the rate");
    EXPECT_GT(exact / 2.0, 7.0); // passes 70 °C for 2 min seven times over
}

// 2.9 lumped body: for Bi < 0.1 with L = V/A, T = T∞ + ΔT·e^(−hAt/ρVc) is within 5 %. That holds
// for the mean of all three shapes and for middle and surface of a slab; early on, the middle of a
// sphere lags by 8 %.
TEST(LethalityTextbooks, LumpedBodiesWithinFivePerCent)
{
    for (const Shape shape : {Shape::Slab, Shape::Cylinder, Shape::Sphere}) {
        const double times = areaExponent(shape) + 1.0; // L/(V/A)
        const double biot = 0.1 * times;                // with L
        const auto series = TransientSeries::make(shape, biot).value();
        for (const double fourier : {0.2, 0.5, 1.0, 2.0, 4.0}) {
            const double lumped = std::exp(-times * biot * fourier);
            EXPECT_NEAR(series.mean(fourier).value(), lumped, 0.05);
            if (shape == Shape::Slab) {
                EXPECT_NEAR(series.centre(fourier).value(), lumped, 0.05);
                EXPECT_NEAR(series.surface(fourier).value(), lumped, 0.05);
            }
        }
    }
}

} // namespace
} // namespace suppertide::science
