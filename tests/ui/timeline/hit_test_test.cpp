#include <gtest/gtest.h>

#include "tests/support/timeline/example_scene.h"
#include "ui/timeline/hit_test.h"
#include "ui/timeline/pleats.h"
#include "ui/timeline/target_box.h"

namespace suppertide::ui {
namespace {

using test::at;
using test::Day;
using test::exampleScene;

/// A scene in a window of 1068 × 568 with Saturday's evening in view.
class HitTest : public testing::Test
{
protected:
    explicit HitTest(Scene scene = exampleScene()) : scene_(std::move(scene)) { look(); }

    void look()
    {
        const auto pleats = pleatsOf(scene_);
        Viewport viewport;
        viewport.width = 1068;
        viewport.height = 568;
        viewport =
            showing(scene_, viewport, pleats, {at(Day::Saturday, 18), at(Day::Saturday, 21, 40)});
        geometry_ = Geometry{scene_, viewport, pleats};
    }
    [[nodiscard]] Target hit(double x, double y) const
    {
        return targetAt(scene_, geometry_, flags_, x, y);
    }
    [[nodiscard]] const BlockShape& shapeOf(const std::string& id, const std::string& lane) const
    {
        return *std::find_if(
            geometry_.blocks().begin(), geometry_.blocks().end(), [&](const BlockShape& shape) {
                return scene_.blocks[shape.block].id == id && scene_.lanes[shape.lane].id == lane;
            });
    }

