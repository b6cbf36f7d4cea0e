#include <gtest/gtest.h>

#include "core/wording/phrases.h"
#include "core/wording/wording.h"
#include "tests/support/small_evening.h"

namespace suppertide {
namespace {

using test::at;
using test::eve;
using test::SmallEvening;

TEST(TaskText, SaysDeedTimeCookAndAttention)
{
    SmallEvening evening;
    const TaskIndex slice =
        evening.add({"Gratin", "Slice the potatoes", at(18, 5), 45, handsOn, {1}});
    const TaskIndex chill = evening.add({"Cream", "Chill", eve(23), 120, unattended});
    const TaskIndex carve = evening.add({"Shoulder", "Carve", at(20), 5, undivided, {0, 1}});
    const TaskIndex simmer = evening.add({"Stock", "Simmer", at(12), 30, keepAnEye, {0}});
    const PlanPtr plan = evening.plan();
    EXPECT_EQ(taskText(*plan, slice), "Slice the potatoes, 18:05 to 18:50, Jory, hands-on.");
    EXPECT_EQ(taskText(*plan, chill), "Chill, 23:00 to Sat 19 June 01:00, unattended.");
    EXPECT_EQ(taskText(*plan, carve), "Carve, 20:00 to 20:05, Maren and Jory, undivided.");
    EXPECT_EQ(taskText(*plan, simmer), "Simmer, 12:00 to 12:30, Maren, keep an eye.");
}

TEST(TaskText, LeavesOutTheTimeOfWhatHasNone)
{
    SmallEvening evening;
    const TaskIndex slice = evening.add({"Gratin", "Slice", at(18), 45, handsOn});
    evening.schedule.starts[slice].reset();
    EXPECT_EQ(taskText(*evening.plan(), slice), "Slice, hands-on.");
}

TEST(DeedOf, FindsWordsForRolesWithoutText)
{
    TaskSource task;
    task.dishName = "Roast roots";
    task.role = TaskRole::OvenIn;
    EXPECT_EQ(deedOf(task), "Roast roots into the oven");
    task.role = TaskRole::OvenOut;
    EXPECT_EQ(deedOf(task), "Roast roots out of the oven");
    task.role = TaskRole::Turn;
    EXPECT_EQ(deedOf(task), "Turn the roast roots");
    task.role = TaskRole::Step;
    task.verb = "Peel";
    EXPECT_EQ(deedOf(task), "Peel the roast roots");
    EXPECT_EQ(deedOf(TaskSource{}), "A step");
}

TEST(UnplacedSentence, SaysWhatStoodInTheWayOnceEach)
{
    SmallEvening evening;
    const TaskIndex slice = evening.add({"Gratin", "Slice the potatoes", at(18), 45});
    const TaskIndex bake = evening.add({"Gratin", "Bake the gratin", at(18, 45), 90, unattended});
    evening.tie({slice, Edge::End}, {bake, Edge::Start}, {});
    evening.tie({slice, Edge::End}, {bake, Edge::Start},
                {Rule::Waits, {}, {}, "slices brown", KeepPlace::Counter, Minutes{0}, Minutes{15}});
    evening.bake(bake, 150);
    EXPECT_EQ(unplacedSentence(*evening.plan()->formulation, bake,
                               {"lag:lag-0", "oven:bake-Bake the gratin", "oven:other"}),
              "No time was found for “Bake the gratin” of the gratin: “Slice the potatoes” comes "
              "before “Bake the gratin” and no oven is free at the right heat.");
    EXPECT_EQ(unplacedSentence(*evening.plan()->formulation, bake, {"lag:lag-1", "hands:x"}),
              "No time was found for “Bake the gratin” of the gratin: “slices brown” takes at "
              "least 0 min, at most 15 min and no cook has a hand free.");
    EXPECT_EQ(unplacedSentence(*evening.plan()->formulation, bake, {}),
              "No time was found for “Bake the gratin” of the gratin.");
    EXPECT_EQ(unplacedSentence(*evening.plan()->formulation, bake, {"lag:gone", "odd"}),
              "No time was found for “Bake the gratin” of the gratin.");
}

TEST(Phrases, ListThingsOnceInOrder)
{
    EXPECT_EQ(listed({}), "");
    EXPECT_EQ(listed({"a"}), "a");
    EXPECT_EQ(listed({"a", "b", "a"}), "a and b");
    EXPECT_EQ(listed({"a", "", "b", "c"}), "a, b and c");
}

TEST(Phrases, PutDishesIntoSentences)
{
    EXPECT_EQ(theThing("Roast roots"), "the roast roots");
    EXPECT_EQ(theThing("BBQ sauce"), "the BBQ sauce");
    EXPECT_EQ(theThing("Bea's tart"), "Bea's tart");
    EXPECT_EQ(theThing("Bea’s tart"), "Bea’s tart");
    EXPECT_EQ(theThing("Éclairs"), "the Éclairs");
    EXPECT_EQ(theThing("🍋 tart"), "the 🍋 tart");
    EXPECT_EQ(theThing(""), "it");
}

} // namespace
} // namespace suppertide
