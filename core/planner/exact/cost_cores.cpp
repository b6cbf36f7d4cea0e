#include "core/planner/exact/cost_cores.h"

#include <algorithm>
#include <limits>
#include <map>
#include <tuple>
#include <utility>

#include "core/planner/engine/linear.h"

namespace suppertide::exact {

namespace {

constexpr std::int64_t forLess = 12;   // conflicts, to leave one literal out of a core
constexpr std::int64_t forMore = 40;   // conflicts, to push a charge up further
constexpr std::int64_t forHeavy = 40;  // conflicts, while lighter terms are not looked at yet
constexpr std::int64_t forTrying = 20; // what a search without any conflict counts for
/// Where there are more, a conflict counts for several.
constexpr std::int64_t stepsAConflict = 300;
/// Where conflicts take longer on average, fewer of them are spent on a detail; at most so many
/// times fewer.
constexpr std::int64_t usualSteps = 800;
constexpr std::int64_t mostUsual = 4;
/// Where most terms weigh so much, a term of weight 1 that can be many times that is taken apart.
constexpr std::int64_t leastStep = 32;
constexpr std::int64_t leastSteps = 8;
constexpr std::size_t mostToShrink = 24;
/// When no more percent are left between bound and best than when terms were last held to it.
constexpr std::int64_t percentToHoldAnew = 70;

/// A core may name less than was assumed of a view.
bool names(const Literals& core, Literal assumed)
{
    return std::ranges::find(core, assumed.view, &Literal::view) != core.end();
}

} // namespace

CostCores::CostCores(Model& model, engine::Search& search)
    : model_(&model), search_(&search), fixed_(model.fixedCost())
{
    for (const engine::WeightedView& term : model.costTerms()) {
        charges_.push_back({term.view, term.weight, model.asGaps(term.view)});
    }
    takeApart();
    for (const Charge& charge : charges_) {
        lightest_ = std::max(lightest_, charge.weight);
    }
}

/// What ovens cost is one variable, of weight 1 whatever it comes to; it would be looked at last,
/// though much of the cost is there. So it is said in steps as heavy as other terms are, and a
/// rest.
void CostCores::takeApart()
{
    std::map<std::int64_t, std::size_t> counts;
    for (const Charge& charge : charges_) {
        ++counts[charge.weight];
    }
    counts.erase(1);
    const auto usual =
        std::ranges::max_element(counts, {}, &std::pair<const std::int64_t, std::size_t>::second);
    const std::int64_t step = usual == counts.end() ? 1 : usual->first;
    engine::Engine& engine = model_->engine();
    for (std::size_t i = 0, all = charges_.size(); step >= leastStep && i < all; ++i) {
        const std::int64_t least = engine.trail().least(charges_[i].view);
        const std::int64_t most = engine.trail().most(charges_[i].view);
        // Steps and rest are never below zero, so neither may it be.
        if (charges_[i].weight != 1 || !charges_[i].gaps.gaps.empty() || least < 0 ||
            most - least < leastSteps * step) {
            continue;
        }
        const Variable steps = engine.newVariable(0, static_cast<Bound>(most / step + 1));
        const Variable rest = engine.newVariable(0, static_cast<Bound>(step - 1));
        engine::LinearPropagator::post(
            engine,
            {{charges_[i].view, 1}, {steps.minus(), static_cast<Bound>(step)}, {rest.minus(), 1}},
            0);
        charges_[i] = {rest.plus(), 1, {}};
        charges_.push_back({steps.plus(), step, {}});
    }
}

/// As many conflicts as take no longer than so many usual ones do.
std::int64_t CostCores::usual(std::int64_t conflicts) const
{
    const engine::Engine& engine = model_->engine();
    const std::int64_t steps = engine.steps() / std::max<std::int64_t>(1, engine.conflicts());
    return conflicts * usualSteps / std::clamp(steps, usualSteps, mostUsual * usualSteps);
}

std::int64_t CostCores::bound() const
{
    std::int64_t sum = fixed_;
    for (const Charge& charge : charges_) {
        sum += charge.weight * model_->engine().trail().least(charge.view);
    }
    return sum;
}

Literal CostCores::atItsLeast(const Charge& charge) const
{
    return {charge.view, model_->engine().trail().least(charge.view)};
}

Literals CostCores::assumptions(Literal better) const
{
    std::vector<Charge> heavy;
    for (const Charge& charge : charges_) {
        if (charge.weight >= lightest_ && !model_->isAlways(atItsLeast(charge))) {
            heavy.push_back(charge);
        }
    }
    std::ranges::stable_sort(heavy, std::greater{}, &Charge::weight);
    Literals result{better};
    for (const Charge& charge : heavy) {
        result.push_back(atItsLeast(charge));
    }
    return result;
}

/// The weights at least half as heavy as the next lighter one. False: all are looked at.
bool CostCores::looksAtLighter()
{
    std::int64_t next = 0;
    for (const Charge& charge : charges_) {
        if (charge.weight < lightest_) {
            next = std::max(next, charge.weight);
        }
    }
    looksAtAll_ = next == 0;
    if (looksAtAll_) {
        return false;
    }
    lightest_ = next / 2 + 1;
    return true;
}

CostCores::End CostCores::tryFor(const Literals& assumed, std::int64_t conflicts)
{
    const std::int64_t before = model_->engine().conflicts();
    const std::int64_t stepsBefore = model_->engine().steps();
    const End end = search_->run(assumed, {std::min(conflicts, left_), true});
    left_ -= forTrying + std::max(model_->engine().conflicts() - before,
                                  (model_->engine().steps() - stepsBefore) / stepsAConflict);
    return end;
}

std::vector<std::size_t> CostCores::chargesOf(const Literals& core) const
{
    std::vector<std::size_t> result;
    for (std::size_t i = 0; i < charges_.size(); ++i) {
        if (charges_[i].weight > 0 && names(core, atItsLeast(charges_[i]))) {
            result.push_back(i);
        }
    }
    return result;
}

/// Fewer literals make a sum that says more.
Literals CostCores::shrunk(Literals core, Literal better)
{
    const auto isBetter = [&](Literal literal) { return literal.view == better.view; };
    std::erase_if(core, isBetter);
    for (std::size_t i = core.size(); i-- > 0 && core.size() > 1 && left_ > 0;) {
        if (core.size() > mostToShrink || i >= core.size()) {
            continue;
        }
        Literals rest{better};
        for (std::size_t j = 0; j < core.size(); ++j) {
            if (j != i) {
                rest.push_back(core[j]);
            }
        }
        if (tryFor(rest, usual(forLess)) == End::Infeasible) {
            const Literals smaller = search_->core();
            std::erase_if(core, [&](Literal literal) { return !names(smaller, literal); });
        }
    }
    return core;
}

/// As gaps, if all of them are.
Model::AsGaps CostCores::sumOfGaps(const std::vector<std::size_t>& together) const
{
    Model::AsGaps result;
    for (const std::size_t i : together) {
        const Model::AsGaps& one = charges_[i].gaps;
        if (one.gaps.empty()) {
            return {};
        }
        result.gaps.insert(result.gaps.end(), one.gaps.begin(), one.gaps.end());
        result.plus += one.plus;
    }
    return result;
}

void CostCores::replaceBySum(const std::vector<std::size_t>& together)
{
    engine::Engine& engine = model_->engine();
    std::int64_t least = 1;
    std::int64_t most = 0;
    std::int64_t weight = std::numeric_limits<std::int64_t>::max();
    std::vector<engine::WeightedView> terms;
    for (const std::size_t i : together) {
        terms.push_back({charges_[i].view, 1});
        least += engine.trail().least(charges_[i].view);
        most += engine.trail().most(charges_[i].view);
        weight = std::min(weight, charges_[i].weight);
    }
    const Variable sum =
        engine.newVariable(static_cast<Bound>(least), static_cast<Bound>(std::max(least, most)));
    terms.push_back({sum.minus(), 1});
    engine::LinearPropagator::post(engine, std::move(terms), 0);
    Model::AsGaps gaps = sumOfGaps(together);
    if (!gaps.gaps.empty()) {
        engine::DifferenceCosts::post(engine, gaps.gaps, {sum, static_cast<Bound>(-gaps.plus)});
    }
    for (const std::size_t i : together) {
        charges_[i].weight -= weight;
    }
    charges_.push_back({sum.plus(), weight, std::move(gaps)});
}

/// What is better costs less by the terms as they are now, too: there each sum can be what it is
/// made of. As more is known of sums than of that, it rules out far more than the cost by its first
/// terms does. The limit is a number, though it has to be posted anew, as explanations would have
/// to name the cost's own variable. False: nothing is better.
bool CostCores::holdToBetter(Literal better)
{
    const std::int64_t left = better.bound - bound();
    if (leftWhenHeld_ &&
        (left >= *leftWhenHeld_ || left * 100 > *leftWhenHeld_ * percentToHoldAnew)) {
        return true;
    }
    leftWhenHeld_ = left;
    std::vector<engine::WeightedView> terms;
    for (const Charge& charge : charges_) {
        if (charge.weight > 0) {
            terms.push_back({charge.view, static_cast<Bound>(charge.weight)});
        }
    }
    engine::Engine& engine = model_->engine();
    engine::LinearPropagator::post(engine, std::move(terms), better.bound - fixed_);
    return engine.propagate();
}

/// In steps that double, as long as it is easy to see that the charge is higher. False: nothing is
/// better any more.
bool CostCores::pushUp(std::size_t charge, Literal better)
{
    for (Bound step = 0; left_ > 0; step = 2 * step + 1) {
        const Literal low = atItsLeast(charges_[charge]);
        const Literal tried{low.view,
                            std::min(low.bound + step, model_->engine().trail().most(low.view))};
        if (tryFor({better, tried}, usual(forMore)) != End::Infeasible) {
            return true;
        }
        if (!names(search_->core(), tried)) {
            return false;
        }
        model_->engine().addFact(~tried);
        if (!model_->engine().propagate()) {
            return false;
        }
    }
    return true;
}

CostCores::End CostCores::raise(Literal better, std::int64_t conflicts)
{
    engine::Engine& engine = model_->engine();
    left_ = conflicts;
    while (left_ > 0) {
        engine.addFact(engine::atLeast(model_->cost(), static_cast<Bound>(bound())));
        if (!engine.propagate() || model_->isNever(better)) {
            return End::Infeasible;
        }
        if (!holdToBetter(better)) {
            return End::Infeasible;
        }
        const End end =
            tryFor(assumptions(better), looksAtAll_ ? left_ : std::min(left_, forHeavy));
        if (end == End::Given) {
            // Neither way soon: with more of them assumed, it is easier to see that they cannot be.
            std::ignore = looksAtLighter();
            return end;
        }
        if (end == End::Found) {
            // The best by what is heaviest, as where few tasks are to move, is a plan already.
            std::ignore = looksAtLighter();
            return end;
        }
        const Literals core = shrunk(search_->core(), better);
        if (std::ranges::any_of(core, [&](Literal literal) { return model_->isNever(literal); })) {
            continue; // what was learnt on the way says more
        }
        const std::vector<std::size_t> together = chargesOf(core);
        if (together.empty()) {
            return End::Infeasible;
        }
        // A sum hardly ever goes up by more at once.
        const bool isOne = together.size() == 1;
        if (isOne) {
            engine.addFact(~atItsLeast(charges_[together.front()]));
        } else {
            replaceBySum(together);
        }
        if (!engine.propagate() || (isOne && !pushUp(together.front(), better))) {
            return End::Infeasible;
        }
    }
    return End::Given;
}

} // namespace suppertide::exact
