// A variant from the repertoire over the timeline: what shows before it is let go.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "tests/support/demo_evening.h"

namespace suppertide::ui {
namespace {

using test::demoLibrary;
using test::LaidOut;

std::set<std::string> ghostsOf(const Scene& scene)
{
    std::set<std::string> ghosts;
    for (const SceneBlock& block : scene.blocks) {
        if (block.ghost) {
            ghosts.insert(block.id);
        }
    }
    return ghosts;
}

class DraggedVariantTest : public testing::Test
{
protected:
    static constexpr int mainCourse = 3;

    static VariantDrop dropOf(const LibraryState& library, const char* recipe, int course)
    {
        auto drop = variantDrop(library, {QString::fromLatin1(recipe), {}}, course);
        if (!drop) {
            throw std::runtime_error("no such variant or course");
        }
        return *std::move(drop);
    }

    LaidOut before_{demoLibrary()};
};

TEST_F(DraggedVariantTest, IsLaidOutBackwardsFromTheServingLineItHangsOn)
{
    const VariantDrop drop = dropOf(before_.library, "braised-fennel", mainCourse);
    const LaidOut after(drop.next);
    const Scene scene = ghostScene(after.source(), *before_.plan, drop);
    const std::set<std::string> ghosts = ghostsOf(scene);
    ASSERT_FALSE(ghosts.empty());
    const PlanTime serving = findServing(scene, mainCourse)->time;
    PlanTime last = planTime(0);
    for (const SceneBlock& block : scene.blocks) {
        if (!block.ghost) {
            continue;
        }
        EXPECT_EQ(after.plan->formulation->tasks[after.task(block.id)].dish, drop.dish);
        if (block.start < serving) {
            EXPECT_EQ(block.ghost->countdown, serving - block.start) << block.id;
            last = std::max(last, block.when().end);
        }
    }
    EXPECT_LE(last, serving);
    EXPECT_GT(last, serving - 60_min) << "it ends as late as it may";
}

TEST_F(DraggedVariantTest, HangsOnWhicheverCourseItIsOver)
{
    for (int course = 1; course <= 4; ++course) {
        const VariantDrop drop = dropOf(before_.library, "celeriac-slaw", course);
        EXPECT_EQ(drop.courseNumber, course);
        const LaidOut after(drop.next);
        const Scene scene = ghostScene(after.source(), *before_.plan, drop);
        ASSERT_TRUE(scene.card);
        EXPECT_EQ(scene.card->servingAt, findServing(scene, course)->time);
        EXPECT_FALSE(ghostsOf(scene).empty()) << course;
    }
}

TEST_F(DraggedVariantTest, TiesItsStepsToTheServingLine)
{
    const VariantDrop drop = dropOf(before_.library, "braised-fennel", mainCourse);
    const LaidOut after(drop.next);
    const Scene scene = ghostScene(after.source(), *before_.plan, drop);
    const std::set<std::string> ghosts = ghostsOf(scene);
    EXPECT_TRUE(std::any_of(scene.threads.begin(), scene.threads.end(), [](const auto& thread) {
        return thread.to.empty() && thread.course == mainCourse;
    }));
    for (const GhostThread& thread : scene.threads) {
        EXPECT_TRUE(ghosts.contains(thread.from)) << thread.from;
        EXPECT_TRUE(thread.to.empty() || ghosts.contains(thread.to)) << thread.to;
    }
}

TEST_F(DraggedVariantTest, LeavesEveryStepOfTheEveningWhereItIs)
{
    const VariantDrop drop = dropOf(before_.library, "braised-fennel", mainCourse);
    const LaidOut after(drop.next);
    const Scene shown = sceneOfPlan(before_.source());
    const Scene scene = ghostScene(after.source(), *before_.plan, drop);
    for (const SceneBlock& block : shown.blocks) {
        const SceneBlock* now = findBlock(scene, block.id);
        ASSERT_NE(now, nullptr) << block.id;
        EXPECT_FALSE(now->ghost) << block.id;
    }
}

TEST_F(DraggedVariantTest, SaysTheClashesThatItWouldMake)
{
    const VariantDrop drop = dropOf(before_.library, "roast-chicken", mainCourse);
    const LaidOut after(drop.next);
    const int clashes = newClashes(*before_.plan, *after.plan, after.occasion());
    ASSERT_GT(clashes, 0) << "a bird beside all that is in the ovens already";
    const Scene scene = ghostScene(after.source(), *before_.plan, drop);
    ASSERT_TRUE(scene.card);
    EXPECT_FALSE(scene.card->isGood);
    EXPECT_EQ(scene.card->verdict,
              clashes == 1 ? "1 new clash" : std::to_string(clashes) + " new clashes");
    EXPECT_EQ(scene.card->title, "Roast chicken with lemon");
    EXPECT_EQ(scene.clashes.size(), after.plan->clashes.size());
}

TEST_F(DraggedVariantTest, FindsNoNewClashInAPlanThatIsTheSame)
{
    EXPECT_EQ(newClashes(*before_.plan, *before_.plan, before_.occasion()), 0);
}

TEST_F(DraggedVariantTest, IsNoneForWhatIsNotThere)
{
    EXPECT_FALSE(variantDrop(before_.library, {"no-such-recipe", {}}, 1));
    EXPECT_FALSE(variantDrop(before_.library, {"roast-roots", "no-such-variant"}, 1));
    EXPECT_FALSE(variantDrop(before_.library, {"roast-roots", {}}, 0));
    EXPECT_FALSE(variantDrop(before_.library, {"roast-roots", {}}, 5));
    EXPECT_FALSE(variantDrop({}, {"roast-roots", {}}, 1));
}

TEST_F(DraggedVariantTest, GoesBesideTheOthersOfADishThatTheCourseHasAlready)
{
    const auto drop = variantDrop(before_.library, {"stuffed-squash", "without-dairy"}, mainCourse);
    ASSERT_TRUE(drop);
    EXPECT_EQ(drop->dish, DishId{"squash"});
    const Dish& squash =
        *findIn(openOccasion(drop->next)->occasion.courses[2].dishes, DishId{"squash"});
    ASSERT_EQ(squash.mix.size(), 2U);
    EXPECT_EQ(squash.mix.back().variant, VariantId{"without-dairy"});
}

class DraggedStep : public testing::Test
{
protected:
    LaidOut evening_{demoLibrary()};
};

TEST_F(DraggedStep, ShowsWhereItMayGoAroundWhereItIs)
{
    std::size_t lit = 0;
    const Scene scene = sceneOfPlan(evening_.source());
    for (const SceneBlock& block : scene.blocks) {
        Scene marked = scene;
        addDragMarks(marked, evening_.source(), evening_.task(block.id));
        for (const AllowedRange& range : marked.allowed) {
            EXPECT_TRUE(range.when.start <= block.start && block.when().end <= range.when.end)
                << block.id;
            EXPECT_TRUE(range.words.starts_with("may ")) << range.words;
            ++lit;
        }
    }
    EXPECT_GT(lit, scene.blocks.size() / 2);
}

TEST_F(DraggedStep, IsRefusedByOvensAndBurnersThatCannotTakeItWithTheReason)
{
    std::size_t refusals = 0;
    const Scene scene = sceneOfPlan(evening_.source());
    for (const SceneBlock& block : scene.blocks) {
        Scene marked = scene;
        addDragMarks(marked, evening_.source(), evening_.task(block.id));
        for (const SceneLane& lane : marked.lanes) {
            refusals += lane.refusal ? 1U : 0U;
            EXPECT_TRUE(!lane.refusal || !lane.refusal->empty());
        }
    }
    EXPECT_GT(refusals, 0U) << "a wide pan does not fit the smallest burner";
}

} // namespace
} // namespace suppertide::ui
