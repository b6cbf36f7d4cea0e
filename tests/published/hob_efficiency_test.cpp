// Hob efficiencies: ENERGY STAR (as in a CalMTA fact sheet); US Department of Energy, Technical
// Support Document, residential cooking products, volume 2, Table 1.5.
#include <gtest/gtest.h>

#include "core/science/boiling.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

TEST(HobEfficiency, BothSourcesLieWithinTheRangesUsed)
{
    test::Deviation worst{"ENERGY STAR and US DOE, hob efficiency"};
    const auto row = [&worst](Hob hob, double value, const char* name) {
        worst.within(value, efficiencyOf(hob).least, efficiencyOf(hob).most, name);
    };
    row(Hob::Gas, 0.32, "2.7 ENERGY STAR gas");
    row(Hob::Induction, 0.85, "2.7 ENERGY STAR induction");
    row(Hob::Electric, 0.75, "2.7 ENERGY STAR resistance, low end of 75–80");
    row(Hob::Gas, 0.40, "2.7 DOE gas");
    row(Hob::Electric, 0.74, "2.7 DOE smooth electric");
    row(Hob::Induction, 0.84, "2.7 DOE induction");
    constexpr double exact = 1e-12;
    worst.near(efficiencyOf(Hob::Gas).least, 0.32, exact, "2.7 use, gas least");
    worst.near(efficiencyOf(Hob::Gas).most, 0.44, exact, "2.7 use, gas most");
    worst.near(efficiencyOf(Hob::Electric).least, 0.70, exact, "2.7 use, electric least");
    worst.near(efficiencyOf(Hob::Electric).most, 0.77, exact, "2.7 use, electric most");
    worst.near(efficiencyOf(Hob::Induction).least, 0.80, exact, "2.7 use, induction least");
    worst.near(efficiencyOf(Hob::Induction).most, 0.86, exact, "2.7 use, induction most");
    for (const Hob hob : {Hob::Gas, Hob::Electric, Hob::Induction}) {
        const Spread& spread = efficiencyOf(hob);
        worst.near(spread.likely, 0.5 * (spread.least + spread.most), exact, "2.7 use, middle");
    }
}

} // namespace
} // namespace suppertide::science
