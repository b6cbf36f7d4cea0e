#include <gtest/gtest.h>

#include <cmath>

#include "core/science/bracketed_root.h"

namespace suppertide::science {
namespace {

TEST(BracketedRoot, FindsRootsOfManyKinds)
{
    EXPECT_NEAR(bracketedRoot([](double x) { return x * x - 2.0; }, 0.0, 2.0), std::sqrt(2.0),
                1e-13);
    EXPECT_NEAR(bracketedRoot([](double x) { return std::cos(x); }, 0.0, 3.0),
                std::acos(-1.0) / 2.0, 1e-13);
    EXPECT_NEAR(bracketedRoot([](double x) { return x * x * x; }, -1.0, 3.0), 0.0,
                1e-4); // flat at the root
    EXPECT_NEAR(bracketedRoot([](double x) { return x < 0.3 ? -1.0 : 1.0; }, 0.0, 1.0), 0.3,
                1e-12); // a step
    EXPECT_NEAR(bracketedRoot([](double x) { return std::expm1(50.0 * (x - 0.9)); }, 0.0, 1.0), 0.9,
                1e-12);
    EXPECT_NEAR(bracketedRoot([](double x) { return 1e-200 * (x - 5.0); }, 0.0, 1e6, 1e-6), 5.0,
                1e-6);
}

TEST(BracketedRoot, TakesEitherEndAndEitherDirection)
{
    EXPECT_EQ(bracketedRoot([](double x) { return x; }, 0.0, 3.0), 0.0);
    EXPECT_EQ(bracketedRoot([](double x) { return x; }, -3.0, 0.0), 0.0);
    EXPECT_NEAR(bracketedRoot([](double x) { return 1.0 - x; }, 0.0, 3.0), 1.0, 1e-13);
}

TEST(BracketedRoot, NeedsABracketAndStaysInIt)
{
    EXPECT_THROW((void)bracketedRoot([](double x) { return x * x + 1.0; }, -1.0, 1.0),
                 ContractViolation);
    int calls = 0;
    const double root = bracketedRoot(
        [&calls](double x) {
            EXPECT_GE(x, 0.2);
            EXPECT_LE(x, 7.0);
            ++calls;
            return std::log(x);
        },
        0.2, 7.0);
    EXPECT_NEAR(root, 1.0, 1e-12);
    EXPECT_LT(calls, 20);
}

} // namespace
} // namespace suppertide::science
