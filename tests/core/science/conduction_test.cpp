// The exact series and the finite volumes are two ways to one answer: each is held against the
// other.
#include <gtest/gtest.h>

#include <cmath>

#include "core/science/eigenvalues.h"
#include "core/science/heated_body.h"
#include "core/science/transient_series.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::science {
namespace {

constexpr double halfThickness = 0.03; // m
constexpr double conductivity = 0.5;   // W/(m·K)
constexpr double diffusivity = 1.4e-7; // m²/s
constexpr Shape shapes[] = {Shape::Slab, Shape::Cylinder, Shape::Sphere};

HeatMaterial food()
{
    return HeatMaterial::constant(conductivity, conductivity / diffusivity).value();
}

HeatedBody bodyOf(double beta, double start)
{
    return HeatedBody::make(beta, halfThickness, food(), start).value();
}

double secondsAt(double fourier)
{
    return fourier * halfThickness * halfThickness / diffusivity;
}

TEST(Conduction, FiniteVolumesAgreeWithTheSeriesToATenthOfADegreeOfAHundred)
{
    for (const Shape shape : shapes) {
        for (int b = 0; b <= 24; ++b) {
            const double biot = 0.01 * std::pow(10.0, b / 6.0); // 0.01…100
            const auto series = TransientSeries::make(shape, biot).value();
            auto body = bodyOf(areaExponent(shape), 100.0);
            const Exchange place{0.0, biot * conductivity / halfThickness};
            double passed = 0.0;
            for (int f = 0; f <= 23; ++f) {
                const double fourier = 0.01 * std::pow(10.0, f / 10.0); // 0.01…2
                ASSERT_TRUE(body.advance(place, secondsAt(fourier) - passed));
                passed = secondsAt(fourier);
                SCOPED_TRACE(testing::Message()
                             << "Bi " << biot << " Fo " << fourier << " β " << areaExponent(shape));
                EXPECT_NEAR(body.centre(), 100.0 * series.centre(fourier).value(), 0.1);
                EXPECT_NEAR(body.surface(), 100.0 * series.surface(fourier).value(), 0.1);
                EXPECT_NEAR(body.mean(), 100.0 * series.mean(fourier).value(), 0.1);
            }
        }
    }
}

TEST(Conduction, EnergyIsConservedThroughAnyHistory)
{
    test::forEachSeed(100, [](test::Random& random) {
        const double beta = static_cast<double>(random.between(0, 20)) / 10.0;
        auto body = bodyOf(beta, static_cast<double>(random.between(-5, 90)));
        const double before = body.heatContent();
        double moved = 0.0; // J/m³, in either direction
        double last = 0.0;
        for (int i = 0; i < 5; ++i) {
            const Exchange place{static_cast<double>(random.between(-18, 250)),
                                 static_cast<double>(random.between(0, 500))};
            ASSERT_TRUE(body.advance(place, static_cast<double>(random.between(1, 7200))));
            moved += std::abs(body.heatReceived() - last);
            last = body.heatReceived();
        }
        EXPECT_NEAR(body.heatContent() - before, body.heatReceived(),
                    1e-9 * std::max(moved, std::abs(before)));
    });
}

TEST(Conduction, SeriesFallsFromOneToZeroWithTime)
{
    for (const Shape shape : shapes) {
        for (const double biot : {0.00001, 0.01, 0.3, 1.0, 20.0, 1e6, 1e9}) {
            const auto series = TransientSeries::make(shape, biot).value();
            double centre = series.centre(0.0).value();
            double mean = centre;
            EXPECT_EQ(centre, 1.0);
            for (double fourier = 0.02; fourier < 20.0; fourier *= 1.3) {
                const double nextCentre = series.centre(fourier).value();
                const double nextMean = series.mean(fourier).value();
                EXPECT_LE(nextCentre, centre + 1e-12);
                EXPECT_LE(nextMean, mean + 1e-12);
                EXPECT_GE(nextCentre, nextMean - 1e-12);
                EXPECT_GE(nextMean, series.surface(fourier).value() - 1e-12);
                EXPECT_NEAR(series.at(0.0, fourier).value(), nextCentre, 1e-12);
                EXPECT_NEAR(series.at(1.0, fourier).value(), series.surface(fourier).value(), 1e-9);
                centre = nextCentre;
                mean = nextMean;
            }
        }
    }
}

// T = T∞ + ΔT·exp(−hAt/(ρcV)), with A/V = (β + 1)/L.
TEST(Conduction, WellStirredBodiesAreTheLimitOfSmallBiotNumbers)
{
    for (const Shape shape : shapes) {
        constexpr double biot = 1e-4;
        const auto series = TransientSeries::make(shape, biot).value();
        const double rate = (areaExponent(shape) + 1.0) * biot;
        for (const double fourier : {10.0, 1000.0, 10000.0}) {
            const double lumped = std::exp(-rate * fourier);
            EXPECT_NEAR(series.mean(fourier).value(), lumped, 1e-4);
            EXPECT_NEAR(series.centre(fourier).value(), lumped, 1e-4);
        }
    }
}

TEST(Conduction, ABrickIsTheProductOfItsSlabsAndAShortCylinderOfBoth)
{
    const Conduction slab{Shape::Slab, 0.02, conductivity, diffusivity, 50.0};
    const Conduction cylinder{Shape::Cylinder, 0.04, conductivity, diffusivity, 50.0};
    const auto centre = [](const std::vector<Conduction>& bodies, double seconds) {
        return ProductOfBodies::make(bodies).value().centre(seconds).value();
    };
    for (const double seconds : {0.0, 10.0, 300.0, 1800.0, 7200.0}) {
        const double a = centre({slab}, seconds);
        const double b = centre({cylinder}, seconds);
        EXPECT_NEAR(centre({cylinder, slab}, seconds), a * b, 1e-12);
        EXPECT_NEAR(centre({slab, slab, slab}, seconds), a * a * a, 1e-12);
    }
    const auto series = TransientSeries::make(Shape::Slab, slab.biot()).value();
    EXPECT_NEAR(centre({slab}, 1800.0), series.centre(diffusivity * 1800.0 / (0.02 * 0.02)).value(),
                1e-12);
    const auto brick = ProductOfBodies::make({slab, slab, cylinder}).value();
    for (const double theta : {0.999, 0.7, 0.3, 0.01}) {
        EXPECT_NEAR(brick.centre(brick.secondsToTheta(theta).value()).value(), theta, 1e-8);
    }
}

TEST(Conduction, TimeToTheMiddleIsTheInverseOfTheMiddleAtATime)
{
    test::forEachSeed(100, [](test::Random& random) {
        const Shape shape = shapes[random.between(0, 2)];
        const Conduction body{shape, static_cast<double>(random.between(3, 120)) / 1000.0,
                              conductivity, diffusivity,
                              static_cast<double>(random.between(3, 2000))};
        const double target = static_cast<double>(random.between(6, 94));
        const double seconds = secondsToCentre(body, 5.0, 95.0, target).value();
        const auto series = TransientSeries::make(shape, body.biot()).value();
        const double fourier = diffusivity * seconds / (body.halfThickness * body.halfThickness);
        EXPECT_NEAR(95.0 - 90.0 * series.centre(fourier).value(), target, 1e-8);
    });
}

TEST(Conduction, OneTermOfBodiesBetweenJoinsThoseOfSlabCylinderAndSphere)
{
    for (const double biot : {1e-5, 0.01, 0.5, 3.0, 200.0, 1e9}) {
        for (const Shape shape : shapes) {
            const auto between = oneTermBetween(areaExponent(shape), biot).value();
            const auto exact = oneTerm(shape, std::min(biot, 1e6)).value();
            EXPECT_NEAR(between.zeta, exact.zeta, 1e-10);
            EXPECT_NEAR(between.coefficient, exact.coefficient, 1e-5);
        }
        double last = 0.0;
        for (int b = 0; b <= 20; ++b) {
            const double next = oneTermBetween(b / 10.0, biot).value().zeta;
            EXPECT_GT(next, last);
            last = next;
        }
    }
}

TEST(Conduction, OfManyRootsEachSatisfiesItsEquationAndLiesAboveTheLast)
{
    for (const double biot : {1e-5, 0.02, 1.0, 1.5, 40.0, 1e6}) {
        for (const Shape shape : shapes) {
            const auto roots = eigenvalues(shape, biot, 100).value();
            double last = 0.0;
            for (const double z : roots) {
                EXPECT_GT(z, last);
                last = z;
                const double fault = shape == Shape::Slab ? z * std::sin(z) - biot * std::cos(z)
                                     : shape == Shape::Cylinder
                                         ? z * ::j1(z) - biot * ::j0(z)
                                         : (1.0 - biot) * std::sin(z) - z * std::cos(z);
                EXPECT_NEAR(fault / (biot + z), 0.0, 1e-11) << biot << " " << z;
            }
        }
    }
}

TEST(Conduction, ABodyForgetsNothingBetweenTwoHalvesOfATime)
{
    auto whole = bodyOf(0.7, 5.0);
    auto parts = whole;
    const Exchange oven{180.0, 20.0};
    const Exchange fridge{4.0, 8.0};
    ASSERT_TRUE(whole.advance(oven, 3600.0));
    ASSERT_TRUE(whole.advance(fridge, 3600.0));
    for (int i = 0; i < 60; ++i) {
        ASSERT_TRUE(parts.advance(oven, 60.0));
    }
    for (int i = 0; i < 60; ++i) {
        ASSERT_TRUE(parts.advance(fridge, 60.0));
    }
    EXPECT_NEAR(whole.centre(), parts.centre(), 0.05);
    EXPECT_NEAR(whole.mean(), parts.mean(), 0.05);
}

TEST(Conduction, AdvancingToATemperatureStopsThere)
{
    auto body = bodyOf(1.0, 5.0);
    const auto seconds = body.advanceToCentre({180.0, 25.0}, 54.0, 1e6).value();
    ASSERT_TRUE(seconds);
    EXPECT_NEAR(body.centre(), 54.0, 0.001);
    const double exact =
        secondsToCentre({Shape::Cylinder, halfThickness, conductivity, diffusivity, 25.0}, 5.0,
                        180.0, 54.0)
            .value();
    EXPECT_NEAR(*seconds / exact, 1.0, 0.003);
    auto cold = bodyOf(1.0, 5.0);
    EXPECT_EQ(cold.advanceToCentre({50.0, 25.0}, 54.0, 1e5).value(), std::nullopt);
}

TEST(Conduction, RefusesWhatLiesOutsideItsRange)
{
    EXPECT_FALSE(eigenvalues(Shape::Slab, 0.0, 1));
    EXPECT_FALSE(eigenvalues(Shape::Slab, -1.0, 1));
    EXPECT_FALSE(eigenvalues(Shape::Slab, std::nan(""), 1));
    const auto series = TransientSeries::make(Shape::Sphere, 1.0).value();
    EXPECT_FALSE(series.centre(0.0001));
    EXPECT_FALSE(series.centre(-1.0));
    EXPECT_FALSE(series.fourierAtCentre(0.0));
    EXPECT_FALSE(series.fourierAtCentre(1.1));
    EXPECT_FALSE(HeatMaterial::constant(0.0, 4e6));
    EXPECT_FALSE(HeatMaterial::tabulated(0.0, 1.0, {1.0, 1.0}, {0.5, 0.5}));
    EXPECT_FALSE(HeatedBody::make(0.0, 0.0, food(), 20.0));
    EXPECT_FALSE(HeatedBody::make(2.5, 0.1, food(), 20.0));
    auto body = bodyOf(0.0, 20.0);
    EXPECT_FALSE(body.advance({20.0, -1.0}, 60.0));
    EXPECT_FALSE(body.advance({20.0, 10.0}, std::nan("")));
    EXPECT_EQ(body.centre(), 20.0);
    const Conduction joint{Shape::Sphere, 0.05, conductivity, diffusivity, 20.0};
    const auto never = secondsToCentre(joint, 5.0, 60.0, 74.0);
    ASSERT_FALSE(never);
    EXPECT_NE(never.error().forCook.find("never reaches 74 °C"), std::string::npos);
}

} // namespace
} // namespace suppertide::science
