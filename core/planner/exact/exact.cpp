#include "core/planner/exact/exact.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "core/base/contracts.h"
#include "core/planner/exact/kept_starts.h"
#include "core/planner/exact/oven_uses.h"
#include "core/planner/exact/reading.h"

namespace suppertide::exact {

namespace {

/// One step of the quick start is worth about so many of the engine.
constexpr std::int64_t stepsPerStep = 16;
constexpr std::int64_t stepsToTryHarder = 20'000;
constexpr std::int64_t firstSlice = 400; // conflicts
constexpr std::int64_t longestSlice = 1'000'000'000;
constexpr std::int64_t around = 200; // conflicts in a neighbourhood
constexpr std::int64_t briefProof = 60;
constexpr int mostProofsInVain = 8; // that are counted
/// Levels found to widen claims (widened_claim.h), to a step of the engine.
constexpr std::int64_t workAStep = 3'000;
constexpr std::size_t tasksForBound = 120;
constexpr std::size_t tasksForLeap = 60; // with more of them leaps find nothing
constexpr std::int64_t nearInPercent = 10;
constexpr int turns = 8;      // of which one sweeps, one proves, one leaps, the others improve
constexpr int vainTurns = 50; // after which even a search that improves helps to prove

Literal below(Variable cost, std::int64_t limit)
{
    return engine::atMost(cost, static_cast<Bound>(std::min<std::int64_t>(
                                    limit - 1, std::numeric_limits<Bound>::max() - 1)));
}

/// Not all of them together.
Literals clauseOf(const Literals& because)
{
    Literals clause;
    for (const Literal literal : because) {
        clause.push_back(~literal);
    }
    return clause;
}

/// All of them together only at such a cost.
Literals clauseOf(const Literals& because, Variable variable, std::int64_t cost)
{
    Literals clause = clauseOf(because);
    clause.push_back(engine::atLeast(
        variable, static_cast<Bound>(std::min<std::int64_t>(cost, Model::mostOvenCost))));
    return clause;
}

} // namespace

ExactSearch::ExactSearch(const Problem& problem, quick_start::Budget& budget, std::uint64_t seed,
                         Better better, Bounded bounded)
    : problem_(&problem), budget_(&budget), dice_(seed), better_(std::move(better)),
      bounded_(std::move(bounded)), model_(problem, {}), programs_(problem), branching_(model_),
      neighbourhoods_(model_, dice_),
      search_(
          model_.engine(), [this](const engine::Trail& trail) { return branching_.next(trail); },
          [this, left = std::int64_t{0}](std::int64_t steps) mutable {
              left += steps;
              const std::int64_t whole = left / stepsPerStep;
              left %= stepsPerStep;
              return budget_->spend(whole);
          })
{
    if (model_.gapCosts() != nullptr) {
        search_.resolveFirst(
            [this](const engine::Trail& trail) { return model_.gapCosts()->worstConflict(trail); });
    }
    if (isSupported() && !model_.engine().propagate()) {
        infeasible_ = true;
    }
    unprovable_ = std::numeric_limits<Bound>::max();
    viewsOfAll_ = model_.engine().trail().views();
    noteBound();
}

void ExactSearch::noteBound()
{
    if (!isSupported() || infeasible_) {
        return;
    }
    const std::int64_t proven =
        std::max<std::int64_t>(bound_, model_.engine().trail().least(model_.cost()));
    if (best_ && proven >= *best_->cost) {
        bound_ = *best_->cost;
        optimal_ = true;
        return;
    }
    if (proven > bound_) {
        bound_ = proven;
        bounded_(bound_);
    }
}

void ExactSearch::take(Schedule schedule)
{
    if (best_ && *schedule.cost >= *best_->cost) {
        return;
    }
    best_ = std::move(schedule);
    turnsInVain_ = 0;
    bestValues_ = aimsOf(model_, *best_);
    branching_.aimAt(bestValues_);
    search_.aimAt(bestValues_);
    noteBound();
    better_(*best_);
}

void ExactSearch::startFrom(const Schedule& schedule)
{
    take(schedule);
}

bool ExactSearch::read()
{
    const std::vector<Bound>& values = search_.values();
    const std::int64_t toBeat = best_ ? *best_->cost : std::numeric_limits<Bound>::max();
    auto schedule = scheduleOf(model_, values, programs_, toBeat);
    const bool isCheaper = schedule && (!best_ || *schedule->cost < *best_->cost);
    if (isCheaper) {
        take(*std::move(schedule));
    }
    if (problem_->ovenDemands.empty()) {
        ensures(isCheaper, "all else the model knows the cost of");
        return true;
    }
    bool known = learnFromOvens();
    // Only what is still guessed stands in the way of a proof then.
    while (!known && (exhausted_ || work_ == Work::Prove) && programs_.tryHarder() &&
           budget_->spend(stepsToTryHarder)) {
        known = learnFromOvens();
    }
    const bool isAtBound = search_.values()[model_.cost().index] <= bound_;
    stuck_ = stuck_ || (!known && (exhausted_ || (work_ == Work::Prove && isAtBound)));
    return known;
}

void ExactSearch::hold(const Literals& clause)
{
    expects(
        std::ranges::all_of(clause, [&](Literal literal) { return literal.view < viewsOfAll_; }),
        "what is told elsewhere is of variables that all searches have");
    if (elsewhere_.tell) {
        elsewhere_.tell(clause);
    }
    model_.engine().addClause(clause);
}

bool ExactSearch::learnFromOvens()
{
    const std::int64_t toBeat = best_ ? *best_->cost : std::numeric_limits<Bound>::max();
    bool known = true;
    const bool widens = widened_ <= workAStep * model_.engine().steps();
    for (const OvenUse& use : ovenUses(model_, search_.values(), programs_, toBeat, widens)) {
        widened_ += use.tooDear.work;
        if (use.isImpossible) {
            hold(clauseOf(use.because));
            continue;
        }
        if (use.tooDear.because) {
            hold(clauseOf(*use.tooDear.because, model_.ovenLeast[use.oven], use.limit));
        }
        if (!use.tooDear.because || use.bound > use.limit) {
            hold(clauseOf(use.because, model_.ovenLeast[use.oven], use.bound));
        }
        if (use.cost != use.bound && use.bound < use.limit) {
            guessed_ = true;
            known = false;
            model_.engine().addClause(clauseOf(use.because, model_.ovenCost[use.oven],
                                               use.cost.value_or(Model::mostOvenCost)));
        }
    }
    return known;
}

void ExactSearch::sweep(std::int64_t conflicts, bool byActivity)
{
    const Literals assumptions =
        best_ ? Literals{below(model_.likelyCost(), *best_->cost)} : Literals{};
    const End end = search_.run(assumptions, {conflicts, byActivity});
    noteBound();
    if (end == End::Found) {
        read();
    } else if (end == End::Infeasible && !best_) {
        infeasible_ = true;
    } else if (end == End::Infeasible) {
        exhausted_ = true;
        optimal_ = optimal_ || !guessed_;
        stuck_ = !programs_.canTryHarder();
    }
}

void ExactSearch::stayClose()
{
    if (!isMovingDear(problem_->costs)) {
        return;
    }
    KeptStarts kept(model_);
    std::vector<Bound> aims = bestValues_;
    aims.resize(model_.engine().trail().views() / 2);
    aims = kept.aims(std::move(aims));
    branching_.aimAt(aims);
    search_.aimAt(std::move(aims));
    End end = End::Infeasible;
    while (end == End::Infeasible && !isOver()) {
        Literals assumptions = kept.literals();
        if (best_) {
            assumptions.push_back(below(model_.likelyCost(), *best_->cost));
        }
        end = search_.run(assumptions, {firstSlice, false});
        noteBound();
        if (end == End::Found) {
            read();
        } else if (end == End::Infeasible && !kept.letGo(search_.core())) {
            break;
        }
    }
    branching_.aimAt(bestValues_);
    search_.aimAt(bestValues_);
}

void ExactSearch::prove(std::int64_t conflicts)
{
    std::int64_t most = std::min(*best_->cost, unprovable_) - 1;
    if (most < bound_ && !isUnprovableForGood_) { // what was found has been ruled out since
        unprovable_ = std::numeric_limits<Bound>::max();
        most = *best_->cost - 1;
    }
    if (most < bound_) {
        return;
    }
    const std::int64_t target = bound_ + (most - bound_) * proofPercent_ / 100;
    const End end = search_.run({below(model_.cost(), target + 1)}, {conflicts, true, true});
    if (end == End::Found) {
        unprovable_ = search_.values()[model_.cost().index];
        isUnprovableForGood_ = !read() || isUnprovableForGood_;
    } else if (end == End::Infeasible) {
        bound_ = target + 1;
        proofPercent_ = std::min<std::int64_t>(100, 2 * proofPercent_ + 1);
        optimal_ = bound_ >= *best_->cost;
        bounded_(bound_);
    } else {
        proofPercent_ /= 2;
    }
    noteBound();
}

void ExactSearch::leap(std::int64_t conflicts)
{
    const std::int64_t most = *best_->cost - 1;
    const std::int64_t target = most - (most - bound_) * leapPercent_ / 100;
    const End end = search_.run({below(model_.cost(), target + 1)}, {conflicts, true});
    if (end == End::Found) {
        leapPercent_ = std::min<std::int64_t>(75, 2 * leapPercent_ + 1);
        read();
    } else if (end == End::Infeasible) {
        bound_ = target + 1;
        optimal_ = bound_ >= *best_->cost;
        bounded_(bound_);
    } else {
        leapPercent_ /= 2;
    }
    noteBound();
}

void ExactSearch::raiseBound(std::int64_t conflicts)
{
    if (!cores_) {
        cores_.emplace(model_, search_);
    }
    const End end = cores_->raise(below(model_.cost(), *best_->cost), conflicts);
    if (end == End::Found) {
        read();
    } else if (end == End::Infeasible) {
        bound_ = *best_->cost;
        optimal_ = true;
        bounded_(bound_);
    }
    noteBound();
}

Literals ExactSearch::neighbourhoodOf(const Neighbourhoods::Freed& freed)
{
    Literals result{below(model_.likelyCost(), *best_->cost)};
    for (const ChoiceIndex choice : problem_->choices.indices()) {
        bool open = dice_.percent(10);
        for (const Option& option : problem_->choices[choice].options) {
            open = open ||
                   std::ranges::any_of(option.tasks, [&](TaskIndex task) { return freed[task]; });
        }
        if (!open) {
            result.push_back(model_.option(choice, *best_->options[choice]));
        }
    }
    for (const TaskIndex task : problem_->tasks.indices()) {
        if (!freed[task] && best_->starts[task]) {
            const Bound at = bestValues_[model_.start(task).index];
            result.push_back(engine::atMost(model_.start(task), at));
            result.push_back(engine::atLeast(model_.start(task), at));
        }
    }
    return result;
}

void ExactSearch::improveAround(std::int64_t conflicts)
{
    const auto drawn = neighbourhoods_.draw(*best_, bestValues_, freed_);
    const End end = search_.run(neighbourhoodOf(drawn.freed), {conflicts, true});
    noteBound();
    if (end == End::Found) {
        read();
    } else if (!drawn.isOfSize) {
        return;
    } else if (end == End::Infeasible) {
        freed_ = std::min(freed_ + 1, std::max<std::size_t>(2, problem_->tasks.size()));
    } else if (freed_ > 3) {
        --freed_;
    }
}

/// What propagators found out at length saves it the next time, and others the first time.
void ExactSearch::keepNoted()
{
    for (const Literals& clause : model_.engine().takeNoted()) {
        hold(clause);
    }
}

void ExactSearch::noteElsewhere()
{
    if (!elsewhere_.cheaper) {
        return;
    }
    for (const Literals& clause : elsewhere_.hear()) {
        model_.engine().addClause(clause);
    }
    const std::int64_t below = best_ ? *best_->cost : std::numeric_limits<std::int64_t>::max();
    if (auto cheaper = elsewhere_.cheaper(below)) {
        take(*std::move(cheaper));
    }
    const std::int64_t bound = elsewhere_.bound();
    if (bound > bound_) {
        bound_ = bound;
        model_.engine().addFact(engine::atLeast(model_.cost(), static_cast<Bound>(bound)));
        optimal_ = optimal_ || (best_ && bound_ >= *best_->cost);
    }
}

/// As where only the last end counts.
bool ExactSearch::costsOneLag() const
{
    return problem_->ovenDemands.empty() && model_.costTerms().size() <= 2;
}

bool ExactSearch::isNearlyProven() const
{
    return (*best_->cost - bound_) * 100 <= *best_->cost * nearInPercent;
}

/// Whether anything at all is cheaper.
void ExactSearch::sweepOn(std::int64_t& slice, bool byActivity)
{
    sweep(slice, byActivity);
    slice = std::min(slice + slice / 4, longestSlice);
}

/// As long as there are terms to look at, cores raise the bound by more; a proof is tried again
/// ever later then, if it was in vain.
void ExactSearch::proveOn(int turn)
{
    if (cores_ && cores_->looksAtAll()) {
        if (turn % 2 == 0) {
            prove(firstSlice);
        } else {
            raiseBound(firstSlice);
        }
    } else if (turn % 4 == 0 && turn >= nextProof_) {
        const std::int64_t before = bound_;
        prove(briefProof);
        proofsInVain_ = bound_ > before ? 0 : std::min(proofsInVain_ + 1, mostProofsInVain);
        nextProof_ = turn + (4 << proofsInVain_);
    } else {
        raiseBound(firstSlice);
    }
}

void ExactSearch::improveOn(int turn, std::int64_t& slice)
{
    // Where sweeping proves too, a proof of less is only for the bound, and with many tasks dear.
    const bool sweepProves = model_.likelyCost() == model_.cost();
    const bool provesLess = !sweepProves || problem_->tasks.size() <= tasksForBound;
    const bool raises = work_ == Work::All;
    switch (turn % turns) {
    case 0:
        sweepOn(slice);
        break;
    case 1:
        if (provesLess && raises) {
            prove(sweepProves ? briefProof : firstSlice);
        }
        break;
    case 2:
    case 5:
        if (turn > turns && raises) { // first of all a good plan
            raiseBound(slice);
        } else {
            improveAround(around);
        }
        break;
    default:
        // Where one lag is all that costs, most of what it spans has to move.
        if (costsOneLag() ||
            (turn % turns == turns - 1 && problem_->tasks.size() <= tasksForLeap)) {
            leap(around);
        } else {
            improveAround(around);
        }
    }
}

void ExactSearch::workOn(int turn, std::int64_t& slice)
{
    if (exhausted_ || work_ == Work::Prove) {
        proveOn(turn);
        return;
    }
    ++turnsInVain_;
    const bool helps = work_ == Work::Improve && turnsInVain_ > vainTurns && turn % 2 == 0;
    if (helps && turn % 4 == 0) {
        prove(firstSlice);
    } else if (helps || (costsOneLag() && leapPercent_ == 0 && isNearlyProven())) {
        sweepOn(slice);
    } else {
        improveOn(turn, slice);
    }
}

void ExactSearch::run(Work work, Elsewhere elsewhere)
{
    std::int64_t slice = firstSlice;
    work_ = work;
    elsewhere_ = std::move(elsewhere);
    if (work_ != Work::Prove && isSupported() && !isOver()) {
        stayClose();
    }
    for (int turn = 0; !isOver() && isSupported(); ++turn) {
        keepNoted();
        noteElsewhere();
        if (isOver()) {
            return;
        }
        if (!best_) {
            sweepOn(slice, turn % 2 == 1);
            continue;
        }
        workOn(turn, slice);
    }
}

} // namespace suppertide::exact
