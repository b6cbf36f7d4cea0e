#include <gtest/gtest.h>

#include "core/base/interval.h"
#include "core/base/result.h"

namespace suppertide {
namespace {

TEST(Interval, MeetsWithoutOverlapping)
{
    EXPECT_FALSE(interval(0, 10).overlaps(interval(10, 20)));
    EXPECT_TRUE(interval(0, 11).overlaps(interval(10, 20)));
}

TEST(Interval, OverlapsNothingWhenEmpty)
{
    EXPECT_FALSE(interval(5, 5).overlaps(interval(0, 10)));
    EXPECT_FALSE(interval(0, 10).overlaps(interval(5, 5)));
    EXPECT_EQ(interval(7, 5).length(), 0_min);
}

TEST(Interval, ContainsItsStartButNotItsEnd)
{
    EXPECT_TRUE(interval(3, 6).contains(planTime(3)));
    EXPECT_FALSE(interval(3, 6).contains(planTime(6)));
    EXPECT_TRUE(interval(3, 6).contains(interval(6, 6)));
}

TEST(Interval, GivesTheCommonPart)
{
    EXPECT_EQ(interval(0, 10).common(interval(4, 20)), interval(4, 10));
    EXPECT_TRUE(interval(0, 4).common(interval(4, 20)).empty());
}

TEST(Result, HoldsAValueOrTheReasonWhyNot)
{
    const Result<int> value = 3;
    EXPECT_TRUE(value);
    EXPECT_EQ(*value, 3);
    EXPECT_THROW(static_cast<void>(value.error()), ContractViolation);
    const Result<int> failure = Failure{FailureKind::NotFound, "There is no such thing.", {}};
    EXPECT_FALSE(failure);
    EXPECT_EQ(failure.error().forCook, "There is no such thing.");
    EXPECT_THROW(static_cast<void>(*failure), ContractViolation);
}

} // namespace
} // namespace suppertide
