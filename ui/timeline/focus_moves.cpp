#include "ui/timeline/focus_moves.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <tuple>

namespace suppertide::ui {

namespace {

BlockTarget targetOf(const Scene& scene, const BlockShape& shape)
{
    return {scene.blocks[shape.block].id, scene.lanes[shape.lane].id};
}

const BlockShape* shapeOf(const Scene& scene, const Geometry& geometry, const BlockTarget& target)
{
    const BlockShape* anywhere = nullptr;
    for (const BlockShape& shape : geometry.blocks()) {
        if (scene.blocks[shape.block].id == target.id) {
            if (scene.lanes[shape.lane].id == target.lane) {
                return &shape;
            }
            anywhere = anywhere == nullptr ? &shape : anywhere;
        }
    }
    return anywhere;
}

/// Time first, then from the top down: left and right go through a lane in this order.
auto timeKey(const Scene& scene, const BlockShape& shape)
{
    return std::tuple{scene.blocks[shape.block].start, shape.top, shape.block};
}

/// The next in the same lane, before or after `from`.
const BlockShape* alongLane(const Scene& scene, const Geometry& geometry, const BlockShape& from,
                            bool later)
{
    const BlockShape* best = nullptr;
    for (const BlockShape& shape : geometry.blocks()) {
        if (shape.lane != from.lane) {
            continue;
        }
        const bool isBeyond = later ? timeKey(scene, shape) > timeKey(scene, from)
                                    : timeKey(scene, shape) < timeKey(scene, from);
        const bool isNearer =
            best == nullptr || (later ? timeKey(scene, shape) < timeKey(scene, *best)
                                      : timeKey(scene, shape) > timeKey(scene, *best));
        if (isBeyond && isNearer) {
            best = &shape;
        }
    }
    return best;
}

/// The block nearest in time in the nearest lane above or below that has any.
const BlockShape* acrossLanes(const Geometry& geometry, const BlockShape& from, bool down)
{
    const BlockShape* best = nullptr;
    const auto beyond = [&](const BlockShape& shape) {
        return down ? shape.lane > from.lane : shape.lane < from.lane;
    };
    const auto laneStep = [&](const BlockShape& shape) {
        return down ? shape.lane - from.lane : from.lane - shape.lane;
    };
    for (const BlockShape& shape : geometry.blocks()) {
        if (!beyond(shape)) {
            continue;
        }
        const auto key = [&](const BlockShape& s) {
            return std::tuple{laneStep(s), std::abs(s.left - from.left)};
        };
        if (best == nullptr || key(shape) < key(*best)) {
            best = &shape;
        }
    }
    return best;
}

const BlockShape* extreme(const Scene& scene, const Geometry& geometry, bool last)
{
    const auto& shapes = geometry.blocks();
    const auto earlier = [&](const BlockShape& a, const BlockShape& b) {
        return timeKey(scene, a) < timeKey(scene, b);
    };
    const auto found = last ? std::max_element(shapes.begin(), shapes.end(), earlier)
                            : std::min_element(shapes.begin(), shapes.end(), earlier);
    return found == shapes.end() ? nullptr : &*found;
}

const BlockShape* firstInView(const Scene& scene, const Geometry& geometry)
{
    const BlockShape* best = nullptr;
    for (const BlockShape& shape : geometry.blocks()) {
        if (shape.left < geometry.timeLeft() || shape.left >= geometry.timeRight()) {
            continue;
        }
        if (best == nullptr || timeKey(scene, shape) < timeKey(scene, *best)) {
            best = &shape;
        }
    }
    return best != nullptr ? best : extreme(scene, geometry, false);
}

/// The row above the lanes: course flags and folds, by time.
struct RailStop
{
    double x = 0;
    std::optional<int> course; // none: a fold
    PlanTime fold;

