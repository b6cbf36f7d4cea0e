// Moving, pinning, letting go: what each does to the layout, and that undo takes it back.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/plan/live_plan.h"
#include "tests/support/demo_evening.h"
#include "ui/models/layout_edits.h"

namespace suppertide::ui {
namespace {

using test::demoLibrary;
using test::LaidOut;

class LayoutEdits : public testing::Test
{
protected:
    /// A step that can move an hour's quarter earlier by its ties alone.
    [[nodiscard]] TaskIndex movable() const
    {
        const Formulation& formulation = *evening_.plan->formulation;
        for (const TaskIndex task : formulation.problem.tasks.indices()) {
            const auto when = evening_.plan->interval(task);
            if (formulation.tasks[task].role == TaskRole::Step && when &&
                dragRange(formulation, evening_.plan->schedule, task).startsAlone.start <=
                    when->start - 15_min) {
                return task;
            }
        }
        throw std::runtime_error("nothing can move");
    }
    [[nodiscard]] PlanPtr moved(TaskIndex task, PlanTime to) const
    {
        LivePlan live(evening_.plan, evening_.input());
        live.move(task, to);
        return live.plan();
    }
    [[nodiscard]] const Layout& layoutOfDemo() const
    {
        return openOccasion(evening_.library)->layout;
    }

