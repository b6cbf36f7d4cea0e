#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "tests/support/demo_evening.h"

namespace suppertide::ui {
namespace {

using test::demoLibrary;
using test::LaidOut;

/// The demo's evening without its dishes, or without its courses too.
LibraryState emptied(bool withCourses)
{
    return withOccasion(demoLibrary(), [&](Occasion& occasion) {
        for (Course& course : occasion.courses) {
            course.dishes.clear();
        }
        for (ShoppingTrip& trip : occasion.trips) {
            trip.forDishes.clear();
        }
        if (!withCourses) {
            occasion.courses.clear();
        }
    });
}

class SceneOfTheDemo : public testing::Test
{
protected:
    LaidOut evening_{demoLibrary()};
    Scene scene_ = sceneOfPlan(evening_.source());
};

TEST_F(SceneOfTheDemo, IsTheSameForTheSamePlan)
{
    EXPECT_EQ(scene_, sceneOfPlan(evening_.source()));
}

TEST_F(SceneOfTheDemo, ShowsEveryTaskThatTakesTimeOnceWhereItIs)
{
    std::set<std::string> shown;
    for (const SceneBlock& block : scene_.blocks) {
        EXPECT_TRUE(shown.insert(block.id).second) << block.id;
        EXPECT_EQ(block.start, evening_.start(block.id)) << block.id;
        EXPECT_LE(block.least, block.likely) << block.id;
        EXPECT_LE(block.likely, block.most) << block.id;
        EXPECT_FALSE(block.sentence.empty()) << block.id;
        ASSERT_FALSE(block.places.empty()) << block.id;
        for (const Placement& place : block.places) {
            EXPECT_TRUE(findLane(scene_, place.lane)) << block.id << " on " << place.lane;
        }
    }
    const Problem& problem = evening_.plan->formulation->problem;
    for (const TaskIndex task : problem.tasks.indices()) {
        const auto when = evening_.plan->interval(task);
        const bool isHandled = when && !when->empty() && problem.tasks[task].hands.has_value();
        EXPECT_TRUE(!isHandled || shown.contains(problem.tasks[task].id))
            << problem.tasks[task].id << " keeps a cook busy and is not shown";
    }
}

TEST_F(SceneOfTheDemo, HasALaneForEveryCookOvenBurnerAndColdPlaceOfTheKitchen)
{
    const Kitchen& kitchen = *evening_.input().kitchen;
    const auto count = [&](auto kind) {
        return static_cast<std::size_t>(
            std::count_if(scene_.lanes.begin(), scene_.lanes.end(), [](const SceneLane& lane) {
                return std::holds_alternative<decltype(kind)>(lane.kind);
            }));
    };
    EXPECT_EQ(count(OvenLane{}), kitchen.ovens.size());
    EXPECT_EQ(count(BurnerLane{}), kitchen.burners.size());
    EXPECT_EQ(count(CookLane{}), kitchen.cooks.size());
    EXPECT_GE(count(ColdLane{}), 1U);
    std::set<std::string> ids;
    for (const SceneLane& lane : scene_.lanes) {
        EXPECT_TRUE(ids.insert(lane.id).second) << lane.id;
        EXPECT_FALSE(lane.name.empty()) << lane.id;
    }
}

TEST_F(SceneOfTheDemo, ServesTheCoursesInTheirOrderAtTheirTimes)
{
    const Occasion& occasion = evening_.occasion();
    ASSERT_EQ(scene_.servings.size(), occasion.courses.size());
    for (std::size_t i = 0; i < occasion.courses.size(); ++i) {
        EXPECT_EQ(scene_.servings[i].course, static_cast<int>(i) + 1);
        EXPECT_EQ(scene_.servings[i].name, occasion.courses[i].name);
        EXPECT_EQ(scene_.calendar.civil(scene_.servings[i].time), occasion.courses[i].serving);
    }
}

TEST_F(SceneOfTheDemo, GivesEachDishItsOwnLookAndName)
{
    std::set<int> looks;
    for (const SceneBlock& block : scene_.blocks) {
        if (block.dish) {
            ASSERT_LT(*block.dish, scene_.dishes.size());
            EXPECT_FALSE(scene_.dishes[*block.dish].name.empty()) << block.id;
        }
    }
    for (const SceneDish& dish : scene_.dishes) {
        EXPECT_TRUE(looks.insert(dish.look).second) << dish.name;
    }
}

TEST_F(SceneOfTheDemo, TiesWaitsToBlocksThatAreThere)
{
    EXPECT_FALSE(scene_.waits.empty());
    for (const SceneWait& wait : scene_.waits) {
        EXPECT_NE(findBlock(scene_, wait.from), nullptr) << wait.id;
        EXPECT_TRUE(wait.to.empty() || findBlock(scene_, wait.to) != nullptr) << wait.id;
        EXPECT_LE(wait.when.start, wait.when.end) << wait.id;
        EXPECT_FALSE(wait.label.empty()) << wait.id;
    }
}

TEST_F(SceneOfTheDemo, MarksThePinnedStepsOnly)
{
    const std::string id = scene_.blocks.front().id;
    LibraryState library = evening_.library;
    Layout layout = *evening_.input().layout;
    layout.pinned.insert(id);
    const LaidOut pinned(withLayout(library, layout));
    for (const SceneBlock& block : sceneOfPlan(pinned.source()).blocks) {
        EXPECT_EQ(block.isPinned, block.id == id) << block.id;
    }
}

TEST_F(SceneOfTheDemo, DrawsNowOnlyWithinItsDays)
{
    SceneSource source = evening_.source();
    source.now = scene_.calendar.instant(scene_.servings.front().time);
    EXPECT_EQ(sceneOfPlan(source).now, scene_.servings.front().time);
    source.now = scene_.calendar.instant(scene_.horizon.end + 24_h * 400);
    EXPECT_EQ(sceneOfPlan(source).now, std::nullopt);
}

TEST_F(SceneOfTheDemo, NumbersItsClashesAsTheListDoes)
{
    const LaidOut first(demoLibrary("midsummer-supper-first-idea"));
    const Scene scene = sceneOfPlan(first.source());
    ASSERT_FALSE(first.plan->clashes.empty()) << "the first idea cannot be cooked as it is";
    ASSERT_EQ(scene.clashes.size(), first.plan->clashes.size());
    for (std::size_t i = 0; i < scene.clashes.size(); ++i) {
        EXPECT_EQ(scene.clashes[i].number, static_cast<int>(i) + 1);
        EXPECT_EQ(scene.clashes[i].sentence,
                  sentence(*first.plan, first.occasion(), first.plan->clashes[i]));
        for (const ClashPlace& place : scene.clashes[i].places) {
            EXPECT_TRUE(findLane(scene, place.lane)) << place.lane;
            EXPECT_TRUE(!place.task || findBlock(scene, *place.task) != nullptr) << *place.task;
        }
    }
}

TEST_F(SceneOfTheDemo, SaysHowFarAStepCanMove)
{
    for (const SceneBlock& block : scene_.blocks) {
        Scene scene = scene_;
        addSlack(scene, evening_.source(), evening_.task(block.id));
        const SceneBlock& shown = *findBlock(scene, block.id);
        if (shown.slack) {
            EXPECT_TRUE(shown.slack->start <= shown.start && shown.start <= shown.slack->end);
            EXPECT_FALSE(shown.slackWords.empty());
            // The word itself is the painter's.
            EXPECT_EQ(shown.slackWords.find("slack"), std::string::npos);
        }
    }
}

TEST(SceneOfAnEmptyOccasion, ShowsTheKitchenAndTheServingLines)
{
    const LaidOut evening(emptied(true));
    const Scene scene = sceneOfPlan(evening.source());
    EXPECT_EQ(scene.servings.size(), evening.occasion().courses.size());
    EXPECT_FALSE(scene.lanes.empty());
    for (const SceneBlock& block : scene.blocks) {
        EXPECT_FALSE(block.dish) << block.id << ": only house jobs and trips are left";
    }
}

TEST(SceneOfAnEmptyOccasion, ShowsTheKitchenWithoutAnyCourse)
{
    const LibraryState library = emptied(false);
    const OccasionPtr record = openOccasion(library);
    const Scene scene = sceneOfKitchen(record->occasion, openKitchen(library).get(), std::nullopt);
    EXPECT_TRUE(scene.blocks.empty());
    EXPECT_TRUE(scene.servings.empty());
    EXPECT_FALSE(scene.lanes.empty());
    EXPECT_LT(scene.horizon.start, scene.horizon.end);
}

TEST(SceneOfAnEmptyOccasion, IsThereWithoutAKitchen)
{
    const LibraryState library = emptied(true);
    const Scene scene = sceneOfKitchen(openOccasion(library)->occasion, nullptr, std::nullopt);
    EXPECT_TRUE(scene.lanes.empty());
    EXPECT_EQ(scene.servings.size(), 4U);
}

} // namespace
} // namespace suppertide::ui
