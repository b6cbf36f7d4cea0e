#include "core/planner/exact/branching.h"

#include <algorithm>

namespace suppertide::exact {

Branching::Branching(const Model& model) : model_(&model)
{
    if (!model.isSupported()) {
        return;
    }
    const Problem& problem = model.problem();
    std::vector<bool> chosen(model.engine().trail().views() / 2, false);
    const auto choose = [&](Literal literal) {
        if (!chosen[literal.variable().index]) {
            chosen[literal.variable().index] = true;
            choices_.push_back(literal.variable());
        }
    };
    for (const ChoiceIndex choice : problem.choices.indices()) {
        for (const OptionIndex option : problem.choices[choice].options.indices()) {
            choose(model.option(choice, option));
        }
    }
    for (const auto& cooks : model.cooks) {
        for (const auto& [cook, literal] : cooks) {
            choose(literal);
        }
    }
    for (const auto& ovens : model.ovens) {
        for (const auto& [oven, literal] : ovens) {
            choose(literal);
        }
    }
    for (const auto& units : model.units) {
        for (const Model::UnitClass& unitClass : units) {
            choose(unitClass.chosen);
        }
    }
    for (std::uint32_t i = 0; i < chosen.size(); ++i) {
        if (!chosen[i]) {
            rest_.push_back({i});
        }
    }
}

std::optional<Literal> Branching::undecidedChoice(const engine::Trail& trail) const
{
    for (const Variable variable : choices_) {
        if (!trail.isFixed(variable)) {
            const bool wanted = aims_.empty() || aims_[variable.index] > 0;
            return wanted ? engine::isTrue(variable) : engine::isFalse(variable);
        }
    }
    return std::nullopt;
}

/// The start's aim if it is still possible; else the least value.
Literal Branching::nearAim(const engine::Trail& trail, Variable variable) const
{
    if (aims_.empty() || aims_[variable.index] <= trail.least(variable)) {
        return engine::atMost(variable, trail.least(variable));
    }
    return aims_[variable.index] >= trail.most(variable)
               ? engine::atLeast(variable, trail.most(variable))
               : engine::atLeast(variable, aims_[variable.index]);
}

std::optional<Literal> Branching::earliestStart(const engine::Trail& trail) const
{
    std::optional<Variable> first;
    std::pair<Bound, Bound> best;
    for (const TaskIndex task : model_->problem().tasks.indices()) {
        const Variable start = model_->start(task);
        if (trail.isFixed(start) || trail.fails(model_->present(task))) {
            continue;
        }
        const std::pair<Bound, Bound> rank{trail.least(start), trail.most(start)};
        if (!first || rank < best) {
            first = start;
            best = rank;
        }
    }
    return first ? std::optional{nearAim(trail, *first)} : std::nullopt;
}

std::optional<Literal> Branching::next(const engine::Trail& trail)
{
    if (auto choice = undecidedChoice(trail)) {
        return choice;
    }
    if (auto start = earliestStart(trail)) {
        return start;
    }
    if (trail.events().size() < restEvents_) {
        restFrom_ = 0;
    }
    restEvents_ = trail.events().size();
    for (; restFrom_ < rest_.size(); ++restFrom_) {
        if (!trail.isFixed(rest_[restFrom_])) {
            return engine::atMost(rest_[restFrom_], trail.least(rest_[restFrom_]));
        }
    }
    return std::nullopt;
}

} // namespace suppertide::exact