    LaidOut evening_{demoLibrary()};
};

TEST_F(LayoutEdits, MoveAStepToWhereItIsPut)
{
    const TaskIndex task = movable();
    const std::string& id = evening_.plan->formulation->problem.tasks[task].id;
    const PlanTime to = evening_.start(id) - 15_min;
    const Edit edit = moveStep(evening_.library, *evening_.plan, task, to);
    EXPECT_TRUE(edit.text.startsWith("Move: ")) << edit.text.toStdString();
    const LaidOut after(edit.next);
    EXPECT_EQ(after.start(id), to);
}

TEST_F(LayoutEdits, ShowTheSamePlanBeforehandAsAfterwards)
{
    const TaskIndex task = movable();
    const std::string& id = evening_.plan->formulation->problem.tasks[task].id;
    const PlanTime to = evening_.start(id) - 15_min;
    const PlanPtr preview = moved(task, to);
    const LaidOut after(moveStep(evening_.library, *evening_.plan, task, to).next);
    EXPECT_EQ(preview->schedule.starts, after.plan->schedule.starts);
    EXPECT_EQ(preview->clashes, after.plan->clashes);
}

TEST_F(LayoutEdits, ChangeNothingElseOfTheLibrary)
{
    const TaskIndex task = movable();
    const std::string& id = evening_.plan->formulation->problem.tasks[task].id;
    const Edit edit = moveStep(evening_.library, *evening_.plan, task, evening_.start(id) - 15_min);
    const ChangeSet changes = changesBetween(evening_.library, edit.next);
    EXPECT_TRUE(changes.recipes.empty());
    EXPECT_TRUE(changes.kitchens.empty());
    EXPECT_EQ(changes.occasions, (std::set{OccasionId{"midsummer-supper"}}));
    EXPECT_TRUE(changes.isPlanTouched);
    EXPECT_EQ(openOccasion(edit.next)->occasion, evening_.occasion());
}

TEST_F(LayoutEdits, PinAStepWhereItStandsAndLetItGo)
{
    const TaskIndex task = movable();
    const std::string& id = evening_.plan->formulation->problem.tasks[task].id;
    const Edit pin = togglePin(evening_.library, *evening_.plan, task);
    EXPECT_TRUE(pin.text.startsWith("Pin: ")) << pin.text.toStdString();
    const LaidOut pinned(pin.next);
    EXPECT_TRUE(openOccasion(pin.next)->layout.pinned.contains(id));
    EXPECT_EQ(pinned.start(id), evening_.start(id));

    const Edit unpin = togglePin(pin.next, *pinned.plan, pinned.task(id));
    EXPECT_TRUE(unpin.text.startsWith("Let go: ")) << unpin.text.toStdString();
    EXPECT_EQ(openOccasion(unpin.next)->layout.pinned, layoutOfDemo().pinned);
}

TEST_F(LayoutEdits, TakeADecidedWashingBack)
{
    const Formulation& formulation = *evening_.plan->formulation;
    const auto isVessel = [&](const Demand& demand) {
        return demand.pool && formulation.pools[*demand.pool].kind == ResourceKind::Vessel;
    };
    const auto vessel = std::ranges::find_if(formulation.problem.demands, isVessel);
    ASSERT_NE(vessel, formulation.problem.demands.end());
    Layout layout = openOccasion(evening_.library)->layout;
    layout.washed = {vessel->id};
    const LaidOut washed(withLayout(evening_.library, layout));
    const Formulation& with = *washed.plan->formulation;
    std::optional<TaskIndex> wash;
    for (const DemandIndex demand : with.problem.demands.indices()) {
        if (with.problem.demands[demand].id == vessel->id) {
            wash = with.problem.demands[demand].from.task;
        }
    }
    ASSERT_TRUE(wash);
    EXPECT_TRUE(isDecidedWashing(*washed.plan, *wash));
    const Edit back = togglePin(washed.library, *washed.plan, *wash);
    EXPECT_TRUE(back.text.startsWith("Do not wash first: ")) << back.text.toStdString();
    EXPECT_TRUE(openOccasion(back.next)->layout.washed.empty());
    EXPECT_FALSE(
        LaidOut(back.next).plan->formulation->taskById.contains(with.problem.tasks[*wash].id));
}

TEST_F(LayoutEdits, LayOutAnewButForPinnedSteps)
{
    const TaskIndex task = movable();
    const std::string& id = evening_.plan->formulation->problem.tasks[task].id;
    const PlanTime to = evening_.start(id) - 15_min;
    const LaidOut moved(moveStep(evening_.library, *evening_.plan, task, to).next);
    const LaidOut pinned(togglePin(moved.library, *moved.plan, moved.task(id)).next);
    const LaidOut anew(layOutAnew(pinned.library).next);
    EXPECT_EQ(anew.start(id), to);
    const auto& starts = openOccasion(anew.library)->layout.starts;
    EXPECT_TRUE(std::all_of(starts.begin(), starts.end(),
                            [&](const auto& start) { return start.first == id; }));
}

TEST_F(LayoutEdits, MoveACourseAloneAndKeepTheOrderOfServing)
{
    const PlanCalendar& calendar = evening_.plan->formulation->calendar;
    const PlanTime soup = sceneOfPlan(evening_.source()).servings.front().time;
    const auto edit = moveServing(evening_.library, calendar, 1, soup - 20_min);
    ASSERT_TRUE(edit);
    EXPECT_EQ(edit->text, "Serve soup at 19:10");
    const auto& courses = openOccasion(edit->next)->occasion.courses;
    EXPECT_EQ(courses[0].serving.clock, (ClockTime{19, 10}));
    for (std::size_t i = 1; i < courses.size(); ++i) {
        EXPECT_EQ(courses[i], evening_.occasion().courses[i]);
    }
    const auto past = moveServing(evening_.library, calendar, 1, soup + 40_min);
    ASSERT_TRUE(past);
    EXPECT_EQ(openOccasion(past->next)->occasion.courses[1].name, "Soup");
    EXPECT_FALSE(moveServing(evening_.library, calendar, 5, soup));
    EXPECT_FALSE(moveServing({}, calendar, 1, soup));
}

TEST_F(LayoutEdits, TakeAPlanAsItWasFound)
{
    const TaskIndex task = movable();
    const std::string& id = evening_.plan->formulation->problem.tasks[task].id;
    const PlanTime to = evening_.start(id) - 15_min;
    const PlanPtr found = moved(task, to);
    const LaidOut after(takePlan(evening_.library, *found, QStringLiteral("Make plan")).next);
    EXPECT_EQ(after.plan->schedule.starts, found->schedule.starts);
}

TEST_F(LayoutEdits, FindTasksByTheirIdsOnly)
{
    const TaskIndex task = movable();
    EXPECT_EQ(findTask(*evening_.plan, evening_.plan->formulation->problem.tasks[task].id), task);
    EXPECT_FALSE(findTask(*evening_.plan, "no such step"));
    EXPECT_FALSE(taskName(*evening_.plan, task).isEmpty());
}

} // namespace
} // namespace suppertide::ui
