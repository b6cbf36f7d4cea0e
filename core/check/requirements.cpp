#include "core/check/requirements.h"

#include <algorithm>

namespace suppertide {

Requirements::Requirements(const Problem& problem, const Ties& ties)
{
    // In the order of BrokenKind.
    const std::array<std::size_t, kinds> sizes{
        problem.choices.size(), problem.tasks.size(),       problem.tasks.size(),
        problem.lags.size(),    problem.counts.size(),      problem.demands.size(),
        ties.units.size(),      problem.tasks.size(),       problem.cooks.size(),
        problem.ovens.size(),   problem.ovenDemands.size(), problem.ovens.size()};
    for (std::size_t kind = 0; kind < kinds; ++kind) {
        first_[kind + 1] = first_[kind] + sizes[kind];
    }
}

Verdict Requirements::judge(const Evidence& evidence, RequirementNumber number) const
{
    expects(number < size(), "the number of a requirement");
    const auto next = std::ranges::upper_bound(first_, number);
    const auto kind = static_cast<std::size_t>(next - first_.begin()) - 1;
    const std::size_t index = number - first_[kind];
    switch (static_cast<BrokenKind>(kind)) {
    case BrokenKind::Choice:
        return judgeChoice(evidence, ChoiceIndex{index});
    case BrokenKind::Start:
        return judgeStart(evidence, TaskIndex{index});
    case BrokenKind::Window:
        return judgeWindow(evidence, TaskIndex{index});
    case BrokenKind::Lag:
        return judgeLag(evidence, LagIndex{index});
    case BrokenKind::Count:
        return judgeCount(evidence, CountIndex{index});
    case BrokenKind::Demand:
        return judgeDemand(evidence, DemandIndex{index});
    case BrokenKind::Unit:
        return judgeUnit(evidence, evidence.ties().units[index]);
    case BrokenKind::Hands:
        return judgeHands(evidence, TaskIndex{index});
    case BrokenKind::Cook:
        return judgeCook(evidence, CookIndex{index});
    case BrokenKind::Program:
        return judgeProgram(evidence, OvenIndex{index});
    case BrokenKind::Oven:
        return judgeOvenDemand(evidence, OvenDemandIndex{index});
    case BrokenKind::Shelves:
        return judgeShelves(evidence, OvenIndex{index});
    }
    return {};
}

} // namespace suppertide
