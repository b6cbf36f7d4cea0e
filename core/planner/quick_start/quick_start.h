// QuickStart: a plan soon, and better ones as long as there is time: passes for the first one, then
// neighbourhoods of it undone and placed anew. It proves nothing; proof.h does what little is
// proven here.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "core/planner/planner.h"
#include "core/planner/quick_start/budget.h"
#include "core/planner/quick_start/carry_over.h"
#include "core/planner/quick_start/cost_meter.h"
#include "core/planner/quick_start/dice.h"
#include "core/planner/quick_start/passes.h"

namespace suppertide::quick_start {

/// Called with each better schedule; says whether to go on.
using Better = std::function<bool(const Schedule&)>;

class QuickStart
{
public:
    /// All must outlive this.
    QuickStart(const Problem& problem, Budget& budget, std::uint64_t seed, Better better);

    /// Searches until the budget is over, or `better` says to stop.
    void run();
    [[nodiscard]] const std::optional<Schedule>& best() const { return best_; }
    /// What was left in the best try, if there is no schedule.
    [[nodiscard]] const std::vector<Unplaced>& unplaced() const { return unplaced_; }

private:
    struct Draft
    {
        std::shared_ptr<const Instance> instance;
        PartialPlan plan;
        std::int64_t cost = 0;
    };
    [[nodiscard]] bool makeFirst();
    [[nodiscard]] std::optional<Draft> begun(const Instance::Options& options);
    [[nodiscard]] bool settle(Draft& draft, std::size_t mostEjections, bool cheap);
    [[nodiscard]] bool fill(Draft& draft);
    void unplaceUnkept(Draft& draft, Penalties& penalties);
    void noteContradiction(const Instance::Options& options);
    [[nodiscard]] std::string nameOf(const Instance& instance, const Blame& blame) const;
    [[nodiscard]] Instance::Options otherOptions(const Draft& draft, int choices);
    void offer(const Draft& draft);
    [[nodiscard]] bool goesOn() const { return wantsMore_ && !budget_->isOver(); }

    void improve(Draft current);
    [[nodiscard]] std::optional<Draft> neighbour(const Draft& current);
    [[nodiscard]] std::optional<Draft> withOtherOption(const Draft& current);

    const Problem* problem_;
    Budget* budget_;
    Dice dice_;
    Better better_;
    bool wantsMore_ = true;
    Instances instances_;
    CostMeter meter_;
    IndexedVector<TaskIndex, std::int64_t> weights_; // how often a task did not fit
    std::optional<Draft> first_;
    std::optional<Schedule> best_;
    std::vector<Unplaced> unplaced_;
};

} // namespace suppertide::quick_start
