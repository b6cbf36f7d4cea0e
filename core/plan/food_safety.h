// FoodSafety: the rules of food safety along the histories of a plan's foods, live: what they break
// becomes clashes. Used by judgePlan and LivePlan; whoever shows a food's history asks it too. No
// finding means that no rule known to this program is broken: local codes prevail.
#pragma once

#include <set>
#include <vector>

#include "core/plan/food_temperatures.h"
#include "core/plan/plan.h"
#include "core/safety/live_histories.h"

namespace suppertide {

class FoodSafety
{
public:
    /// The formulation must outlive it.
    FoodSafety(const Formulation& formulation, const PlanInput& input);

    /// What breaks a rule under this schedule, as clashes in the order of the foods. What was not
    /// computed is no clash; it is among the findings.
    std::vector<Clash> update(const Schedule& schedule);

    /// Of the last update.
    [[nodiscard]] const FoodHistories& histories() const { return histories_; }
    /// Likewise; none of a food that is not cooked or whose history cannot be judged.
    [[nodiscard]] std::vector<safety::Finding> findingsOf(FoodIndex food) const;
    /// Why its history cannot be judged, in a sentence; nothing where it can.
    [[nodiscard]] std::optional<std::string> notJudged(FoodIndex food) const;
    /// How many stays were computed and how many foods judged anew by it.
    [[nodiscard]] std::size_t computedLast() const { return temperatures_.computedLast(); }
    [[nodiscard]] std::size_t judgedLast() const { return judged_.judgedLast(); }

    /// A wait that is longer than the rule allows by which it is limited is one trouble, not two:
    /// of the clashes that `update` has given and those of the waits the former stay.
    static void mergeWaits(const Formulation& formulation, std::vector<Clash>& clashes);

private:
    /// What a food's parts have behind them goes on in it.
    void passOn(const Schedule& schedule);
    /// Whether one of its parts breaks the same rule, which is said there.
    [[nodiscard]] bool isOfAPart(FoodIndex food, const safety::Finding& finding) const;

    const Formulation& formulation_;
    std::shared_ptr<const Kitchen> kitchen_;
    safety::RuleBook book_;
    FoodTemperatures temperatures_;
    safety::LiveHistories judged_;
    FoodHistories histories_;
    std::set<FoodIndex> told_; // to the log: their history cannot be judged
};

} // namespace suppertide
