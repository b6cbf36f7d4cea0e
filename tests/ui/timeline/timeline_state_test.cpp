#include <gtest/gtest.h>

#include "tests/support/timeline/example_scene.h"
#include "ui/timeline/pleats.h"
#include "ui/timeline/timeline_state.h"

namespace suppertide::ui {
namespace {

using test::at;
using test::Day;
using test::exampleScene;

class TimelineStateTest : public testing::Test
{
protected:
    TimelineStateTest()
    {
        state_.resize(1068, 568);
        state_.setScene(exampleScene());
    }

    TimelineState state_;
};

TEST_F(TimelineStateTest, ShowsTheEveningFirst)
{
    const Interval seen = state_.geometry().visibleTime();
    EXPECT_TRUE(seen.contains(at(Day::Saturday, 21, 20)));
    EXPECT_TRUE(seen.contains(at(Day::Saturday, 19, 30)));
}

TEST_F(TimelineStateTest, StaysWhereTheUserScrolledWhenAnotherSceneComes)
{
    state_.scrollTo(0, 0);
    Scene next = exampleScene();
    next.blocks.pop_back();
    state_.setScene(next);
    EXPECT_DOUBLE_EQ(state_.viewport().scrollX, 0);
}

TEST_F(TimelineStateTest, ScrollsNoFurtherThanThereIs)
{
    state_.scrollTo(1e6, 1e6);
    EXPECT_DOUBLE_EQ(state_.viewport().scrollX, state_.geometry().maxScrollX());
    state_.scrollTo(-50, -50);
    EXPECT_DOUBLE_EQ(state_.viewport().scrollX, 0);
    EXPECT_TRUE(state_.scrollTo(-50, 0).isNone());
}

TEST_F(TimelineStateTest, OpensAndClosesAPleat)
{
    const PlanTime start = pleatsOf(state_.scene()).front().start;
    ASSERT_TRUE(state_.geometry().axis().isFolded(start));
    state_.togglePleat(start);
    EXPECT_FALSE(state_.geometry().axis().isFolded(start));
    state_.togglePleat(start);
    EXPECT_TRUE(state_.geometry().axis().isFolded(start));
}

TEST_F(TimelineStateTest, HoldsTheFoldsStillDuringADrag)
{
    const TimeAxis before = state_.geometry().axis();
    state_.holdPleats(true);
    // In the middle of the night: would open a fold.
    state_.setScene(state_.withBlockAt("fry", at(Day::Saturday, 3)));
    EXPECT_EQ(state_.geometry().axis(), before);
    state_.holdPleats(false);
    EXPECT_NE(state_.geometry().axis(), before);
}

TEST_F(TimelineStateTest, NamesTheCourseNearestToATime)
{
    EXPECT_EQ(state_.nearestCourse(at(Day::Saturday, 8)), 1);
    EXPECT_EQ(state_.nearestCourse(at(Day::Saturday, 20, 20)), 3);
    EXPECT_EQ(state_.nearestCourse(at(Day::Saturday, 23)), 4);
    EXPECT_EQ(TimelineState{}.nearestCourse(planTime(0)), std::nullopt);
}

TEST_F(TimelineStateTest, PicksABlockWithItsRangeAndTheHorizonAsBounds)
{
    const auto pick = state_.pickBlock("braise", at(Day::Saturday, 17));
    ASSERT_TRUE(pick.has_value());
    EXPECT_EQ(pick->start, at(Day::Saturday, 15, 55));
    EXPECT_EQ(pick->length, 215_min);
    EXPECT_EQ(pick->bounds, state_.scene().horizon);
    EXPECT_EQ(pick->range, state_.scene().blocks.front().slack
                               ? state_.scene().blocks.front().slack
                               : findBlock(state_.scene(), "braise")->slack);
    EXPECT_EQ(state_.pickBlock("nobody", planTime(0)), std::nullopt);
}

TEST_F(TimelineStateTest, LetsNoGhostBePickedUp)
{
    state_.setScene(exampleScene(true));
    EXPECT_EQ(state_.pickBlock("g-bake", at(Day::Saturday, 19, 30)), std::nullopt);
}

TEST_F(TimelineStateTest, MovesOneThingAndLeavesAllElse)
{
    const Scene moved = state_.withServingAt(2, at(Day::Saturday, 20));
    EXPECT_EQ(findServing(moved, 2)->time, at(Day::Saturday, 20));
    EXPECT_EQ(moved.blocks, state_.scene().blocks);
    const Scene shifted = state_.withBlockAt("fry", at(Day::Saturday, 18));
    EXPECT_EQ(findBlock(shifted, "fry")->start, at(Day::Saturday, 18));
    EXPECT_EQ(shifted.servings, state_.scene().servings);
}

bool covers(const Damage& damage, const Box& box)
{
    return damage.isAll || std::any_of(damage.boxes.begin(), damage.boxes.end(), [&](const Box& d) {
               return d.left <= box.left && box.right <= d.right && d.top <= box.top &&
                      box.bottom <= d.bottom;
           });
}

TEST_F(TimelineStateTest, RepaintsNothingForTheSameScene)
{
    EXPECT_TRUE(state_.setScene(exampleScene()).isNone());
}

TEST_F(TimelineStateTest, RepaintsAMovedBlockWhereItWasAndWhereItIs)
{
    const auto boundsOf = [&](const std::string& id) {
        const auto& shapes = state_.geometry().blocks();
        return std::find_if(shapes.begin(), shapes.end(),
                            [&](const BlockShape& shape) {
                                return state_.scene().blocks[shape.block].id == id;
                            })
            ->bounds();
    };
    const Box before = boundsOf("peel");
    const Damage damage = state_.setScene(state_.withBlockAt("peel", at(Day::Saturday, 18, 55)));
    EXPECT_FALSE(damage.isAll);
    EXPECT_TRUE(covers(damage, before));
    EXPECT_TRUE(covers(damage, boundsOf("peel")));
    EXPECT_LT(damage.boxes.size(), 12U);
}

TEST_F(TimelineStateTest, RepaintsEverythingWhenAServingMoves)
{
    EXPECT_TRUE(state_.setScene(state_.withServingAt(1, at(Day::Saturday, 19))).isAll);
}

TEST_F(TimelineStateTest, RepaintsOnlyWhatAMarkTouches)
{
    Marks marks;
    marks.selected = "braise";
    const Damage damage = state_.setMarks(marks);
    EXPECT_FALSE(damage.isAll);
    EXPECT_FALSE(damage.isNone());
    EXPECT_TRUE(state_.setMarks(marks).isNone());
}

} // namespace
} // namespace suppertide::ui