    [[nodiscard]] Target target() const
    {
        return course ? Target{FlagTarget{*course}} : Target{PleatTarget{fold}};
    }
};

std::vector<RailStop> railStops(const Scene& scene, const Geometry& geometry)
{
    std::vector<RailStop> stops;
    for (const SceneServing& serving : scene.servings) {
        stops.push_back({geometry.x(serving.time), serving.course, {}});
    }
    for (const TimeAxis::Piece& piece : geometry.axis().pieces()) {
        if (piece.isFolded) {
            stops.push_back({geometry.offset() + piece.x0, std::nullopt, piece.when.start});
        }
    }
    std::stable_sort(stops.begin(), stops.end(),
                     [](const RailStop& a, const RailStop& b) { return a.x < b.x; });
    return stops;
}

bool isOnRail(const Target& target)
{
    return std::holds_alternative<FlagTarget>(target) ||
           std::holds_alternative<PleatTarget>(target);
}

/// Requires at least one stop.
const RailStop& nearestStop(const std::vector<RailStop>& stops, double x)
{
    return *std::min_element(stops.begin(), stops.end(), [&](const RailStop& a, const RailStop& b) {
        return std::abs(a.x - x) < std::abs(b.x - x);
    });
}

/// The block nearest to `x` in the uppermost lane that has any.
Target belowRail(const Scene& scene, const Geometry& geometry, double x)
{
    const BlockShape* best = nullptr;
    for (const BlockShape& shape : geometry.blocks()) {
        const auto key = [&](const BlockShape& s) {
            return std::tuple{s.lane, std::abs(s.left - x)};
        };
        if (best == nullptr || key(shape) < key(*best)) {
            best = &shape;
        }
    }
    return best == nullptr ? Target{} : Target{targetOf(scene, *best)};
}

Target moveAlongRail(const Scene& scene, const Geometry& geometry, const Target& current,
                     FocusMove move)
{
    const std::vector<RailStop> stops = railStops(scene, geometry);
    const auto at = std::find_if(stops.begin(), stops.end(),
                                 [&](const RailStop& stop) { return stop.target() == current; });
    if (at == stops.end()) {
        // The fold that had the focus was opened.
        return belowRail(scene, geometry, geometry.timeLeft());
    }
    switch (move) {
    case FocusMove::Earlier:
        return at == stops.begin() ? current : (at - 1)->target();
    case FocusMove::Later:
        return at + 1 == stops.end() ? current : (at + 1)->target();
    case FocusMove::First:
        return stops.front().target();
    case FocusMove::Last:
        return stops.back().target();
    case FocusMove::Up:
        return current;
    case FocusMove::Down: {
        const Target below = belowRail(scene, geometry, at->x);
        return std::holds_alternative<std::monostate>(below) ? current : below;
    }
    }
    return current;
}

} // namespace

Target moveFocus(const Scene& scene, const Geometry& geometry, const Target& current,
                 FocusMove move)
{
    if (isOnRail(current)) {
        return moveAlongRail(scene, geometry, current, move);
    }
    const auto* block = std::get_if<BlockTarget>(&current);
    const BlockShape* from = block != nullptr ? shapeOf(scene, geometry, *block) : nullptr;
    const BlockShape* next = nullptr;
    if (move == FocusMove::First || move == FocusMove::Last) {
        next = extreme(scene, geometry, move == FocusMove::Last);
    } else if (from == nullptr) {
        next = firstInView(scene, geometry);
    } else if (move == FocusMove::Earlier || move == FocusMove::Later) {
        next = alongLane(scene, geometry, *from, move == FocusMove::Later);
    } else {
        next = acrossLanes(geometry, *from, move == FocusMove::Down);
        if (next == nullptr && move == FocusMove::Up) {
            const auto stops = railStops(scene, geometry);
            if (!stops.empty()) {
                return nearestStop(stops, from->left).target();
            }
        }
    }
    if (next == nullptr) {
        next = from;
    }
    if (next == nullptr) {
        const auto stops = railStops(scene, geometry);
        return stops.empty() ? Target{} : stops.front().target();
    }
    return targetOf(scene, *next);
}

std::vector<std::size_t> readingOrder(const Scene& scene)
{
    std::vector<std::size_t> order(scene.blocks.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto laneOf = [&](const SceneBlock& block) {
        const auto lane =
            block.places.empty() ? std::nullopt : findLane(scene, block.places.front().lane);
        return lane.value_or(scene.lanes.size());
    };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const SceneBlock& first = scene.blocks[a];
        const SceneBlock& second = scene.blocks[b];
        return first.start != second.start ? first.start < second.start
                                           : laneOf(first) < laneOf(second);
    });
    return order;
}

} // namespace suppertide::ui
