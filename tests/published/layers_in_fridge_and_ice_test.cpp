// Layers of food in a still fridge and in ice, computed independently from the series of a slab
// (Incropera et al.) with h, k, α as named.
#include <gtest/gtest.h>

#include "core/science/heated_body.h"
#include "core/science/transient_series.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

double hours(double mm, double h, double k, double alpha, double air, double from, double to)
{
    return secondsToCentre({Shape::Slab, mm / 2000.0, k, alpha, h}, from, air, to).value() / 3600.0;
}

TEST(Layers, InAStillFridgeOnlyTheThinOneKeepsTheCoolingRule)
{
    test::Deviation worst{"slab series, layers in a fridge: h"};
    struct Row
    {
        double mm;
        double first;
        double second;
        double digit;
    };
    // Half of the last printed digit of each.
    for (const Row& row :
         {Row{25, 1.72, 5.89, 0.005}, Row{50, 3.78, 12.7, 0.005}, Row{75, 6.2, 20.5, 0.05}}) {
        SCOPED_TRACE(row.mm);
        worst.near(hours(row.mm, 10, 0.55, 1.4e-7, 4, 57.2, 21.1), row.first, row.digit,
                   "2.8 to 21.1 °C");
        worst.near(hours(row.mm, 10, 0.55, 1.4e-7, 4, 57.2, 5), row.second,
                   row.mm < 30 ? 0.005 : 0.05, "2.8 to 5 °C");
        auto body = HeatedBody::make(0, row.mm / 2000.0,
                                     HeatMaterial::constant(0.55, 0.55 / 1.4e-7).value(), 57.2)
                        .value();
        const auto seconds = body.advanceToCentre({4, 10}, 5, 1e6).value();
        worst.nearShare(seconds.value() / 3600.0, row.second, 0.01, "2.8 to 5 °C, finite volumes");
    }
    EXPECT_LT(hours(25, 10, 0.55, 1.4e-7, 4, 57.2, 21.1), 2.0);
    EXPECT_LT(hours(25, 10, 0.55, 1.4e-7, 4, 57.2, 5), 6.0);
    EXPECT_GT(hours(50, 10, 0.55, 1.4e-7, 4, 57.2, 21.1), 2.0);
}

TEST(Layers, InAnIceBathCoolWithinTheHour)
{
    test::Deviation worst{"slab series, layers in ice: min"};
    struct Row
    {
        double mm;
        double minutes;
    };
    for (const Row& row : {Row{10, 13}, Row{20, 35}, Row{30, 65}, Row{50, 150}}) {
        SCOPED_TRACE(row.mm);
        worst.near(60.0 * hours(row.mm, 100, 0.48, 1.11e-7, 0.5, 60, 5), row.minutes, 0.5,
                   "2.8 ice bath");
    }
}

} // namespace
} // namespace suppertide::science
