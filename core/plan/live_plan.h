// LivePlan: a plan under the mouse: for each place to which a step is dragged, the starts, cooks,
// ovens and clashes, as moveTask and judgePlan would give them, but with only what changes judged
// again. For one drag; dropping is a change of the layout like any other.
#pragma once

#include <memory>
#include <vector>

#include "core/plan/plan.h"

namespace suppertide {

class LivePlan
{
public:
    /// The plan's own schedule is where each move starts from.
    LivePlan(PlanPtr plan, const PlanInput& input);
    ~LivePlan();
    LivePlan(LivePlan&&) noexcept;
    LivePlan& operator=(LivePlan&&) noexcept;
    LivePlan(const LivePlan&) = delete;
    LivePlan& operator=(const LivePlan&) = delete;

    /// The clashes with `task` at `start` and what is tied to it moved along, worst first.
    const std::vector<Clash>& move(TaskIndex task, PlanTime start);

    /// Of the last move; before any, those of the plan.
    [[nodiscard]] const Schedule& schedule() const;
    [[nodiscard]] const std::vector<Clash>& clashes() const;
    /// The same with its figures.
    [[nodiscard]] PlanPtr plan() const;

private:
    class Parts;
    std::unique_ptr<Parts> parts_;
};

} // namespace suppertide
