// R. L. Earle, Unit Operations in Food Processing, freezing: a slab of meat between plates, by
// Plank's formula.
#include <gtest/gtest.h>

#include "core/science/freezing.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

constexpr double latent = 2.56e5; // J/kg

double hours(double heat, double coefficient)
{
    const PlankQuestion slab{
        plankFactors(Shape::Slab), 0.100, 1090.0, heat, 1.6, coefficient, -2.0, -34.0};
    return plankSeconds(slab).value() / 3600.0;
}

TEST(EarleFreezing, PlatesFreezeASlabInTheHoursOfTheBook)
{
    test::Deviation worst{"Earle, plate freezing: h"};
    const double throughCard = coefficientUnder({{0.001, 0.06}}, 600.0).value();
    worst.near(throughCard, 54.5, 0.05, "2.3 plates, U");
    // Printed to a tenth of an hour; computed independently to a hundredth.
    worst.near(hours(latent, throughCard), 4.1, 0.05, "2.3 plates, card");
    worst.near(hours(latent, 600.0), 2.1, 0.05, "2.3 plates, bare");
    worst.near(hours(latent, throughCard), 4.11, 0.005, "2.3 plates, card, computed");
    worst.near(hours(latent, 600.0), 2.09, 0.005, "2.3 plates, bare, computed");
}

TEST(EarleFreezing, AmendedForCoolingBeforeAndAfter)
{
    test::Deviation worst{"Earle, plate freezing, amended: h"};
    const double throughCard = coefficientUnder({{0.001, 0.06}}, 600.0).value();
    constexpr double printed = 3.23e5; // J/kg, enthalpy difference of the book
    worst.near(printed / latent, 1.262, 0.0005, "2.3 plates amended, ratio");
    worst.near(hours(printed, throughCard), 5.19, 0.005, "2.3 plates amended, card, computed");
    worst.near(hours(printed, 600.0), 2.64, 0.005, "2.3 plates amended, bare, computed");
    const double heat = amendedHeat(10.0, -2.0, -18.0, latent, 3220.0, 1670.0).value();
    // The book's enthalpy is from a table; two specific heats come to 0.5 % less.
    worst.nearShare(heat, printed, 0.01, "2.3 plates amended, heat");
    worst.near(hours(heat, throughCard), 5.2, 0.05, "2.3 plates amended, card");
    worst.near(hours(heat, 600.0), 2.6, 0.05, "2.3 plates amended, bare");
}

} // namespace
} // namespace suppertide::science
