#include <gtest/gtest.h>

#include "tests/support/timeline/example_scene.h"
#include "ui/timeline/geometry.h"
#include "ui/timeline/pleats.h"
#include "ui/timeline/zoom.h"

namespace suppertide::ui {
namespace {

using test::at;
using test::Day;
using test::exampleScene;

Viewport window()
{
    Viewport viewport;
    viewport.width = 1068;
    viewport.height = 568;
    return viewport;
}

TEST(Zoom, DrawsEachStopInItsOwnManner)
{
    for (const ZoomStop stop : {ZoomStop::Day, ZoomStop::Hours, ZoomStop::QuarterHours}) {
        EXPECT_EQ(stopOf(pixelsPerHourAt(stop)), stop);
    }
}

// The ranges of look.md §3: day 16–40, hours 60–140, quarter hours 200–360 px an hour.
TEST(Zoom, KeepsTheMannerOverTheWholeRangeOfAStop)
{
    for (const double day : {16.0, 28.0, 40.0}) {
        EXPECT_EQ(stopOf(day), ZoomStop::Day);
    }
    for (const double hours : {60.0, 86.0, 140.0}) {
        EXPECT_EQ(stopOf(hours), ZoomStop::Hours);
    }
    for (const double quarters : {200.0, 280.0, 360.0}) {
        EXPECT_EQ(stopOf(quarters), ZoomStop::QuarterHours);
    }
}

TEST(Zoom, ComesBackByAsManyNotches)
{
    EXPECT_NEAR(zoomedBy(zoomedBy(86, 3), -3), 86, 1e-9);
}

TEST(Zoom, EndsAtTheLeastAndTheMost)
{
    EXPECT_DOUBLE_EQ(zoomedBy(86, 100), mostPixelsPerHour);
    EXPECT_DOUBLE_EQ(zoomedBy(86, -100), leastPixelsPerHour);
}

TEST(Zoom, LeavesTheTimeUnderThePointerWhereItIs)
{
    const Scene scene = exampleScene();
    const auto pleats = pleatsOf(scene);
    const Viewport before =
        showing(scene, window(), pleats, {at(Day::Saturday, 17), at(Day::Saturday, 20)});
    const Geometry geometry{scene, before, pleats};
    int free = 0; // of the ends of the horizon, where the view has to stop
    for (const double x : {300.0, 500.0, 700.0}) {
        const PlanTime pointed = geometry.timeAt(x);
        for (const double pace : {60.0, 120.0, 200.0, 360.0}) {
            const Viewport after = zoomedAround(scene, before, pleats, pace, x);
            const Geometry zoomed{scene, after, pleats};
            if (after.scrollX > 0 && after.scrollX < zoomed.maxScrollX()) {
                ++free;
                EXPECT_NEAR(zoomed.x(pointed), x, pace / 60) << "at " << x << ", " << pace;
            }
        }
    }
    EXPECT_GE(free, 9);
}

TEST(Zoom, NeverLeadsOutOfTheHorizon)
{
    const Scene scene = exampleScene();
    const auto pleats = pleatsOf(scene);
    const Viewport far = zoomedAround(scene, window(), pleats, 16, 900);
    const Geometry geometry{scene, far, pleats};
    EXPECT_GE(far.scrollX, 0);
    EXPECT_LE(far.scrollX, geometry.maxScrollX());
}

TEST(Geometry, ShowsAStretchWithoutScrollingFurtherThanNeeded)
{
    const Scene scene = exampleScene();
    const auto pleats = pleatsOf(scene);
    const Interval evening{at(Day::Saturday, 18), at(Day::Saturday, 21)};
    const Viewport shown = showing(scene, window(), pleats, evening);
    const Geometry geometry{scene, shown, pleats};
    EXPECT_GE(geometry.x(evening.start), geometry.timeLeft());
    EXPECT_LE(geometry.x(evening.end), geometry.timeRight());
    EXPECT_EQ(showing(scene, shown, pleats, evening), shown);
}

TEST(Geometry, OpensOnlyThePleatThatTheUserOpened)
{
    const Scene scene = exampleScene();
    const auto pleats = pleatsOf(scene);
    ASSERT_GE(pleats.size(), 2U);
    Viewport viewport = window();
    viewport.openPleats.insert(pleats[1].start);
    const Geometry geometry{scene, viewport, pleats};
    EXPECT_TRUE(geometry.axis().isFolded(pleats[0].start));
    EXPECT_FALSE(geometry.axis().isFolded(pleats[1].start));
}

} // namespace
} // namespace suppertide::ui
