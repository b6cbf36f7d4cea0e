#include "ui/timeline/wait_shapes.h"

#include <algorithm>

namespace suppertide::ui {

namespace {

bool isCookLane(const Scene& scene, std::size_t lane)
{
    return std::holds_alternative<CookLane>(scene.lanes[lane].kind);
}

/// The shape under which a wait hangs: the step's place on a thing rather than with a cook.
const BlockShape* hangerOf(const Scene& scene, const std::vector<BlockShape>& shapes,
                           const std::string& id)
{
    const BlockShape* best = nullptr;
    for (const BlockShape& shape : shapes) {
        if (scene.blocks[shape.block].id != id || shape.gutterHeight <= 0) {
            continue;
        }
        if (best == nullptr || (isCookLane(scene, best->lane) && !isCookLane(scene, shape.lane))) {
            best = &shape;
        }
    }
    return best;
}

/// The height at which the next step's block begins, if it stands in another lane than `from`.
std::optional<double> landing(const Scene& scene, const std::vector<BlockShape>& shapes,
                              const BlockShape& from, const std::string& id)
{
    const BlockShape* nearest = nullptr;
    for (const BlockShape& shape : shapes) {
        if (scene.blocks[shape.block].id != id || shape.band != from.band) {
            continue;
        }
        if (shape.lane == from.lane) {
            return std::nullopt;
        }
        const double distance = std::abs(shape.top - from.bottom);
        if (nearest == nullptr || distance < std::abs(nearest->top - from.bottom)) {
            nearest = &shape;
        }
    }
    if (nearest == nullptr) {
        return std::nullopt;
    }
    return nearest->top > from.bottom ? nearest->top : nearest->bottom;
}

/// Two waits of one gutter that overlap must not share a line: the later one runs a little lower.
void keepApart(WaitShape& shape, const std::vector<WaitShape>& before)
{
    constexpr double lower = 3;
    const bool isTaken = std::any_of(before.begin(), before.end(), [&](const WaitShape& other) {
        return other.lane == shape.lane && other.y == shape.y &&
               other.start < std::max(shape.end, shape.least) &&
               shape.start < std::max(other.end, other.least);
    });
    if (isTaken) {
        shape.y += lower;
        shape.foot += lower;
    }
}

} // namespace

std::vector<WaitShape> shapeWaits(const Scene& scene, const TimeAxis& axis,
                                  const std::vector<BlockShape>& shapes, double offsetX,
                                  double viewRight)
{
    std::vector<WaitShape> result;
    for (std::size_t i = 0; i < scene.waits.size(); ++i) {
        const SceneWait& wait = scene.waits[i];
        const BlockShape* from = hangerOf(scene, shapes, wait.from);
        if (from == nullptr) {
            continue;
        }
        WaitShape shape;
        shape.wait = i;
        shape.lane = from->lane;
        shape.band = from->band;
        // The line runs in the gutter's upper half, the bracket's foot 4 px under it.
        shape.y = from->rowBottom + std::max(3.0, from->gutterHeight / 2 - 1);
        shape.foot = shape.y + 4;
        shape.start = offsetX + axis.xOf(wait.when.start);
        shape.end = offsetX + axis.xOf(wait.when.end);
        shape.least = offsetX + axis.xOf(wait.when.start + wait.least);
        const double top = shape.y - 4.5;
        if (wait.most) {
            shape.hasMost = true;
            const double most = offsetX + axis.xOf(wait.when.start + *wait.most);
            if (most <= viewRight) {
                shape.most = most;
            }
            if (shape.end > most + 0.5) {
                shape.surplus = Box{most, top, shape.end, shape.foot};
            }
        }
        if (shape.end < shape.least - 0.5) {
            shape.surplus = Box{shape.end, top, shape.least, shape.foot};
        }
        shape.landsAt = landing(scene, shapes, *from, wait.to);
        keepApart(shape, result);
        result.push_back(shape);
    }
    return result;
}

} // namespace suppertide::ui
