#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/wording/why_this_long.h"

namespace suppertide {
namespace {

using std::chrono_literals::operator""min;
using ::testing::ElementsAre;
using ::testing::HasSubstr;

ComputedDuration computed()
{
    ComputedDuration result;
    result.food = "joint";
    result.range = {70min, 84min, 103min};
    result.written = {75min, 80min, 90min};
    result.because = {{"mass", 1.6, "kg"}, {"evenings learned from", 2, ""}};
    return result;
}

TEST(WhyThisLong, SaysTheNumbersBehindALength)
{
    EXPECT_THAT(whyThisLong(computed()),
                ElementsAre("Computed for the joint: 1 h 24 (1 h 10 to 1 h 43). The recipe says "
                            "1 h 20.",
                            "Because: mass 1.6 kg; evenings learned from 2.",
                            "Go by the thermometer, not by the clock."));
    EXPECT_EQ(lengthNote(computed()), "");
}

TEST(WhyThisLong, SaysThatTheTwoDiffer)
{
    ComputedDuration much = computed();
    much.differsMuch = true;
    much.written = {40min, 45min, 50min};
    EXPECT_THAT(whyThisLong(much).front(), HasSubstr("The recipe says 45 min: they differ much"));
    EXPECT_EQ(lengthNote(much), "computed 1 h 24, the recipe says 45 min");
}

TEST(WhyThisLong, SaysWhyNothingCouldBeComputed)
{
    ComputedDuration failed = computed();
    failed.failure = "It is not known how much “joint” weighs. Give its mass in grams.";
    EXPECT_THAT(whyThisLong(failed),
                ElementsAre("The length is the recipe's own, 1 h 20: it could not be computed.",
                            failed.failure));
    EXPECT_EQ(lengthNote(failed), "");
}

} // namespace
} // namespace suppertide
