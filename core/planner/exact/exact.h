// ExactSearch: plans by the engine: finds schedules, makes them cheaper, proves that none is
// cheaper or that there is none at all.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/planner/engine/search.h"
#include "core/planner/exact/branching.h"
#include "core/planner/exact/cost_cores.h"
#include "core/planner/exact/model.h"
#include "core/planner/exact/neighbourhoods.h"
#include "core/planner/exact/oven_programs.h"
#include "core/planner/quick_start/budget.h"
#include "core/planner/quick_start/dice.h"
#include "core/problem/schedule.h"

namespace suppertide::exact {

class ExactSearch
{
public:
    using Better = std::function<void(const Schedule&)>;
    using Bounded = std::function<void(std::int64_t)>;

    /// All must outlive this.
    ExactSearch(const Problem& problem, quick_start::Budget& budget, std::uint64_t seed,
                Better better, Bounded bounded);

    /// False: the problem's numbers are too large, or it is infeasible already.
    [[nodiscard]] bool isSupported() const { return model_.isSupported(); }
    /// Starts from a schedule that is known.
    void startFrom(const Schedule& schedule);
    /// What another search, on a thread of its own, has found meanwhile.
    struct Elsewhere
    {
        std::function<std::optional<Schedule>(std::int64_t below)> cheaper;
        std::function<std::int64_t()> bound;
        /// Clauses that hold whatever is searched for; told once, heard by each of the others.
        std::function<void(const engine::Literals&)> tell;
        std::function<std::vector<engine::Literals>()> hear;
    };
    enum class Work
    {
        All,
        Improve, // leaves it to another search to raise the bound, as long as it finds anything
        Prove    // leaves it to another to find better ones
    };
    /// Searches until it is over: proven, or the budget is spent.
    void run(Work work = Work::All, Elsewhere elsewhere = {});

    [[nodiscard]] bool isInfeasible() const { return infeasible_; }
    [[nodiscard]] bool isOptimal() const { return optimal_; }
    [[nodiscard]] const std::optional<Schedule>& best() const { return best_; }

private:
    using End = engine::Search::End;
    void take(Schedule schedule);
    /// After a solution was found: reads it, and learns what its ovens cost. False: what it learnt
    /// does not rule the solution out, as their cheapest programs are not known.
    bool read();
    /// Looks for any, or a cheaper, schedule.
    void sweep(std::int64_t conflicts, bool byActivity);
    /// The same with all but some tasks where they are (neighbourhoods.h).
    void improveAround(std::int64_t conflicts);
    /// Looks for a schedule that is cheaper by much.
    void leap(std::int64_t conflicts);
    /// Looks for a schedule that moves little of the plan to stay close to (kept_starts.h).
    void stayClose();
    /// Tries to prove that no schedule costs less than some amount between the bound and the best.
    void prove(std::int64_t conflicts);
    /// Raises the bound by what cannot be cheap together.
    void raiseBound(std::int64_t conflicts);
    /// Learns what ovens cost in the solution found. False: one of them might be cheap, and is not.
    bool learnFromOvens();
    /// For good, here and elsewhere.
    void hold(const Literals& clause);
    /// All that is not freed where the best schedule has it, and cheaper.
    [[nodiscard]] Literals neighbourhoodOf(const Neighbourhoods::Freed& freed);
    void noteBound();
    void keepNoted();
    void noteElsewhere();
    [[nodiscard]] bool costsOneLag() const;
    [[nodiscard]] bool isNearlyProven() const;
    void sweepOn(std::int64_t& slice, bool byActivity = true);
    void proveOn(int turn);
    void improveOn(int turn, std::int64_t& slice);
    void workOn(int turn, std::int64_t& slice);
    [[nodiscard]] bool isOver() const
    {
        return infeasible_ || optimal_ || stuck_ || budget_->isOver();
    }

    const Problem* problem_;
    quick_start::Budget* budget_;
    quick_start::Dice dice_;
    Better better_;
    Bounded bounded_;
    Model model_;
    OvenPrograms programs_;
    Branching branching_;
    Neighbourhoods neighbourhoods_;
    engine::Search search_;
    std::optional<CostCores> cores_;
    Work work_ = Work::All;
    Elsewhere elsewhere_;
    std::size_t viewsOfAll_ = 0; // those of the model; others come while searching
    std::optional<Schedule> best_;
    std::vector<Bound> bestValues_; // starts and choices of the best schedule
    std::int64_t bound_ = 0;
    std::int64_t unprovable_ = 0; // the model had a solution that costs no more, as far as it knew
    bool isUnprovableForGood_ = false; // and it has not been ruled out
    std::int64_t proofPercent_ = 25;   // how far towards the best the next proof goes
    int proofsInVain_ = 0;             // one after another
    int nextProof_ = 0;                // turn
    std::int64_t leapPercent_ = 50;    // how far towards the bound the next leap goes
    std::size_t freed_ = 6;            // tasks of a neighbourhood
    int turnsInVain_ = 0;              // since a cheaper schedule was found
    std::int64_t widened_ = 0;         // levels found
    bool infeasible_ = false;
    bool optimal_ = false;
    bool guessed_ = false;   // some program of an oven was not proven the cheapest
    bool exhausted_ = false; // nothing cheaper by what programs are guessed to cost
    bool stuck_ = false;     // nor can it be found out what they cost
};

} // namespace suppertide::exact
