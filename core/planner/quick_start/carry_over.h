// CarryOver: takes a plan along when options change: what can stay where it is stays.
#pragma once

#include <memory>
#include <utility>
#include <vector>

#include "core/planner/quick_start/partial_plan.h"

namespace suppertide::quick_start {

/// A plan of `next` in which every block stands as in `plan` if all its tasks were placed there
/// and nothing is in the way.
[[nodiscard]] PartialPlan carriedOver(const PartialPlan& plan, const Instance& next);

/// The instances of the last option sets; making one costs more than looking for it.
class Instances
{
public:
    explicit Instances(const Problem& problem) : problem_(&problem) {}

    [[nodiscard]] std::shared_ptr<const Instance> with(const Instance::Options& options);

private:
    static constexpr std::size_t mostKept = 48;
    const Problem* problem_;
    std::vector<std::shared_ptr<const Instance>> kept_;
    std::size_t oldest_ = 0;
};

} // namespace suppertide::quick_start
