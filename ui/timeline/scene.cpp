#include "ui/timeline/scene.h"

#include <algorithm>

namespace suppertide::ui {

namespace {

template <typename Items, typename Predicate>
auto* findIn(const Items& items, Predicate predicate)
{
    const auto found = std::find_if(items.begin(), items.end(), predicate);
    return found == items.end() ? nullptr : &*found;
}

} // namespace

const SceneBlock* findBlock(const Scene& scene, const std::string& id)
{
    return findIn(scene.blocks, [&](const SceneBlock& block) { return block.id == id; });
}

std::optional<std::size_t> findLane(const Scene& scene, const std::string& id)
{
    const auto* lane =
        findIn(scene.lanes, [&](const SceneLane& candidate) { return candidate.id == id; });
    if (lane == nullptr) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(lane - scene.lanes.data());
}

const SceneServing* findServing(const Scene& scene, int course)
{
    return findIn(scene.servings,
                  [&](const SceneServing& serving) { return serving.course == course; });
}

const SceneClash* findClash(const Scene& scene, int number)
{
    return findIn(scene.clashes, [&](const SceneClash& clash) { return clash.number == number; });
}

} // namespace suppertide::ui
