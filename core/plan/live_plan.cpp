#include "core/plan/live_plan.h"

#include "core/assign/live_assign.h"
#include "core/check/live_check.h"
#include "core/plan/clash_finder.h"
#include "core/plan/food_safety.h"
#include "core/plan/lay_out.h"
#include "core/plan/tool_order.h"

namespace suppertide {

class LivePlan::Parts
{
public:
    Parts(PlanPtr from, const PlanInput& input)
        : plan(std::move(from)), formulation(*plan->formulation), layout(input.layout),
          pins(assignmentPins(formulation, *layout)), assigned(formulation.problem),
          check(formulation.problem, plan->schedule), finder(formulation),
          ofFood(foodClashes(formulation, input)), safety(formulation, input),
          tools(formulation, input), clashes(plan->clashes)
    {
        safety.update(plan->schedule);
    }

    void move(TaskIndex task, PlanTime start)
    {
        const auto& broken = check.update(
            assigned.assign(movedStarts(formulation, *layout, plan->schedule, task, start), pins));
        clashes = finder.clashes(check.schedule(), broken);
        clashes.insert(clashes.end(), ofFood.begin(), ofFood.end());
        for (Clash& clash : safety.update(check.schedule())) {
            clashes.push_back(std::move(clash));
        }
        for (Clash& clash : tools.clashes(check.schedule())) {
            clashes.push_back(std::move(clash));
        }
        FoodSafety::mergeWaits(formulation, clashes);
        sortClashes(clashes);
    }

    PlanPtr plan;
    const Formulation& formulation;
    std::shared_ptr<const Layout> layout;
    AssignmentPins pins;
    LiveAssign assigned;
    LiveCheck check;
    ClashFinder finder;
    std::vector<Clash> ofFood; // who eats what does not hang on when it is cooked
    FoodSafety safety;
    ToolOrder tools;
    std::vector<Clash> clashes;
};

LivePlan::LivePlan(PlanPtr plan, const PlanInput& input)
    : parts_(std::make_unique<Parts>(std::move(plan), input))
{}
LivePlan::~LivePlan() = default;
LivePlan::LivePlan(LivePlan&&) noexcept = default;
LivePlan& LivePlan::operator=(LivePlan&&) noexcept = default;

const std::vector<Clash>& LivePlan::move(TaskIndex task, PlanTime start)
{
    parts_->move(task, start);
    return parts_->clashes;
}

PlanPtr LivePlan::plan() const
{
    auto plan = std::make_shared<Plan>(*parts_->plan);
    plan->schedule = schedule();
    plan->clashes = clashes();
    plan->figures = figuresOf(*plan->formulation, plan->schedule);
    return plan;
}

const Schedule& LivePlan::schedule() const
{
    return parts_->check.schedule();
}

const std::vector<Clash>& LivePlan::clashes() const
{
    return parts_->clashes;
}

} // namespace suppertide
