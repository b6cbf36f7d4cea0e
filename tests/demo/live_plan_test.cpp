// Dragging a step of the demo live gives what moving it and judging all anew gives.
#include <gtest/gtest.h>

#include "core/plan/lay_out.h"
#include "core/plan/live_plan.h"
#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

void expectSameAsAnew(std::string_view id)
{
    const PlanInput input = inputOf(id);
    const FormulationPtr formulation = formulate(input).value();
    const PlanPtr plan = judgePlan(formulation, input, layOut(*formulation, *input.layout));
    LivePlan live(plan, input);
    EXPECT_EQ(live.clashes(), plan->clashes);
    int moves = 0;
    for (const auto& [name, task] : formulation->taskById) {
        if (!plan->interval(task) || plan->interval(task)->empty() || ++moves % 7 != 0) {
            continue;
        }
        for (const int by : {-95, -10, 1, 30}) {
            const PlanTime start = *plan->schedule.starts[task] + Minutes{by};
            const auto clashes = live.move(task, start);
            const PlanPtr anew =
                judgePlan(formulation, input,
                          moveTask(*formulation, *input.layout, plan->schedule, task, start));
            EXPECT_EQ(live.schedule(), anew->schedule) << name << " " << by;
            EXPECT_EQ(clashes, anew->clashes) << name << " " << by;
        }
    }
    EXPECT_GT(moves, 7);
}

TEST(LivePlan, SaysWhatJudgingAnewSays)
{
    expectSameAsAnew("midsummer-supper");
    expectSameAsAnew("sunday-lunch");
}

TEST(LivePlan, SaysItAlsoWhereMuchIsBroken)
{
    expectSameAsAnew("midsummer-supper-first-idea");
}

} // namespace
} // namespace suppertide::demo
