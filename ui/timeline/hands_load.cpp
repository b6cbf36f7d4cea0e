#include "ui/timeline/hands_load.h"

#include <algorithm>

#include "core/base/contracts.h"

namespace suppertide::ui {

namespace {

int cooksOf(const Scene& scene, const SceneBlock& block)
{
    const auto isCook = [&](const Placement& place) {
        const auto lane = findLane(scene, place.lane);
        return lane && std::holds_alternative<CookLane>(scene.lanes[*lane].kind);
    };
    return static_cast<int>(std::count_if(block.places.begin(), block.places.end(), isCook));
}

} // namespace

std::vector<int> handsLoad(const Scene& scene, Minutes step)
{
    expects(step > Minutes{0}, "a step above 0");
    // Difference sums over minutes, then the most of each step.
    const std::int64_t length = scene.horizon.length().count();
    std::vector<int> change(static_cast<std::size_t>(length) + 1, 0);
    for (const SceneBlock& block : scene.blocks) {
        const Interval when = block.when().common(scene.horizon);
        if (when.empty() || block.ghost) {
            continue;
        }
        const int taken = block.attention.percent() * cooksOf(scene, block);
        change[static_cast<std::size_t>((when.start - scene.horizon.start).count())] += taken;
        change[static_cast<std::size_t>((when.end - scene.horizon.start).count())] -= taken;
    }
    std::vector<int> load(static_cast<std::size_t>((length + step.count() - 1) / step.count()), 0);
    int now = 0;
    for (std::int64_t minute = 0; minute < length; ++minute) {
        now += change[static_cast<std::size_t>(minute)];
        int& most = load[static_cast<std::size_t>(minute / step.count())];
        most = std::max(most, now);
    }
    return load;
}

} // namespace suppertide::ui
