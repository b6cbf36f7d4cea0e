#include <gtest/gtest.h>

#include "ui/timeline/shown_degrees.h"

namespace suppertide::ui {
namespace {

TEST(ShownDegrees, AreWholeAndInFivesAboveBoiling)
{
    EXPECT_EQ(shownDegrees(Celsius::degrees(180), false), 180);
    EXPECT_EQ(shownDegrees(Celsius::degrees(180), true), 355); // 356 °F
    EXPECT_EQ(shownDegrees(Celsius::degrees(100), true), 212);
    EXPECT_EQ(shownDegrees(Celsius::degrees(4), true), 39);  // 39.2 °F
    EXPECT_EQ(shownDegrees(Celsius::degrees(-18), true), 0); // −0.4 °F
    EXPECT_EQ(shownDegrees(Celsius::degrees(-40), true), -40);
}

} // namespace
} // namespace suppertide::ui
