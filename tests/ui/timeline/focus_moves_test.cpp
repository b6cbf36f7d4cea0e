#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "tests/support/timeline/example_scene.h"
#include "ui/timeline/focus_moves.h"
#include "ui/timeline/pleats.h"

namespace suppertide::ui {
namespace {

using test::at;
using test::Day;

class FocusMoves : public testing::Test
{
protected:
    FocusMoves()
    {
        const auto pleats = pleatsOf(scene_);
        Viewport viewport;
        viewport.width = 1334;
        viewport.height = 752;
        viewport =
            showing(scene_, viewport, pleats, {at(Day::Saturday, 15), at(Day::Saturday, 21, 40)});
        geometry_ = Geometry{scene_, viewport, pleats};
    }
    [[nodiscard]] Target move(const Target& from, FocusMove where) const
    {
        return moveFocus(scene_, geometry_, from, where);
    }
    [[nodiscard]] static Target block(const std::string& id, const std::string& lane)
    {
        return BlockTarget{id, lane};
    }

    Scene scene_ = test::exampleScene();
    Geometry geometry_;
};

TEST_F(FocusMoves, GoThroughALaneInTheOrderOfTime)
{
    EXPECT_EQ(move(block("sear", "b1"), FocusMove::Later), block("sauce", "b1"));
    EXPECT_EQ(move(block("sauce", "b1"), FocusMove::Earlier), block("sear", "b1"));
}

TEST_F(FocusMoves, StayAtTheEndsOfALane)
{
    EXPECT_EQ(move(block("sauce", "b1"), FocusMove::Later), block("sauce", "b1"));
    EXPECT_EQ(move(block("stock", "b1"), FocusMove::Earlier), block("stock", "b1"));
}

TEST_F(FocusMoves, LeadToTheBlockNearestInTimeInTheNextLaneThatHasAny)
{
    EXPECT_EQ(move(block("sear", "b1"), FocusMove::Down), block("beets", "b2"));
    // The burner of 14 cm is empty.
    EXPECT_EQ(move(block("stew-rhubarb", "b3"), FocusMove::Down), block("blend", "blender"));
    EXPECT_EQ(move(block("whip", "mixer"), FocusMove::Up), block("blend", "blender"));
}

TEST_F(FocusMoves, LeadFromTheUppermostLaneToTheRailAndBack)
{
    const Target flag = move(block("roast-roots", "oven"), FocusMove::Up);
    EXPECT_EQ(flag, (Target{FlagTarget{1}}));
    EXPECT_EQ(move(flag, FocusMove::Later), (Target{FlagTarget{2}}));
    EXPECT_EQ(move(flag, FocusMove::Down), block("roast-roots", "oven"));
    EXPECT_EQ(move(flag, FocusMove::Up), flag);
}

TEST_F(FocusMoves, ReachEveryFlagAndEveryPleatOnTheRail)
{
    Target target = move(FlagTarget{1}, FocusMove::First);
    std::size_t flags = 0;
    std::size_t folds = 0;
    for (;;) {
        flags += std::holds_alternative<FlagTarget>(target) ? 1U : 0U;
        folds += std::holds_alternative<PleatTarget>(target) ? 1U : 0U;
        const Target next = move(target, FocusMove::Later);
        if (next == target) {
            break;
        }
        target = next;
    }
    EXPECT_EQ(flags, scene_.servings.size());
    EXPECT_EQ(folds, pleatsOf(scene_).size());
}

TEST_F(FocusMoves, BeginAtTheFirstBlockInView)
{
    Viewport close;
    close.width = 1334;
    close.height = 752;
    close.pixelsPerHour = pixelsPerHourAt(ZoomStop::QuarterHours);
    const auto pleats = pleatsOf(scene_);
    close = showing(scene_, close, pleats, {at(Day::Saturday, 15, 30), at(Day::Saturday, 19, 30)});
    const Geometry geometry{scene_, close, pleats};
    ASSERT_GT(geometry.visibleTime().start, at(Day::Saturday, 11, 30));
    EXPECT_EQ(moveFocus(scene_, geometry, {}, FocusMove::Later), block("sear", "b1"));
}

TEST_F(FocusMoves, LeadToTheFirstAndTheLastBlockOfAll)
{
    EXPECT_EQ(move(block("sear", "b1"), FocusMove::First), block("order-fish", "maren"));
    EXPECT_EQ(move(block("sear", "b1"), FocusMove::Last), block("dress", "maren"));
}

TEST_F(FocusMoves, FindTheWayBackFromAPleatThatWasOpened)
{
    const Target next = move(PleatTarget{planTime(7)}, FocusMove::Later);
    EXPECT_TRUE(std::holds_alternative<BlockTarget>(next));
}

TEST_F(FocusMoves, ReachEveryBlockFromAnyOther)
{
    std::set<std::pair<std::string, std::string>> reached;
    std::vector<Target> open{move({}, FocusMove::First)};
    while (!open.empty()) {
        const Target target = open.back();
        open.pop_back();
        const auto* at = std::get_if<BlockTarget>(&target);
        if (at == nullptr || !reached.insert({at->id, at->lane}).second) {
            continue;
        }
        for (const FocusMove where :
             {FocusMove::Earlier, FocusMove::Later, FocusMove::Up, FocusMove::Down}) {
            open.push_back(move(target, where));
        }
    }
    EXPECT_EQ(reached.size(), geometry_.blocks().size());
}

TEST_F(FocusMoves, HaveNowhereToGoInAnEmptyScene)
{
    Scene nothing;
    nothing.horizon = interval(0, 60);
    EXPECT_EQ(moveFocus(nothing, Geometry{nothing, Viewport{}, {}}, {}, FocusMove::Later),
              Target{});
}

TEST_F(FocusMoves, BeginOnTheRailOfAKitchenWithoutSteps)
{
    const Scene empty = test::emptyScene();
    Viewport viewport;
    viewport.width = 1068;
    viewport.height = 568;
    const Target first =
        moveFocus(empty, Geometry{empty, viewport, pleatsOf(empty)}, {}, FocusMove::Later);
    EXPECT_NE(first, Target{});
}

TEST_F(FocusMoves, ListAllBlocksOnceInTheOrderOfTime)
{
    const auto order = readingOrder(scene_);
    ASSERT_EQ(order.size(), scene_.blocks.size());
    EXPECT_EQ(std::set<std::size_t>(order.begin(), order.end()).size(), order.size());
    EXPECT_TRUE(std::is_sorted(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return scene_.blocks[a].start < scene_.blocks[b].start;
    }));
}

} // namespace
} // namespace suppertide::ui
