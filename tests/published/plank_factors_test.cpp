// Encyclopaedia of Food Sciences and Nutrition, freezing: constants of Plank's formula.
#include <gtest/gtest.h>

#include "core/science/freezing.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(PlankFactors, AreThoseOfTheEncyclopaediaAndOfTheBlockInTheLimit)
{
    constexpr double exact = 1e-12;
    test::Deviation worst{"Encyclopaedia of Food Sciences: Plank's P and R"};
    worst.near(plankFactors(Shape::Slab).p, 1.0 / 2.0, exact, "2.3 Plank slab P");
    worst.near(plankFactors(Shape::Slab).r, 1.0 / 8.0, exact, "2.3 Plank slab R");
    worst.near(plankFactors(Shape::Cylinder).p, 1.0 / 4.0, exact, "2.3 Plank cylinder P");
    worst.near(plankFactors(Shape::Cylinder).r, 1.0 / 16.0, exact, "2.3 Plank cylinder R");
    worst.near(plankFactors(Shape::Sphere).p, 1.0 / 6.0, exact, "2.3 Plank sphere P");
    worst.near(plankFactors(Shape::Sphere).r, 1.0 / 24.0, exact, "2.3 Plank sphere R");
    const auto cube = plankFactorsOfBlock(1.0, 1.0).value();
    worst.near(cube.p, 1.0 / 6.0, exact, "2.3 Plank cube P");
    worst.near(cube.r, 1.0 / 24.0, exact, "2.3 Plank cube R");
}

} // namespace
} // namespace suppertide::science
