#include "core/planner/quick_start/carry_over.h"

#include <algorithm>

#include "core/planner/quick_start/cost_meter.h"
#include "core/planner/quick_start/placement.h"

namespace suppertide::quick_start {

PartialPlan carriedOver(const PartialPlan& plan, const Instance& next)
{
    PartialPlan result(next);
    const Penalties penalties(next.blocks.size(), 1);
    Placement placement(result, penalties);
    for (const BlockIndex index : next.blocks.indices()) {
        const Block& block = next.blocks[index];
        const auto first = startOf(plan, block.tasks.front().task);
        const bool stays =
            first && *first >= block.bounds.est && *first <= block.bounds.lst &&
            std::all_of(block.tasks.begin(), block.tasks.end(), [&](const BlockTask& task) {
                return startOf(plan, task.task) == *first + task.offset;
            });
        if (!stays) {
            continue;
        }
        if (const auto proposal = placement.tryAt(index, *first, 0, false)) {
            result.place(*proposal);
        }
    }
    return result;
}

std::shared_ptr<const Instance> Instances::with(const Instance::Options& options)
{
    const auto found = std::find_if(kept_.begin(), kept_.end(), [&](const auto& instance) {
        return instance->options() == options;
    });
    if (found != kept_.end()) {
        return *found;
    }
    auto made = std::make_shared<const Instance>(*problem_, options);
    if (kept_.size() < mostKept) {
        kept_.push_back(made);
    } else {
        oldest_ = (oldest_ + 1) % mostKept;
        kept_[oldest_] = made;
    }
    return made;
}

} // namespace suppertide::quick_start
