// What a plan draws, worked out by hand.
#include <gtest/gtest.h>

#include "core/menus/energy.h"

namespace suppertide::menus {
namespace {

/// An oven that heats by 10 °C a minute and cools by 2½, in a room of 20 °C.
Plan planWith(OvenProgram program)
{
    Formulation formulation;
    Oven oven;
    oven.id = "oven";
    oven.shelves = 1;
    oven.maxC = 250;
    oven.startC = 20;
    oven.ambientC = 20;
    oven.heatMilliCPerMin = 10'000;
    oven.coolMilliCPerMin = 2'500;
    formulation.problem.ovens.push_back(oven);
    formulation.problem.horizon = planTime(600);
    Plan plan;
    plan.schedule = emptyScheduleFor(formulation.problem);
    plan.schedule.programs[OvenIndex{0}] = std::move(program);
    plan.formulation = std::make_shared<const Formulation>(std::move(formulation));
    return plan;
}

// 10 min from 20 to 120 °C at 2400 W, then 60 min at 2400 · 2.5 / (10 + 2.5) = 480 W.
TEST(Energy, OfAnOvenIsThatOfHeatingAndOfHolding)
{
    const Plan plan = planWith({{planTime(100), 120}, {planTime(170), std::nullopt}});
    EXPECT_EQ(energyOf(plan, {}).wattHours, (10 * 2400 + 60 * 480) / 60);
}

// Falling from 120 to 100 °C takes 8 min and nothing; then 22 min are held.
TEST(Energy, OfAnOvenThatFallsIsNothing)
{
    const Plan plan =
        planWith({{planTime(100), 120}, {planTime(110), 100}, {planTime(140), std::nullopt}});
    EXPECT_EQ(energyOf(plan, {}).wattHours, (10 * 2400 + 22 * 480) / 60);
}

TEST(Energy, OfAnOvenThatIsOffIsNothing)
{
    EXPECT_EQ(energyOf(planWith({}), {}).wattHours, 0);
}

// 40 min on a ring of 2000 W: ten at full power, thirty at a quarter, of which whole minutes count.
TEST(Energy, OfABurnerFallsToAQuarterAfterTenMinutes)
{
    Plan plan = planWith({});
    Formulation formulation = *plan.formulation;
    Task task;
    task.id = "boil";
    task.duration = Minutes{40};
    task.window = {planTime(0), planTime(600)};
    const TaskIndex index = formulation.problem.tasks.push_back(task);
    formulation.problem.counts.push_back({"burners", 4});
    formulation.counts.push_back({ResourceKind::Burner, "burners", {}, 1});
    Demand demand;
    demand.from = {index, Edge::Start};
    demand.to = {index, Edge::End};
    demand.count = CountIndex{0};
    formulation.problem.demands.push_back(demand);
    plan.schedule = emptyScheduleFor(formulation.problem);
    plan.schedule.starts[index] = planTime(60);
    plan.formulation = std::make_shared<const Formulation>(std::move(formulation));
    Kitchen kitchen;
    kitchen.burners = {{KitchenItemId{"a"}, "front", centimetres(18), watts(1800)},
                       {KitchenItemId{"b"}, "back", centimetres(21), watts(2200)}};
    EXPECT_EQ(energyOf(plan, kitchen).wattHours, (2000 * (10 + 30 / 4) + 30) / 60);
}

} // namespace
} // namespace suppertide::menus
