#include "core/planner/exact/model.h"

#include <algorithm>
#include <limits>

#include "core/planner/engine/linear.h"
#include "core/planner/exact/parts.h"

namespace suppertide::exact {

namespace {

using engine::atLeast;
using engine::atMost;
using engine::isFalse;
using engine::isTrue;

/// Beyond this sums of a few bounds could overflow.
constexpr std::int64_t mostMagnitude = 400'000'000;
constexpr Bound mostOvensCost = 100'000'000;

} // namespace

Model::Model(const Problem& problem, ModelStyle style)
    : cooks(problem.tasks.size()), ovens(problem.ovenDemands.size()),
      stayLengths(problem.ovenDemands.size()), ovenStretches(problem.ovenDemands.size()),
      ovenStays(problem.ovenDemands.size()), units(problem.demands.size()), problem_(&problem),
      style_(style), always_(isTrue(engine_.newVariable(1, 1)))
{
    if (minuteOf(problem.horizon) > mostMagnitude) {
        refuse();
        return;
    }
    addOptions();
    addTasks();
    addLags();
    addCounts(*this);
    addPools(*this);
    addCooks(*this);
    addOvens(*this);
    addClique(*this);
    if (style_.costs) {
        addCosts(*this);
        addCostVariables();
    }
}

Literal Model::all(Literals literals)
{
    std::sort(literals.begin(), literals.end());
    literals.erase(std::unique(literals.begin(), literals.end()), literals.end());
    std::erase_if(literals, [&](Literal literal) { return isAlways(literal); });
    if (literals.empty()) {
        return always_;
    }
    for (const Literal literal : literals) {
        if (isNever(literal)) {
            return ~always_;
        }
    }
    if (literals.size() == 1) {
        return literals[0];
    }
    const auto known = conjunctions_.find(literals);
    if (known != conjunctions_.end()) {
        return known->second;
    }
    const Literal result = isTrue(engine_.newBoolean());
    conjunctions_.emplace(literals, result);
    Literals together{result};
    for (const Literal literal : literals) {
        engine_.addClause({~result, literal});
        together.push_back(~literal);
    }
    engine_.addClause(std::move(together));
    return result;
}

void Model::implies(Literal condition, Literals consequences)
{
    consequences.push_back(~condition);
    engine_.addClause(std::move(consequences));
}

void Model::edge(const Term& from, const Term& to, std::int64_t least, Literal enabler)
{
    if (least > mostMagnitude) {
        engine_.addFact(~enabler);
        return;
    }
    if (least < -mostMagnitude || isNever(enabler)) {
        return;
    }
    engine_.addEdge(from, to, static_cast<Bound>(least), enabler);
}

Variable Model::boolean(Literal onlyIf)
{
    const Variable result = engine_.newBoolean();
    implies(~onlyIf, {isFalse(result)});
    return result;
}

Term Model::point(const TaskPoint& point) const
{
    const std::int64_t length = problem_->tasks[point.task].duration.count();
    return {starts_[point.task], point.edge == Edge::End ? static_cast<Bound>(length) : 0};
}

Stretch Model::stretch(const TaskPoint& from, const TaskPoint& to, Literal selector)
{
    return {point(from), point(to), all({present_[from.task], present_[to.task], selector})};
}

Literal Model::selector(const std::string& requirement)
{
    if (!style_.selectors) {
        return always_;
    }
    const auto known = selectorOf_.find(requirement);
    if (known != selectorOf_.end()) {
        return known->second;
    }
    const Literal result = isTrue(engine_.newBoolean());
    selectorOf_.emplace(requirement, result);
    selectors_.emplace_back(requirement, result);
    return result;
}

void Model::addOptions()
{
    present_.assign(problem_->tasks.size(), always_);
    for (const Choice& choice : problem_->choices) {
        const Literal kept = selector("choice:" + choice.id);
        IndexedVector<OptionIndex, Literal> options;
        Literals any;
        for (const Option& option : choice.options) {
            const bool only = choice.options.size() == 1;
            const Literal chosen = only ? kept : isTrue(engine_.newBoolean());
            implies(chosen, {kept});
            for (const Literal other : any) {
                engine_.addClause({~other, ~chosen});
            }
            any.push_back(chosen);
            options.push_back(chosen);
            for (const TaskIndex task : option.tasks) {
                present_[task] = chosen;
            }
        }
        implies(kept, any);
        options_.push_back(std::move(options));
    }
}

void Model::addTasks()
{
    const std::int64_t horizon = minuteOf(problem_->horizon);
    for (const TaskIndex index : problem_->tasks.indices()) {
        const Task& task = problem_->tasks[index];
        const std::int64_t length = task.duration.count();
        const std::int64_t most = horizon - length;
        starts_.push_back(
            engine_.newVariable(0, static_cast<Bound>(std::max<std::int64_t>(0, most))));
        if (most < 0) {
            engine_.addFact(~present_[index]);
            continue;
        }
        const Literal kept = all({present_[index], selector("window:" + task.id)});
        const std::int64_t from = minuteOf(task.window.start);
        const std::int64_t until = minuteOf(task.window.end) - length;
        if (until < from) {
            engine_.addFact(~kept);
            continue;
        }
        // An absent task has no start; any value will do, so a window always holds.
        const Literal asked = style_.selectors ? kept : always_;
        implies(asked, {atLeast(starts_[index], static_cast<Bound>(from))});
        implies(asked, {atMost(starts_[index], static_cast<Bound>(until))});
    }
}

void Model::addLags()
{
    for (const Lag& lag : problem_->lags) {
        const Stretch between = stretch(lag.from, lag.to, selector("lag:" + lag.id));
        if (lag.min) {
            edge(between.from, between.to, lag.min->count(), between.held);
        }
        if (lag.max) {
            edge(between.to, between.from, -lag.max->count(), between.held);
        }
    }
}

void Model::charge(Literal condition, std::int64_t amount)
{
    if (amount == 0 || isNever(condition)) {
        return;
    }
    if (isAlways(condition)) {
        fixedCost_ += amount;
    } else if ((condition.view & 1U) != 0) { // a Boolean is true
        charges_.push_back({condition.variable(), amount});
    } else {
        fixedCost_ += amount;
        charges_.push_back({condition.variable(), -amount});
    }
}

void Model::charge(Variable variable, std::int64_t weight)
{
    if (weight != 0) {
        charges_.push_back({variable, weight});
    }
}

void Model::charge(GapCharge charge)
{
    for (const auto& [variable, weight] : charge.charges) {
        this->charge(variable, weight);
    }
    chargeAlways(charge.always);
    gaps_.push_back(std::move(charge));
}

Model::AsGaps Model::asGaps(engine::View view) const
{
    const Variable variable{view / 2};
    for (const GapCharge& charge : gaps_) {
        if (charge.charges.size() == 1 && charge.charges.front().first == variable &&
            view == variable.plus()) {
            AsGaps result{charge.gaps, 0};
            for (engine::PricedGap& gap : result.gaps) {
                gap.price = 1;
            }
            return result;
        }
    }
    if (std::ranges::find(starts_, variable) == starts_.end()) {
        return {};
    }
    const Variable one = always_.variable();
    if (view == variable.plus()) {
        const Bound least = engine_.trail().least(variable);
        return {{{{one, least - 1}, {variable, 0}, 1, always_}}, least};
    }
    const Bound most = engine_.trail().most(variable);
    return {{{{variable, 0}, {one, most - 1}, 1, always_}}, -std::int64_t{most}};
}

/// The cost is at least what gaps cost together, given the order of things, and all else.
void Model::addGapCosts(Variable cost)
{
    std::vector<Charge> others;
    std::vector<engine::PricedGap> gaps;
    std::int64_t fixed = fixedCost_;
    std::map<std::uint32_t, std::int64_t> ofGaps;
    for (const GapCharge& gap : gaps_) {
        gaps.insert(gaps.end(), gap.gaps.begin(), gap.gaps.end());
        fixed -= gap.always;
        for (const auto& [variable, weight] : gap.charges) {
            ofGaps[variable.index] -= weight;
        }
    }
    if (gaps.size() < 2) { // one gap is as long as the edges say
        return;
    }
    others.reserve(others.size() + ofGaps.size() + charges_.size() + 1);
    for (const auto& [index, weight] : ofGaps) {
        others.push_back({{index}, weight});
    }
    others.insert(others.end(), charges_.begin(), charges_.end());
    if (ovensTogether) {
        others.push_back({*ovensSum_, 1});
    }
    const Variable total = engine_.newVariable(0, static_cast<Bound>(mostMagnitude / 2));
    others.push_back({total, 1});
    std::vector<engine::WeightedView> sum = termsOf(others);
    sum.push_back({cost.minus(), 1});
    engine::LinearPropagator::post(engine_, std::move(sum), -fixed);
    gapCosts_ = &engine::DifferenceCosts::post(engine_, std::move(gaps), {total, 0});
}

/// At least the sum, and at least what they cost together.
Variable Model::sumOfOvens(const IndexedVector<OvenIndex, Variable>& costs)
{
    const Variable sum = engine_.newVariable(0, mostOvensCost);
    std::vector<engine::WeightedView> terms{{sum.minus(), 1}};
    for (const Variable cost : costs) {
        terms.push_back({cost.plus(), 1});
    }
    engine::LinearPropagator::post(engine_, std::move(terms), 0);
    edge({*ovensTogether, 0}, {sum, 0}, 0, always_);
    return sum;
}

void Model::addCostVariables()
{
    std::vector<Charge> least = charges_;
    std::vector<Charge> likely = charges_;
    if (ovensTogether) {
        ovensSum_ = sumOfOvens(ovenLeast);
        least.push_back({*ovensSum_, 1});
        likely.push_back({sumOfOvens(ovenCost), 1});
    }
    costTerms_ = termsOf(least);
    cost_ = sumOf(costTerms_);
    likelyCost_ = ovensTogether ? sumOf(termsOf(likely)) : cost_;
    if (isSupported()) {
        addGapCosts(cost_);
    }
}

std::vector<engine::WeightedView> Model::termsOf(const std::vector<Charge>& charges) const
{
    std::map<std::uint32_t, std::int64_t> weights;
    for (const Charge& charge : charges) {
        weights[charge.variable.index] += charge.weight;
    }
    std::vector<engine::WeightedView> terms;
    for (const auto& [index, weight] : weights) {
        if (weight != 0) {
            const Variable variable{index};
            terms.push_back({weight > 0 ? variable.plus() : variable.minus(),
                             static_cast<Bound>(std::min(std::abs(weight), mostMagnitude))});
        }
    }
    return terms;
}

/// A variable that is at least the sum of the terms and of what is always charged.
Variable Model::sumOf(std::vector<engine::WeightedView> terms)
{
    std::int64_t least = fixedCost_;
    std::int64_t most = fixedCost_;
    for (const engine::WeightedView& term : terms) {
        least += std::int64_t{term.weight} * engine_.trail().least(term.view);
        most += std::int64_t{term.weight} * engine_.trail().most(term.view);
    }
    if (most > mostMagnitude || least < -mostMagnitude) {
        refuse();
        return always_.variable();
    }
    const Variable sum = engine_.newVariable(static_cast<Bound>(std::min<std::int64_t>(0, least)),
                                             static_cast<Bound>(std::max<std::int64_t>(0, most)));
    terms.push_back({sum.minus(), 1});
    engine::LinearPropagator::post(engine_, std::move(terms), -fixedCost_);
    return sum;
}

} // namespace suppertide::exact
