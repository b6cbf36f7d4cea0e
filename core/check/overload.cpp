#include "core/check/overload.h"

#include <algorithm>
#include <optional>

namespace suppertide {

namespace {

struct Step
{
    PlanTime at;
    std::int64_t change = 0;
};

std::vector<Step> stepsOf(const std::vector<Use>& uses)
{
    std::vector<Step> steps;
    steps.reserve(uses.size() * 2);
    for (const Use& use : uses) {
        if (!use.when.empty()) {
            steps.push_back({use.when.start, use.amount});
            steps.push_back({use.when.end, -use.amount});
        }
    }
    std::ranges::sort(steps, {}, &Step::at);
    return steps;
}

} // namespace

std::vector<Overload> overloads(const std::vector<Use>& uses, std::int64_t capacity)
{
    const std::vector<Step> steps = stepsOf(uses);
    std::vector<Overload> result;
    std::optional<Overload> open;
    std::int64_t level = 0;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        level += steps[i].change;
        if (i + 1 < steps.size() && steps[i + 1].at == steps[i].at) {
            continue; // the level of a minute is known after all its changes
        }
        if (level > capacity) {
            open = open.value_or(Overload{{steps[i].at, steps[i].at}, 0});
            open->most = std::max(open->most, level);
        } else if (open) {
            open->when.end = steps[i].at;
            result.push_back(*std::exchange(open, std::nullopt));
        }
    }
    return result;
}

std::vector<TaskIndex> tasksDuring(const std::vector<Use>& uses, const Interval& when)
{
    std::vector<TaskIndex> result;
    for (const Use& use : uses) {
        if (use.amount > 0 && use.when.overlaps(when)) {
            result.push_back(use.from.task);
            result.push_back(use.to.task);
        }
    }
    return result;
}

} // namespace suppertide
