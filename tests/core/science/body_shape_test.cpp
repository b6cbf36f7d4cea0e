#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "core/science/body_shape.h"
#include "core/science/heated_body.h"

namespace suppertide::science {
namespace {

constexpr double conductivity = 0.5;
constexpr double diffusivity = 1.4e-7;

double secondsOfBody(double beta, double half, double coefficient, double theta)
{
    auto body = HeatedBody::make(
                    beta, half,
                    HeatMaterial::constant(conductivity, conductivity / diffusivity).value(), 100.0)
                    .value();
    return body.advanceToCentre({0.0, coefficient}, 100.0 * theta, 1e7).value().value();
}

TEST(BodyShape, FactorMeetsTheTrueBodyHalfwayAndIsOffByAnEighthElsewhere)
{
    for (const double biot : {0.1, 0.5, 1.0, 3.0, 10.0, 100.0}) {
        for (const auto& sides : {std::array{1.0, 1.0}, std::array{1.0, 3.0}, std::array{1.5, 2.0},
                                  std::array{2.0, 4.0}, std::array{4.0, 12.0}}) {
            constexpr double half = 0.02;
            for (const BodyShape& shape :
                 {BodyShape{Block{2 * half, 2 * half * sides[0], 2 * half * sides[1]}},
                  BodyShape{Roll{2 * half * sides[0], 2 * half * sides[1]}},
                  BodyShape{Roll{2 * half * sides[1], 2 * half}}}) {
                const double coefficient = biot * conductivity / half;
                const auto product =
                    ProductOfBodies::make(
                        partsOf(shape, conductivity, diffusivity, coefficient).value())
                        .value();
                ASSERT_GE(halfThickness(shape).value(), 0.0199);
                if (halfThickness(shape).value() > 0.0201) {
                    continue; // Biot would be another
                }
                const double beta = shapeFactor(shape, biot).value();
                SCOPED_TRACE(testing::Message()
                             << biot << " " << sides[0] << " " << sides[1] << " β " << beta);
                const auto ratio = [&](double theta) {
                    return secondsOfBody(beta, half, coefficient, theta) /
                           product.secondsToTheta(theta).value();
                };
                EXPECT_NEAR(ratio(0.5), 1.0, 0.025);
                EXPECT_NEAR(ratio(0.75), 1.0, 0.125);
                EXPECT_NEAR(ratio(0.25), 1.0, 0.125);
            }
        }
    }
}

TEST(BodyShape, FactorsOfTheIdealBodiesAreTheirs)
{
    EXPECT_NEAR(shapeFactor(Joint{0.1, 0.1, 0.1}, 1.0).value(), 2.0, 1e-12);
    EXPECT_NEAR(shapeFactor(Joint{0.01, 2.0, 2.0}, 1.0).value(), 0.0, 1e-3);
    EXPECT_NEAR(shapeFactor(Joint{0.01, 0.01, 2.0}, 1.0).value(), 1.0, 1e-3);
    EXPECT_NEAR(shapeFactor(Block{0.01, 2.0, 2.0}, 3.0).value(), 0.0, 0.01);
    EXPECT_NEAR(shapeFactor(Roll{0.01, 2.0}, 3.0).value(), 1.0, 0.03);
}

TEST(BodyShape, ShapesOfAMassHaveThatMass)
{
    for (const double mass : {0.1, 1.0, 4.0, 12.0}) {
        for (const auto make : {roastOf, fishSideOf, loafOf}) {
            EXPECT_NEAR(volume(make(mass, 1050.0).value()).value() * 1050.0, mass, 1e-9);
        }
    }
    EXPECT_NEAR(volume(gratinOf(2.0, 0.06).value()).value(), 0.002, 1e-12);
    EXPECT_NEAR(volume(Roll{0.2, 0.1}).value(), 0.0031415926535, 1e-9);
}

TEST(BodyShape, RefusesWhatIsNoBody)
{
    EXPECT_FALSE(roastOf(0.0, 1050.0));
    EXPECT_FALSE(roastOf(std::nan(""), 1050.0));
    EXPECT_FALSE(gratinOf(20.0, 0.002));
    EXPECT_FALSE(halfThickness(Block{0.0, 1.0, 1.0}));
    EXPECT_FALSE(volume(Roll{0.1, -1.0}));
    EXPECT_FALSE(shapeFactor(Block{0.1, 0.1, 0.1}, 0.0));
    EXPECT_FALSE(shapeFactor(Joint{0.0, 0.1, 0.1}, 1.0));
}

} // namespace
} // namespace suppertide::science
