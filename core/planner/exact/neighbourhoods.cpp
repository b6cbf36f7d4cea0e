#include "core/planner/exact/neighbourhoods.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <utility>

namespace suppertide::exact {

namespace {

constexpr std::uint64_t heatedPercent = 8;
constexpr std::uint64_t nearPercent = 60; // of the others
constexpr std::uint64_t ovenPercent = 12; // of the rest
constexpr std::uint64_t tiedPercent = 70;
constexpr std::uint64_t tiedToHeatedPercent = 50;
constexpr int stepsAlongLags = 2;

bool holdsAny(const Option& option, const Neighbourhoods::Freed& freed)
{
    return std::ranges::any_of(option.tasks, [&](TaskIndex task) { return freed[task]; });
}

/// All that may be in an oven, and what could be done instead.
Neighbourhoods::Freed ofOvens(const Problem& problem)
{
    Neighbourhoods::Freed result(problem.tasks.size(), false);
    for (const OvenDemand& demand : problem.ovenDemands) {
        result[demand.from.task] = true;
        result[demand.to.task] = true;
    }
    for (const Choice& choice : problem.choices) {
        if (std::ranges::none_of(choice.options,
                                 [&](const Option& option) { return holdsAny(option, result); })) {
            continue;
        }
        for (const Option& option : choice.options) {
            for (const TaskIndex task : option.tasks) {
                result[task] = true;
            }
        }
    }
    return result;
}

} // namespace

Neighbourhoods::Neighbourhoods(const Model& model, quick_start::Dice& dice)
    : model_(&model), problem_(&model.problem()), dice_(&dice), ofOvens_(ofOvens(model.problem()))
{}

Neighbourhoods::Drawn Neighbourhoods::draw(const Schedule& best, const std::vector<Bound>& values,
                                           std::size_t size)
{
    if (!problem_->ovenDemands.empty() && dice_->percent(heatedPercent)) {
        return {heated(), false};
    }
    return {dice_->percent(nearPercent) ? near(values, size) : tied(best, size), true};
}

Neighbourhoods::Freed Neighbourhoods::none() const
{
    return Freed(problem_->tasks.size(), false);
}

Neighbourhoods::Freed Neighbourhoods::near(const std::vector<Bound>& values, std::size_t size)
{
    const TaskIndex centre{dice_->below(problem_->tasks.size())};
    const auto at = [&](TaskIndex task) { return values[model_->start(task).index]; };
    std::vector<std::pair<Bound, TaskIndex>> apart;
    for (const TaskIndex task : problem_->tasks.indices()) {
        apart.emplace_back(std::abs(at(task) - at(centre)), task);
    }
    std::sort(apart.begin(), apart.end());
    Freed freed = none();
    for (std::size_t i = 0; i < std::min(size, apart.size()); ++i) {
        freed[apart[i].second] = true;
    }
    return freed;
}

/// One drawn, what lags tie to what is freed already, and others.
Neighbourhoods::Freed Neighbourhoods::tied(const Schedule& best, std::size_t size)
{
    const std::size_t count = problem_->tasks.size();
    Freed freed = none();
    freed[TaskIndex{dice_->below(count)}] = true;
    std::size_t left = std::min(count, size);
    if (!problem_->ovenDemands.empty() && dice_->percent(ovenPercent)) {
        addOven(best, freed);
        left = std::max<std::size_t>(left / 2, 2);
    }
    for (std::size_t tries = 0; left > 0 && tries < 4 * count; ++tries) {
        if (problem_->lags.empty() || !dice_->percent(tiedPercent)) {
            freed[TaskIndex{dice_->below(count)}] = true;
            --left;
            continue;
        }
        const Lag& lag = problem_->lags[LagIndex{dice_->below(problem_->lags.size())}];
        if (freed[lag.from.task] != freed[lag.to.task]) {
            freed[lag.from.task] = true;
            freed[lag.to.task] = true;
            --left;
        }
    }
    return freed;
}

/// All that is in the oven of something drawn.
void Neighbourhoods::addOven(const Schedule& best, Freed& freed)
{
    const auto oven = best.ovens[OvenDemandIndex{dice_->below(problem_->ovenDemands.size())}];
    for (const OvenDemandIndex index : problem_->ovenDemands.indices()) {
        if (best.ovens[index] == oven) {
            freed[problem_->ovenDemands[index].from.task] = true;
            freed[problem_->ovenDemands[index].to.task] = true;
        }
    }
}

Neighbourhoods::Freed Neighbourhoods::heated()
{
    Freed freed = ofOvens_;
    for (int step = 0; step < stepsAlongLags; ++step) {
        addTied(freed);
    }
    return freed;
}

/// Some of what one lag ties to what is freed.
void Neighbourhoods::addTied(Freed& freed)
{
    const Freed before = freed;
    for (const Lag& lag : problem_->lags) {
        if (before[lag.from.task] != before[lag.to.task] && dice_->percent(tiedToHeatedPercent)) {
            freed[lag.from.task] = true;
            freed[lag.to.task] = true;
        }
    }
}

} // namespace suppertide::exact
