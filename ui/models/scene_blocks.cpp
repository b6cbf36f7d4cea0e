#include <algorithm>
#include <iterator>

#include "ui/models/scene_parts.h"

namespace suppertide::ui {

namespace {

/// The planned length lies within the range, whatever a caution or a pin has made of it.
void setDuration(SceneBlock& block, const DurationRange& range, Minutes planned)
{
    block.likely = planned;
    block.least = std::min(range.least.count() > 0 ? range.least : planned, planned);
    block.most = std::max(range.most, planned);
}

} // namespace

std::vector<SceneBlock> blocksOf(const SceneContext& context, const Scene& scene)
{
    std::vector<SceneBlock> blocks;
    for (const TaskIndex index : context.problem.tasks.indices()) {
        if (!context.places.isShown(index) || context.places.of(index).empty()) {
            continue;
        }
        const Task& task = context.problem.tasks[index];
        const TaskSource& source = context.formulation.tasks[index];
        SceneBlock block;
        block.id = task.id;
        block.dish = dishOf(scene, context, source.dish);
        block.verb = source.verb.empty() ? source.text : source.verb;
        block.object = inSentence(source.dishName);
        block.start = context.places.times().interval(index)->start;
        setDuration(block, source.duration, task.duration);
        block.attention = task.hands ? task.hands->attention : unattended;
        std::copy_if(context.places.of(index).begin(), context.places.of(index).end(),
                     std::back_inserter(block.places),
                     [&](const Placement& place) { return findLane(scene, place.lane); });
        block.isPinned = context.source.layout->pinned.contains(task.id);
        block.sentence = taskText(context.plan, index, context.source.style);
        blocks.push_back(std::move(block));
    }
    return blocks;
}

} // namespace suppertide::ui
