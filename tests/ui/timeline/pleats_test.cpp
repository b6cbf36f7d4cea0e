#include <gtest/gtest.h>

#include "tests/support/for_each_seed.h"
#include "tests/support/timeline/example_scene.h"
#include "ui/timeline/pleats.h"

namespace suppertide::ui {
namespace {

using suppertide::test::forEachSeed;
using suppertide::test::Random;
using test::at;
using test::Day;

Scene quietDay()
{
    Scene scene;
    scene.horizon = interval(0, 1440);
    return scene;
}

SceneBlock step(PlanTime start, Minutes length, int attention)
{
    SceneBlock block;
    block.id = "step";
    block.start = start;
    block.least = block.likely = block.most = length;
    block.attention = Attention::percent(attention);
    return block;
}

TEST(Pleats, LeaveAnEmptyTimelineOpen)
{
    EXPECT_TRUE(pleatsOf(quietDay()).empty());
}

TEST(Pleats, KeepOffWorkByFiveMinutesAndEndOnQuarterHours)
{
    Scene scene = quietDay();
    scene.blocks.push_back(step(planTime(600), 30_min, 10));
    EXPECT_EQ(pleatsOf(scene), (std::vector{interval(0, 585), interval(645, 1440)}));
}

TEST(Pleats, RunOnThroughWhatNobodyHasToAttend)
{
    Scene scene = quietDay();
    scene.blocks.push_back(step(planTime(600), 90_min, 0));
    EXPECT_EQ(pleatsOf(scene), std::vector{interval(0, 1440)});
}

TEST(Pleats, StopAtATurnOfTheOvensKnobAndAtAServing)
{
    Scene scene = quietDay();
    scene.blocks.push_back(step(planTime(600), 90_min, 0));
    OvenLane oven;
    oven.settings = {{interval(300, 720), 150_degC, false}};
    scene.lanes.push_back({"oven", "Oven", "", oven, 0, std::nullopt});
    scene.servings.push_back({1, "Soup", planTime(1200), false});
    EXPECT_EQ(pleatsOf(scene), (std::vector{interval(0, 285), interval(315, 705),
                                            interval(735, 1185), interval(1215, 1440)}));
}

TEST(Pleats, LeaveAloneWhatIsShorterThanNinetyMinutes)
{
    Scene scene = quietDay();
    scene.horizon = interval(0, 330);
    scene.blocks.push_back(step(planTime(0), 30_min, 80));
    scene.blocks.push_back(step(planTime(145), 30_min, 80));
    // 35…140 cut to quarters is 45…135: just long enough.
    EXPECT_EQ(pleatsOf(scene), (std::vector{interval(45, 135), interval(180, 330)}));
    scene.blocks.back().start = planTime(139);
    EXPECT_EQ(pleatsOf(scene), std::vector{interval(180, 330)});
}

TEST(Pleats, TakeTheirQuarterHoursFromTheClockOnTheWall)
{
    Scene scene = quietDay();
    scene.calendar.origin = Instant{Minutes{7}}; // minute 8 of the plan is a quarter past
    scene.blocks.push_back(step(planTime(600), 30_min, 80));
    for (const Interval& pleat : pleatsOf(scene)) {
        for (const PlanTime end : {pleat.start, pleat.end}) {
            if (end != scene.horizon.start && end != scene.horizon.end) {
                EXPECT_EQ(scene.calendar.civil(end).clock.minute % 15, 0);
            }
        }
    }
}

TEST(Pleats, FoldTheExamplesNightButNotItsEvening)
{
    const auto pleats = pleatsOf(test::exampleScene());
    const auto holds = [&](PlanTime time) {
        return std::any_of(pleats.begin(), pleats.end(),
                           [&](const Interval& pleat) { return pleat.contains(time); });
    };
    EXPECT_TRUE(holds(at(Day::Saturday, 3)));
    EXPECT_FALSE(holds(at(Day::Saturday, 19)));
    EXPECT_FALSE(holds(at(Day::Friday, 20, 30)));
}

/// Minute by minute: does anybody do anything then, or is a minute within the margin of it?
bool isBusy(const Scene& scene, PlanTime time, Minutes margin)
{
    return std::any_of(scene.blocks.begin(), scene.blocks.end(), [&](const SceneBlock& block) {
        return block.attention > unattended && block.start - margin < time + Minutes{1} &&
               time < block.when().end + margin;
    });
}

TEST(Pleats, HoldNoWorkAndMissNoLongRest)
{
    forEachSeed(60, [](Random& random) {
        Scene scene = quietDay();
        scene.blocks.push_back(step(planTime(0), 0_min, 0));
        scene.horizon = {planTime(random.between(-500, 0)), planTime(random.between(500, 3000))};
        for (std::int64_t i = random.between(0, 12); i > 0; --i) {
            scene.blocks.push_back(step(planTime(random.between(-600, 3000)),
                                        Minutes{random.between(0, 200)},
                                        static_cast<int>(random.between(0, 3)) * 40));
        }
        const auto pleats = pleatsOf(scene);
        for (const Interval& pleat : pleats) {
            EXPECT_GE(pleat.length(), shortestPleat);
            EXPECT_TRUE(scene.horizon.contains(pleat));
            for (PlanTime t = pleat.start; t < pleat.end; t += Minutes{1}) {
                EXPECT_FALSE(isBusy(scene, t, Minutes{0}));
            }
        }
        // 90 min and, at each end, a quarter hour and the margin: such a rest must be folded.
        Minutes rest{0};
        for (PlanTime t = scene.horizon.start; t < scene.horizon.end; t += Minutes{1}) {
            const bool isFolded =
                std::any_of(pleats.begin(), pleats.end(),
                            [&](const Interval& pleat) { return pleat.contains(t); });
            rest = isBusy(scene, t, Minutes{0}) || isFolded ? Minutes{0} : rest + Minutes{1};
            EXPECT_LT(rest, shortestPleat + Minutes{2 * (15 + 5)});
        }
    });
}

} // namespace
} // namespace suppertide::ui
