// Temperatures with times as a cook types them: the other heats of a step, and how an oven warms.
#include <gmock/gmock.h>

#include "ui/models/comma_list.h"
#include "ui/models/other_heats.h"
#include "ui/models/oven_warming.h"

namespace suppertide::ui {
namespace {

using testing::HasSubstr;
using testing::SizeIs;

Step baked()
{
    Step step;
    step.duration = {Minutes{50}, Minutes{60}, Minutes{75}};
    step.uses = {OvenUse{1, Celsius::degrees(155), Celsius::degrees(170), Celsius::degrees(160),
                         OvenMode::Any}};
    return step;
}

TEST(TypedTemperatures, AreReadInEitherUnit)
{
    EXPECT_EQ(readDegrees("180 °C"), Celsius::degrees(180));
    EXPECT_EQ(readDegrees("180"), Celsius::degrees(180));
    EXPECT_EQ(readDegrees("350 °F"), Celsius::tenths(1767));
    EXPECT_EQ(readDegrees("hot"), std::nullopt);
    EXPECT_EQ(readDegrees("180 K"), std::nullopt);
    EXPECT_EQ(readDegrees("99999"), std::nullopt);
}

TEST(OtherHeats, AreAsUnsureAndAsWideAsTheStep)
{
    const auto heats = readOtherHeats("45 min at 180 °C, 1 h 30 at 150 °C", baked());
    ASSERT_TRUE(heats);
    ASSERT_THAT(*heats, SizeIs(2));
    const OtherHeat& hotter = heats->front();
    EXPECT_EQ(hotter.low, Celsius::degrees(175));
    EXPECT_EQ(hotter.high, Celsius::degrees(190));
    EXPECT_EQ(hotter.prefer, Celsius::degrees(180));
    EXPECT_EQ(hotter.duration, (DurationRange{Minutes{37}, Minutes{45}, Minutes{56}}));
    EXPECT_EQ(heats->back().duration.likely, Minutes{90});
}

TEST(OtherHeats, AreReadBackAsTheyAre)
{
    Step step = baked();
    step.otherHeats = *readOtherHeats("45 min at 180 °C", step);
    step.otherHeats.front().cost = 7;
    const auto again = readOtherHeats(otherHeatsText(step), step);
    ASSERT_TRUE(again);
    EXPECT_EQ(*again, step.otherHeats);
    EXPECT_THAT(*readOtherHeats("  ", step), SizeIs(0));
}

TEST(OtherHeats, SayWhatCannotBeRead)
{
    const auto read = readOtherHeats("45 min at 180 °C, soon", baked());
    ASSERT_FALSE(read);
    EXPECT_THAT(read.error().forCook, HasSubstr("“soon” cannot be read"));
}

TEST(OvenWarming, IsReadFromOneOrTwoMeasurements)
{
    const auto warming = readWarming("7 min to 120 °C, 14 min to 200 °C");
    ASSERT_TRUE(warming);
    EXPECT_EQ(*warming, (std::vector<OvenWarming>{{Minutes{7}, Celsius::degrees(120)},
                                                  {Minutes{14}, Celsius::degrees(200)}}));
    EXPECT_EQ(*readWarming(warmingText(*warming)), *warming);
    EXPECT_THAT(*readWarming(""), SizeIs(0));
}

TEST(OvenWarming, SaysWhatCannotBe)
{
    EXPECT_THAT(readWarming("14 min to 200 °C, 7 min to 120 °C").error().forCook,
                HasSubstr("later and hotter"));
    EXPECT_THAT(readWarming("1 min to 30 °C, 2 min to 90 °C, 3 min to 100 °C").error().forCook,
                HasSubstr("Two measurements are enough"));
    EXPECT_THAT(readWarming("quickly").error().forCook, HasSubstr("14 min to 200 °C"));
    EXPECT_FALSE(readWarming("14 min to 25 °C")); // hardly warmer than the room
}

} // namespace
} // namespace suppertide::ui
