#include <gtest/gtest.h>

#include "ui/timeline/tag_shape.h"

namespace suppertide::ui {
namespace {

/// How wide a triangle is so far over its foot.
double widthAt(double half, double over, double height)
{
    return 2 * half * (1 - over / height);
}

TEST(TagShape, KeepsItsSizeForOneDigit)
{
    EXPECT_EQ(halfFoot(7, 9, 17, 20), 20);
    EXPECT_EQ(halfWidth(7, 8), 8);
}

TEST(TagShape, HoldsNumbersOfSeveralDigitsBetweenItsSides)
{
    for (const double width : {7.0, 14.0, 21.0}) {
        const double half = halfFoot(width, 9, 17, 10);
        EXPECT_GE(widthAt(half, 9, 17), width + 2 - 1e-9) << width;
        EXPECT_GE(2 * halfWidth(width, 8), width + 4 - 1e-9) << width;
    }
    EXPECT_GT(halfFoot(14, 9, 17, 10), 10);
}

} // namespace
} // namespace suppertide::ui
