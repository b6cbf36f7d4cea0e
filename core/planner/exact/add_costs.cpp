#include <algorithm>
#include <cstdlib>

#include "core/planner/engine/linear.h"
#include "core/planner/engine/overlap.h"
#include "core/planner/exact/parts.h"

namespace suppertide::exact {

namespace {

using engine::atLeast;
using engine::atMost;
using engine::WeightedView;

/// to − from − plus is at most the variable, if the condition holds.
void boundGap(Model& model, const Term& from, const Term& to, std::int64_t plus, Variable most,
              Literal condition)
{
    const auto& trail = model.engine().trail();
    const Bound widest = std::max(0, trail.most(to) - trail.least(from));
    const Variable given = condition.variable();
    const bool positive = (condition.view & 1U) != 0;
    std::vector<WeightedView> terms{
        {to.variable.plus(), 1}, {from.variable.minus(), 1}, {most.minus(), 1}};
    std::int64_t limit = plus + from.plus - to.plus;
    if (!model.isAlways(condition)) {
        const Bound slack = std::max<Bound>(1, static_cast<Bound>(widest - plus));
        terms.push_back({positive ? given.plus() : given.minus(), slack});
        limit += positive ? slack : 0;
    }
    engine::LinearPropagator::post(model.engine(), std::move(terms), limit);
}

/// What is paid for what a gap is longer than its least.
engine::PricedGap priced(const Stretch& gap, std::int64_t least, std::int64_t price)
{
    return {
        {gap.from.variable, gap.from.plus + static_cast<Bound>(least)}, gap.to, price, gap.held};
}

void addLoss(Model& model)
{
    for (const Lag& lag : model.problem().lags) {
        if (lag.loss == 0 || !lag.min) {
            continue;
        }
        const Stretch gap = model.stretch(lag.from, lag.to, model.selector("lag:" + lag.id));
        if (model.isNever(gap.held)) {
            continue;
        }
        const std::int64_t least = lag.min->count();
        // Of two points that both move the difference is better known than either.
        const bool oneMoves = model.engine().trail().isFixed(gap.from.variable) ||
                              model.engine().trail().isFixed(gap.to.variable);
        if (model.isAlways(gap.held) && oneMoves) {
            model.charge({{{gap.to.variable, lag.loss}, {gap.from.variable, -lag.loss}},
                          lag.loss * (gap.to.plus - gap.from.plus - least),
                          {priced(gap, least, lag.loss)}});
            continue;
        }
        const auto& trail = model.engine().trail();
        const std::int64_t most =
            std::min<std::int64_t>(trail.most(gap.to) - trail.least(gap.from),
                                   lag.max ? lag.max->count() : minuteOf(model.problem().horizon)) -
            least;
        if (most <= 0) {
            continue;
        }
        const Variable lost = model.engine().newVariable(0, static_cast<Bound>(most));
        boundGap(model, gap.from, gap.to, least, lost, gap.held);
        model.charge({{{lost, lag.loss}}, 0, {priced(gap, least, lag.loss)}});
    }
}

void addOptionCosts(Model& model)
{
    const Problem& problem = model.problem();
    for (const ChoiceIndex choice : problem.choices.indices()) {
        for (const OptionIndex option : problem.choices[choice].options.indices()) {
            model.charge(model.option(choice, option),
                         problem.choices[choice].options[option].cost);
        }
    }
}

void addQuiet(Model& model, const Quiet& quiet, TaskIndex index)
{
    const Task& task = model.problem().tasks[index];
    const bool relative = quiet.before.has_value();
    const Literal present =
        model.all({model.present(index), relative ? model.present(*quiet.before) : model.always()});
    const auto window =
        static_cast<Bound>(relative ? quiet.minutes.count() : quiet.when.length().count());
    const std::int64_t weight = quiet.rate * task.hands->attention.percent() * task.hands->cooks;
    const auto length = static_cast<Bound>(task.duration.count());
    if (model.isNever(present) || weight == 0 || window <= 0) {
        return;
    }
    const Variable one = model.always().variable();
    const Term reference = relative ? model.point({*quiet.before, Edge::Start})
                                    : Term{one, static_cast<Bound>(minuteOf(quiet.when.end)) - 1};
    const Term start = model.point({index, Edge::Start});
    const auto& trail = model.engine().trail();
    if (trail.least(start) >= trail.most(reference) ||
        trail.most(start) + length <= trail.least(reference) - window) {
        return;
    }
    const Variable shared = model.engine().newVariable(0, std::min(length, window));
    engine::OverlapPropagator::post(model.engine(),
                                    {shared, start, length, reference, window, present});
    model.charge(shared, weight);
}

void addBefore(Model& model)
{
    const Costs& costs = model.problem().costs;
    const Variable one = model.always().variable();
    for (const BeforeStart& before : costs.before) {
        const Literal present = model.present(before.task);
        if (model.isNever(present)) {
            continue;
        }
        const Variable start = model.start(before.task);
        const auto at = static_cast<Bound>(minuteOf(before.start));
        const auto& trail = model.engine().trail();
        if (costs.beforeRate > 0) {
            const Bound widest =
                std::max(std::abs(trail.least(start) - at), std::abs(trail.most(start) - at));
            const Variable away = model.engine().newVariable(0, widest);
            boundGap(model, {one, at - 1}, {start, 0}, 0, away, present);
            boundGap(model, {start, 0}, {one, at - 1}, 0, away, present);
            model.charge({{{away, costs.beforeRate}},
                          0,
                          {{{one, at - 1}, {start, 0}, costs.beforeRate, present},
                           {{start, 0}, {one, at - 1}, costs.beforeRate, present}}});
        }
        if (costs.beforeMoved > 0) {
            const Literal moved = engine::isTrue(model.engine().newBoolean());
            model.engine().addClause({~present, atMost(start, at), moved});
            model.engine().addClause({~present, atLeast(start, at), moved});
            model.charge(moved, costs.beforeMoved);
        }
    }
}

} // namespace

void addCosts(Model& model)
{
    const Problem& problem = model.problem();
    addLoss(model);
    addOptionCosts(model);
    for (const Quiet& quiet : problem.costs.quiet) {
        for (const TaskIndex task : problem.tasks.indices()) {
            if (problem.tasks[task].needsCooks()) {
                addQuiet(model, quiet, task);
            }
        }
    }
    addBefore(model);
    addSessions(model);
    addOvenCosts(model);
}

} // namespace suppertide::exact
