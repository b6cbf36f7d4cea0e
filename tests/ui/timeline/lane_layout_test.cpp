#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/timeline/example_scene.h"
#include "ui/timeline/geometry.h"
#include "ui/timeline/lane_layout.h"
#include "ui/timeline/pleats.h"

namespace suppertide::ui {
namespace {

using test::at;
using test::Day;
using test::emptyScene;
using test::exampleScene;

LaneLayout layoutAt(const Scene& scene, double width, double height)
{
    LayoutRequest request;
    request.width = width;
    request.height = height;
    return layoutLanes(scene, request);
}

const LaneBox& boxOf(const Scene& scene, const LaneLayout& layout, const std::string& lane)
{
    return *boxOfLane(layout, findLane(scene, lane).value());
}

double heightOf(const Scene& scene, const LaneLayout& layout, const std::string& lane)
{
    return boxOf(scene, layout, lane).strip.height;
}

// Heights of look.md §2, the larger of each pair; the timeline of a 1920 × 1080 window.
TEST(LaneLayout, HasTheLargerHeightsInALargeWindow)
{
    const Scene scene = exampleScene();
    const LaneLayout layout = layoutAt(scene, 1334, 752);
    EXPECT_DOUBLE_EQ(layout.headerWidth, 122);
    EXPECT_DOUBLE_EQ(layout.rail.height, 48);
    EXPECT_DOUBLE_EQ(layout.ruler.height, 22);
    EXPECT_DOUBLE_EQ(heightOf(scene, layout, "oven"), 132);
    EXPECT_DOUBLE_EQ(heightOf(scene, layout, "grill"), 58);
    EXPECT_DOUBLE_EQ(heightOf(scene, layout, "b1"), 26);
    EXPECT_DOUBLE_EQ(heightOf(scene, layout, "mixer"), 26);
    EXPECT_DOUBLE_EQ(heightOf(scene, layout, "maren"), 75);
    EXPECT_DOUBLE_EQ(heightOf(scene, layout, "fridge"), 48);
    EXPECT_DOUBLE_EQ(layout.scrollRange, 0);
}

// The smaller of each pair; the timeline of a 1280 × 800 window with the page closed.
TEST(LaneLayout, HasTheSmallerHeightsInASmallWindow)
{
    const Scene scene = exampleScene();
    const LaneLayout layout = layoutAt(scene, 1068, 568);
    EXPECT_DOUBLE_EQ(layout.rail.height, 40);
    EXPECT_DOUBLE_EQ(layout.ruler.height, 20);
    EXPECT_DOUBLE_EQ(heightOf(scene, layout, "oven"), 120);
    EXPECT_DOUBLE_EQ(heightOf(scene, layout, "grill"), 52);
    EXPECT_DOUBLE_EQ(heightOf(scene, layout, "b1"), 22);
    EXPECT_DOUBLE_EQ(heightOf(scene, layout, "maren"), 56);
    EXPECT_DOUBLE_EQ(heightOf(scene, layout, "fridge"), 40);
    EXPECT_DOUBLE_EQ(layout.scrollRange, 0);
}

TEST(LaneLayout, NarrowsTheHeaderColumnWithTheWindow)
{
    const Scene scene = exampleScene();
    EXPECT_DOUBLE_EQ(layoutAt(scene, 796, 568).headerWidth, 104);
    EXPECT_TRUE(layoutAt(scene, 796, 568).showsNotes);
    EXPECT_DOUBLE_EQ(layoutAt(scene, 600, 400).headerWidth, 76);
    EXPECT_FALSE(layoutAt(scene, 600, 400).showsNotes);
}

TEST(LaneLayout, FollowsTheLongestNameWithALargerFontWithinReason)
{
    const Scene scene = exampleScene();
    LayoutRequest request{1068, 568, 0, 1.5, 160, {}};
    EXPECT_DOUBLE_EQ(layoutLanes(scene, request).headerWidth, 166.4); // 1.6 × 104
    request.longestName = 120;
    EXPECT_DOUBLE_EQ(layoutLanes(scene, request).headerWidth, 140);
}

TEST(LaneLayout, GivesIdleBurnersOneRowWhenItGetsTight)
{
    const Scene scene = exampleScene();
    LayoutRequest request{1068, 500, 0, 1, 0, {}};
    request.isBusy.assign(scene.lanes.size(), true);
    request.isBusy[findLane(scene, "b3").value()] = false;
    request.isBusy[findLane(scene, "b4").value()] = false;
    const LaneLayout layout = layoutLanes(scene, request);
    const LaneBox* shared = boxOfLane(layout, findLane(scene, "b4").value());
    ASSERT_NE(shared, nullptr);
    EXPECT_TRUE(shared->isShared());
    EXPECT_EQ(shared, boxOfLane(layout, findLane(scene, "b3").value()));
    EXPECT_FALSE(boxOf(scene, layout, "b1").isShared());
}

TEST(LaneLayout, FoldsIdleLanesLastButNeverCooksOrTheCold)
{
    const Scene scene = exampleScene();
    LayoutRequest request{1068, 300, 0, 1, 0, {}};
    request.isBusy.assign(scene.lanes.size(), false);
    const LaneLayout layout = layoutLanes(scene, request);
    EXPECT_TRUE(boxOf(scene, layout, "oven").isFolded);
    EXPECT_DOUBLE_EQ(heightOf(scene, layout, "oven"), 10);
    EXPECT_FALSE(boxOf(scene, layout, "maren").isFolded);
    EXPECT_FALSE(boxOf(scene, layout, "fridge").isFolded);
}

TEST(LaneLayout, LeavesALaneOpenThatSaysWhyNothingCanGoThere)
{
    Scene scene = exampleScene();
    scene.lanes[findLane(scene, "mixer").value()].refusal = "nothing to whip";
    LayoutRequest request{1068, 300, 0, 1, 0, {}};
    request.isBusy.assign(scene.lanes.size(), false);
    EXPECT_FALSE(boxOf(scene, layoutLanes(scene, request), "mixer").isFolded);
}

TEST(LaneLayout, KeepsTheCooksAtTheFootWhileTheOthersScroll)
{
    const Scene scene = exampleScene();
    LayoutRequest request{840, 420, 0, 1, 0, {}};
    const LaneLayout layout = layoutLanes(scene, request);
    ASSERT_GT(layout.scrollRange, 0);
    request.scrollY = layout.scrollRange;
    const LaneLayout scrolled = layoutLanes(scene, request);
    EXPECT_EQ(boxOf(scene, scrolled, "maren").strip, boxOf(scene, layout, "maren").strip);
    EXPECT_EQ(boxOf(scene, scrolled, "maren").band, LaneBand::Foot);
    EXPECT_DOUBLE_EQ(boxOf(scene, scrolled, "oven").strip.top,
                     boxOf(scene, layout, "oven").strip.top - layout.scrollRange);
    // Scrolled to the end, the last of the scrolling lanes stands wholly in view.
    EXPECT_LE(boxOf(scene, scrolled, "pan").strip.bottom(), scrolled.scrolling.bottom() + 1e-9);
    EXPECT_DOUBLE_EQ(layout.foot.bottom(), 420);
}

class LaneLayoutAt : public testing::TestWithParam<std::pair<double, double>>
{};

TEST_P(LaneLayoutAt, LosesNoLaneAndLaysNoneOverAnother)
{
    const Scene scene = exampleScene();
    const auto [width, height] = GetParam();
    const LaneLayout layout = layoutAt(scene, width, height);
    for (std::size_t lane = 0; lane < scene.lanes.size(); ++lane) {
        EXPECT_NE(boxOfLane(layout, lane), nullptr) << scene.lanes[lane].id;
    }
    for (std::size_t i = 0; i < layout.boxes.size(); ++i) {
        const LaneBox& box = layout.boxes[i];
        if (i > 0 && layout.boxes[i - 1].band == box.band) {
            EXPECT_GE(box.strip.top, layout.boxes[i - 1].strip.bottom());
        }
        for (const auto& strips : {box.rows, box.gutters}) {
            for (const Strip& strip : strips) {
                EXPECT_GE(strip.top, box.strip.top);
                EXPECT_LE(strip.bottom(), box.strip.bottom() + 1e-9);
            }
        }
    }
}

// Timelines of windows of 1280 × 800, 1920 × 1080, 900 × 600 (the least), and at 200 %.
INSTANTIATE_TEST_SUITE_P(Windows, LaneLayoutAt,
                         testing::Values(std::pair{1068.0, 568.0}, std::pair{796.0, 568.0},
                                         std::pair{1334.0, 752.0}, std::pair{840.0, 368.0},
                                         std::pair{600.0, 300.0}));

// look.md §3: a curve from 125 °C up (small oven: from 135) clears the blocks.
TEST(LaneLayout, LeavesACurveOfBakingHeatAboveTheBlocks)
{
    const Scene scene = exampleScene();
    for (const auto& [width, height] : {std::pair{1068.0, 568.0}, std::pair{1334.0, 752.0}}) {
        const LaneLayout layout = layoutAt(scene, width, height);
        for (const auto& [id, from] : {std::pair{"oven", 125_degC}, std::pair{"grill", 135_degC}}) {
            const LaneBox& box = boxOf(scene, layout, id);
            const auto& oven = std::get<OvenLane>(scene.lanes[box.lane].kind);
            EXPECT_LE(Geometry::heatY(box, oven, from), box.rows.back().top) << id << " " << width;
        }
    }
}

// look.md §6: with a larger font, rows = max(row, 1.9 × label).
TEST(LaneLayout, GivesLargerTypeHigherRows)
{
    const Scene scene = exampleScene();
    const LaneLayout layout = layoutLanes(scene, {1068, 2000, 0, 2, 0, {}});
    EXPECT_GE(heightOf(scene, layout, "b1"), 1.9 * 10.5 * 2);
    EXPECT_GE(layout.boxes[layout.boxes.size() - 2].tableBand.height, 10 * 2);
    EXPECT_GE(layout.rail.height, 96);
}

TEST(LaneLayout, MeasuresEachLevelFromItsBed)
{
    const Scene scene = exampleScene();
    const LaneLayout layout = layoutAt(scene, 1334, 752);
    const LaneBox& cook = boxOf(scene, layout, "maren");
    EXPECT_DOUBLE_EQ(Geometry::handsY(cook, 0), cook.rows.front().bottom());
    EXPECT_DOUBLE_EQ(Geometry::handsY(cook, 100), cook.rows.front().top);
    const LaneBox& cold = boxOf(scene, layout, "fridge");
    const auto& fridge = std::get<ColdLane>(scene.lanes[cold.lane].kind);
    EXPECT_DOUBLE_EQ(Geometry::coldY(cold, fridge, 0_l), cold.strip.bottom());
    EXPECT_LT(Geometry::coldY(cold, fridge, 45_l), Geometry::coldY(cold, fridge, 40_l));
    EXPECT_GE(Geometry::coldY(cold, fridge, 400_l), cold.strip.top);
}

TEST(LaneLayout, FoldsWhatHasNothingInViewAndOpensItWhenItComesIntoView)
{
    const Scene scene = exampleScene();
    const auto pleats = pleatsOf(scene);
    Viewport viewport;
    viewport.width = 840;
    viewport.height = 368;
    viewport.pixelsPerHour = pixelsPerHourAt(ZoomStop::QuarterHours);
    const auto isMixerFolded = [&](const Interval& when) {
        const Geometry geometry{scene, showing(scene, viewport, pleats, when), pleats};
        return boxOf(scene, geometry.lanes(), "mixer").isFolded;
    };
    EXPECT_TRUE(isMixerFolded({at(Day::Saturday, 17), at(Day::Saturday, 18)}));
    EXPECT_FALSE(isMixerFolded({at(Day::Saturday, 20, 50), at(Day::Saturday, 21)}));
}

} // namespace
} // namespace suppertide::ui