    Scene scene_;
    Geometry geometry_;
    std::vector<Flag> flags_;
};

TEST_F(HitTest, FindsEachBlockAtTheMiddleOfWhatIsDrawnOfIt)
{
    scene_.clashes.clear(); // tags lie over blocks
    int seen = 0;
    for (const BlockShape& shape : geometry_.blocks()) {
        const Box box = shape.isSegment() ? shape.pieces.front() : shape.bounds();
        const double x = box.left + std::min(box.width(), shape.likely - shape.left) / 2;
        const double y = (box.top + box.bottom) / 2;
        if (x < geometry_.timeLeft() || x > geometry_.timeRight()) {
            continue;
        }
        ++seen;
        EXPECT_EQ(hit(x, y), (Target{BlockTarget{scene_.blocks[shape.block].id,
                                                 scene_.lanes[shape.lane].id}}));
    }
    EXPECT_GT(seen, 15);
}

TEST_F(HitTest, GrowsAThinBlockToTwentyFourPixels)
{
    // "Carve" takes 5 min: some 7 px. The row of "Sauce" beside it lies at the foot.
    const BlockShape& fry = shapeOf("fry", "b2");
    const Target target{BlockTarget{"fry", "b2"}};
    ASSERT_LT(fry.bounds().height(), leastTarget);
    const double x = (fry.left + fry.likely) / 2;
    const double grow = (leastTarget - fry.bounds().height()) / 2;
    EXPECT_EQ(hit(x, fry.top - grow + 0.5), target);
    EXPECT_EQ(hit(x, fry.bottom + grow - 0.5), target);
    EXPECT_NE(hit(x, fry.top - grow - 1), target);
}

TEST_F(HitTest, CutsTheHitAreaHalfWayToTheNeighbour)
{
    scene_.clashes.clear();
    auto block = [&](const std::string& id) -> SceneBlock& {
        return *std::find_if(scene_.blocks.begin(), scene_.blocks.end(),
                             [&](const SceneBlock& b) { return b.id == id; });
    };
    // Two steps of 4 min on one burner, 6 min apart.
    for (const auto& [id, start] :
         {std::pair{"fry", at(Day::Saturday, 19)}, std::pair{"beets", at(Day::Saturday, 19, 10)}}) {
        block(id).start = start;
        block(id).least = block(id).likely = block(id).most = 4_min;
    }
    look();
    const Box left = shapeOf("fry", "b2").bounds();
    const Box right = shapeOf("beets", "b2").bounds();
    const double middle = (left.right + right.left) / 2;
    const double y = (left.top + left.bottom) / 2;
    EXPECT_EQ(hit(middle - 0.5, y), (Target{BlockTarget{"fry", "b2"}}));
    EXPECT_EQ(hit(middle + 0.5, y), (Target{BlockTarget{"beets", "b2"}}));
}

TEST_F(HitTest, PrefersATagToTheBlockUnderIt)
{
    for (const TagPlace& tag : placeTags(scene_, geometry_)) {
        EXPECT_EQ(hit(tag.x, tag.y), Target{TagTarget{tag.clash}});
    }
}

TEST_F(HitTest, GivesEveryClashATagAtEachOfItsPlaces)
{
    const auto tags = placeTags(scene_, geometry_);
    const auto count = [&](int clash) {
        return std::count_if(tags.begin(), tags.end(),
                             [&](const TagPlace& tag) { return tag.clash == clash; });
    };
    EXPECT_EQ(count(1), 2);
    EXPECT_EQ(count(2), 2); // at the step and on the wait
    EXPECT_EQ(count(3), 2);
}

TEST_F(HitTest, LaysNoTagOverAnother)
{
    const auto tags = placeTags(scene_, geometry_);
    for (std::size_t i = 0; i < tags.size(); ++i) {
        for (std::size_t j = i + 1; j < tags.size(); ++j) {
            const Box a{tags[i].x - 8, tags[i].y - 8, tags[i].x + 8, tags[i].y + 8};
            const Box b{tags[j].x - 8, tags[j].y - 8, tags[j].x + 8, tags[j].y + 8};
            EXPECT_FALSE(a.overlaps(b)) << i << " and " << j;
        }
    }
}

TEST_F(HitTest, TellsALanesHeaderFromItsGround)
{
    const LaneBox& box = *boxOfLane(geometry_.lanes(), findLane(scene_, "fridge").value());
    const double y = box.strip.top + box.strip.height / 2;
    EXPECT_EQ(hit(20, y), (Target{LaneTarget{"fridge", true}}));
    EXPECT_EQ(hit(geometry_.x(at(Day::Saturday, 18)), y), (Target{LaneTarget{"fridge", false}}));
}

TEST_F(HitTest, FindsAPleatInTheLanesAndOnTheRuler)
{
    const auto& pieces = geometry_.axis().pieces();
    const auto fold = std::find_if(pieces.begin(), pieces.end(), [&](const TimeAxis::Piece& piece) {
        return piece.isFolded && geometry_.x(piece.when.start) > geometry_.timeLeft();
    });
    ASSERT_NE(fold, pieces.end());
    const PlanTime start = fold->when.start;
    const double x = geometry_.x(start) + 6;
    EXPECT_EQ(hit(x, geometry_.lanes().ruler.top + 5), Target{PleatTarget{start}});
    const LaneBox& fridge = *boxOfLane(geometry_.lanes(), findLane(scene_, "fridge").value());
    EXPECT_EQ(hit(x, fridge.strip.top + 5), Target{PleatTarget{start}});
}

TEST_F(HitTest, FindsAFlagWithAtLeastTwentyFourPixelsOfWidth)
{
    for (const SceneServing& serving : scene_.servings) {
        const double mast = geometry_.x(serving.time);
        flags_.push_back({mast - flagNumberWidth, mast, (serving.course - 1) % 2, false, false});
    }
    for (std::size_t i = 0; i < flags_.size(); ++i) {
        const double top = flags_[i].level == 0 ? 8 : 28;
        EXPECT_EQ(hit(flags_[i].right - leastTarget + 1, top),
                  Target{FlagTarget{scene_.servings[i].course}});
    }
}

TEST_F(HitTest, FindsNothingBesideTheRail)
{
    EXPECT_EQ(hit(30, 10), Target{});
    EXPECT_EQ(hit(300, 5), Target{});
}

TEST_F(HitTest, KnowsWhereEachTargetIsDrawn)
{
    const BlockShape& fry = shapeOf("fry", "b2");
    EXPECT_EQ(boxOfTarget(scene_, geometry_, BlockTarget{"fry", "b2"}), fry.bounds());
    EXPECT_EQ(boxOfTarget(scene_, geometry_, BlockTarget{"fry", "oven"}), std::nullopt);
    EXPECT_EQ(boxOfTarget(scene_, geometry_, Target{}), std::nullopt);
    EXPECT_EQ(boxOfTarget(scene_, geometry_, LaneTarget{"maren", false}, LaneBand::Foot),
              std::nullopt); // nothing scrolls here, so there is no foot
    const auto flag = boxOfTarget(scene_, geometry_, FlagTarget{1});
    ASSERT_TRUE(flag.has_value());
    EXPECT_DOUBLE_EQ(flag->right, geometry_.x(at(Day::Saturday, 19, 30)));
}

} // namespace
} // namespace suppertide::ui
