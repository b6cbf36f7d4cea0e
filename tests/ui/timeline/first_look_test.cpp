#include <gtest/gtest.h>

#include "tests/support/timeline/example_scene.h"
#include "ui/timeline/timeline_state.h"

namespace suppertide::ui {
namespace {

/// The example's evening alone, all before and after it folded.
Scene shortScene()
{
    Scene scene = test::exampleScene();
    const PlanTime last = scene.servings.back().time;
    std::erase_if(scene.blocks, [&](const SceneBlock& block) {
        return block.start < last - Minutes{120} || block.when().end > last;
    });
    return scene;
}

TEST(FirstLook, SeesTheLastServing)
{
    TimelineState state;
    state.resize(1068, 606);
    state.setScene(test::exampleScene());
    const PlanTime last = state.scene().servings.back().time;
    EXPECT_LE(state.geometry().visibleTime().start, last);
    EXPECT_GE(state.geometry().visibleTime().end, last);
}

TEST(FirstLook, GivesAShortEveningTheRoomThatThereIs)
{
    TimelineState state;
    state.resize(1068, 606);
    state.setScene(shortScene());
    EXPECT_GT(state.viewport().pixelsPerHour, pixelsPerHourAt(ZoomStop::Hours));
    EXPECT_EQ(state.geometry().stop(), ZoomStop::Hours);
    EXPECT_DOUBLE_EQ(state.geometry().maxScrollX(), 0);
}

TEST(FirstLook, LeavesTheHoursAsTheyAreWhenThereIsMoreThanTheRoom)
{
    TimelineState state;
    state.resize(400, 606);
    state.setScene(test::exampleScene());
    EXPECT_DOUBLE_EQ(state.viewport().pixelsPerHour, pixelsPerHourAt(ZoomStop::Hours));
}

TEST(FirstLook, IsNothingWithoutServings)
{
    TimelineState state;
    state.resize(1068, 606);
    const Viewport before = state.viewport();
    state.showEvening();
    EXPECT_EQ(state.viewport(), before);
}

} // namespace
} // namespace suppertide::ui
