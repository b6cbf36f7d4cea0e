#include <gtest/gtest.h>

#include "tests/support/timeline/example_scene.h"
#include "ui/timeline/geometry.h"
#include "ui/timeline/pleats.h"

namespace suppertide::ui {
namespace {

using test::at;
using test::Day;

Geometry geometryOf(const Scene& scene, double pace = 86)
{
    const auto pleats = pleatsOf(scene);
    Viewport viewport;
    viewport.width = 1068;
    viewport.height = 568;
    viewport.pixelsPerHour = pace;
    viewport = showing(scene, viewport, pleats, {at(Day::Saturday, 18), at(Day::Saturday, 21, 40)});
    return Geometry{scene, viewport, pleats};
}

BlockShape shapeOf(const Scene& scene, const Geometry& geometry, const std::string& id,
                   const std::string& lane)
{
    return *std::find_if(
        geometry.blocks().begin(), geometry.blocks().end(), [&](const BlockShape& shape) {
            return scene.blocks[shape.block].id == id && scene.lanes[shape.lane].id == lane;
        });
}

SceneBlock& blockOf(Scene& scene, const std::string& id)
{
    return *std::find_if(scene.blocks.begin(), scene.blocks.end(),
                         [&](const SceneBlock& block) { return block.id == id; });
}

TEST(BlockShapes, SlantFromTheLeastEndAtTheTopToTheMostAtTheFoot)
{
    Scene scene = test::exampleScene();
    SceneBlock& sear = blockOf(scene, "sear");
    sear.least = 20_min;
    sear.most = 40_min;
    const Geometry geometry = geometryOf(scene);
    const BlockShape shape = shapeOf(scene, geometry, "sear", "b1");
    EXPECT_DOUBLE_EQ(shape.left, geometry.x(sear.start));
    EXPECT_DOUBLE_EQ(shape.least, geometry.x(sear.start + 20_min));
    EXPECT_DOUBLE_EQ(shape.likely, geometry.x(sear.start + 25_min));
    EXPECT_DOUBLE_EQ(shape.most, geometry.x(sear.start + 40_min));
}

TEST(BlockShapes, SlantByAtLeastFourPixels)
{
    Scene scene = test::exampleScene();
    SceneBlock& sear = blockOf(scene, "sear");
    sear.least = sear.most = sear.likely;
    const BlockShape shape = shapeOf(scene, geometryOf(scene), "sear", "b1");
    EXPECT_DOUBLE_EQ(shape.most - shape.least, 4);
}

TEST(BlockShapes, StandUprightInTheDaysZoom)
{
    const Scene scene = test::exampleScene();
    const Geometry geometry = geometryOf(scene, 28);
    const BlockShape shape = shapeOf(scene, geometry, "braise", "oven");
    EXPECT_DOUBLE_EQ(shape.least, shape.most);
}

TEST(BlockShapes, AreAtLeastThreePixelsWide)
{
    Scene scene = test::exampleScene();
    SceneBlock& blend = blockOf(scene, "blend");
    blend.least = blend.likely = blend.most = 1_min;
    const BlockShape shape = shapeOf(scene, geometryOf(scene, 16), "blend", "blender");
    EXPECT_GE(shape.likely - shape.left, 3);
}

TEST(BlockShapes, CoverTheShelvesThatTheStepUses)
{
    Scene scene = test::exampleScene();
    blockOf(scene, "braise").places.front().rows = 2;
    const Geometry geometry = geometryOf(scene);
    const LaneBox& oven = *boxOfLane(geometry.lanes(), 0);
    const BlockShape shape = shapeOf(scene, geometry, "braise", "oven");
    EXPECT_DOUBLE_EQ(shape.top, oven.rows[1].top);
    EXPECT_DOUBLE_EQ(shape.bottom, oven.rows[0].bottom());
    EXPECT_DOUBLE_EQ(shapeOf(scene, geometry, "bake-gratin", "oven").bottom, oven.rows[1].bottom());
}

TEST(BlockShapes, RiseInACooksLaneByTheAttentionTheyTake)
{
    const Scene scene = test::exampleScene();
    const Geometry geometry = geometryOf(scene);
    const LaneBox& maren = *boxOfLane(geometry.lanes(), findLane(scene, "maren").value());
    const BlockShape fry = shapeOf(scene, geometry, "fry", "maren");
    ASSERT_TRUE(fry.isSegment());
    EXPECT_NEAR(fry.pieces.front().height(), 0.8 * maren.rows.front().height, 1e-9);
    EXPECT_DOUBLE_EQ(fry.pieces.front().bottom, Geometry::handsY(maren, 0));
    EXPECT_DOUBLE_EQ(fry.pieces.front().top, Geometry::handsY(maren, 80));
}

TEST(BlockShapes, HaveNothingInACooksLaneIfTheyTakeNothingOfTheCook)
{
    Scene scene = test::exampleScene();
    blockOf(scene, "fry").attention = unattended;
    const Geometry geometry = geometryOf(scene);
    for (const BlockShape& shape : geometry.blocks()) {
        EXPECT_FALSE(scene.blocks[shape.block].id == "fry" &&
                     scene.lanes[shape.lane].id == "maren");
    }
}

TEST(WaitShapes, KeepTheBracketWhereItIsWhileTheEndIsDraggedAlongIt)
{
    Scene scene = test::exampleScene();
    const Geometry before = geometryOf(scene);
    scene.waits[0].when.end -= 60_min;
    const Geometry after = geometryOf(scene);
    EXPECT_DOUBLE_EQ(after.waits()[0].least, before.waits()[0].least);
    EXPECT_LT(after.waits()[0].end, before.waits()[0].end);
    EXPECT_EQ(after.waits()[0].surplus, std::nullopt);
}

TEST(WaitShapes, MarkTheMinutesBeyondTheMost)
{
    const Scene scene = test::exampleScene();
    const Geometry geometry = geometryOf(scene);
    const auto cream =
        std::find_if(geometry.waits().begin(), geometry.waits().end(), [&](const WaitShape& shape) {
            return scene.waits[shape.wait].id == "trout-cream";
        });
    ASSERT_NE(cream, geometry.waits().end());
    ASSERT_TRUE(cream->surplus.has_value());
    EXPECT_DOUBLE_EQ(cream->surplus->left, geometry.x(at(Day::Saturday, 18, 40)));
    EXPECT_DOUBLE_EQ(cream->surplus->right, geometry.x(at(Day::Saturday, 19, 40)));
}

TEST(WaitShapes, MarkTheMinutesThatTheLeastIsShortBy)
{
    Scene scene = test::exampleScene();
    scene.waits[0].when.end = scene.waits[0].when.start + 180_min; // at least 240
    const Geometry geometry = geometryOf(scene);
    ASSERT_TRUE(geometry.waits()[0].surplus.has_value());
    EXPECT_DOUBLE_EQ(geometry.waits()[0].surplus->left, geometry.waits()[0].end);
    EXPECT_DOUBLE_EQ(geometry.waits()[0].surplus->right, geometry.waits()[0].least);
}

TEST(WaitShapes, HaveAnArrowForAMostBeyondTheView)
{
    const Scene scene = test::exampleScene();
    const Geometry geometry = geometryOf(scene);
    EXPECT_TRUE(geometry.waits()[0].hasMost);
    EXPECT_EQ(geometry.waits()[0].most, std::nullopt);
}

TEST(WaitShapes, EndWithTheHorizonHoweverMuchOfTheWindowIsLeft)
{
    const Scene scene = test::exampleScene();
    const Geometry geometry = geometryOf(scene, 16);
    ASSERT_LT(geometry.x(scene.horizon.end), geometry.timeRight());
    for (const WaitShape& shape : geometry.waits()) {
        EXPECT_LE(shape.most.value_or(0), geometry.x(scene.horizon.end));
    }
}

TEST(WaitShapes, HangUnderTheThingRatherThanUnderTheCook)
{
    const Scene scene = test::exampleScene();
    const Geometry geometry = geometryOf(scene);
    EXPECT_EQ(scene.lanes[geometry.waits()[0].lane].id, "blender");
}

TEST(WaitShapes, RunOneUnderTheOtherWhereTwoShareAGutter)
{
    Scene scene = test::exampleScene();
    SceneWait second = scene.waits[0];
    second.id = "again";
    scene.waits.push_back(second);
    const Geometry geometry = geometryOf(scene);
    EXPECT_GT(geometry.waits().back().y, geometry.waits().front().y);
}

} // namespace
} // namespace suppertide::ui
