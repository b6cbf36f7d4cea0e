#include "core/planner/exact/kept_starts.h"

#include <algorithm>
#include <set>

namespace suppertide::exact {

bool isMovingDear(const Costs& costs)
{
    return costs.beforeMoved >
           std::max(
               {costs.ovenChange, costs.ovenSwitchOn + costs.ovenSwitchOnWithin, costs.session});
}

KeptStarts::KeptStarts(const Model& model)
{
    const Problem& problem = model.problem();
    std::set<TaskIndex> named;
    for (const BeforeStart& before : problem.costs.before) {
        named.insert(before.task);
        starts_.push_back({model.start(before.task), static_cast<Bound>(minuteOf(before.start))});
    }
    for (const ChoiceIndex choice : problem.choices.indices()) {
        for (const OptionIndex option : problem.choices[choice].options.indices()) {
            const auto& tasks = problem.choices[choice].options[option].tasks;
            if (std::ranges::any_of(tasks, [&](TaskIndex task) { return named.contains(task); })) {
                kept_.push_back(model.option(choice, option));
            }
        }
    }
    for (const Start& start : starts_) {
        kept_.push_back(engine::atLeast(start.start, start.at));
        kept_.push_back(engine::atMost(start.start, start.at));
    }
}

bool KeptStarts::letGo(const Literals& core)
{
    const auto isNamed = [&](Literal literal) {
        return std::ranges::any_of(
            core, [&](Literal other) { return other.variable() == literal.variable(); });
    };
    return std::erase_if(kept_, isNamed) > 0;
}

std::vector<Bound> KeptStarts::aims(std::vector<Bound> others) const
{
    for (const Start& start : starts_) {
        others[start.start.index] = start.at;
    }
    return others;
}

} // namespace suppertide::exact
