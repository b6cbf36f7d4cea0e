#include "ui/timeline/hit_test.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace suppertide::ui {

namespace {

constexpr double tagSize = 16;
constexpr double flagHeight = 17;

/// How far a point lies outside a box, in x and y; 0 inside.
struct Outside
{
    double dx;
    double dy;
};

Outside outside(const Box& box, double x, double y)
{
    return {std::max({box.left - x, 0.0, x - box.right}),
            std::max({box.top - y, 0.0, y - box.bottom})};
}

/// The distance to a box if the point lies in its hit area (the box grown to at least 24 by 24).
std::optional<double> distanceWithin(const Box& box, double x, double y)
{
    const double growX = std::max(0.0, leastTarget - box.width()) / 2;
    const double growY = std::max(0.0, leastTarget - box.height()) / 2;
    const Outside off = outside(box, x, y);
    if (off.dx > growX || off.dy > growY) {
        return std::nullopt;
    }
    return std::hypot(off.dx, off.dy);
}

std::optional<LaneBand> bandAt(const Geometry& geometry, double y)
{
    for (const LaneBand band : {LaneBand::Scrolling, LaneBand::Foot}) {
        const Strip strip = geometry.lanes().visible(band);
        if (strip.top <= y && y < strip.bottom()) {
            return band;
        }
    }
    return std::nullopt;
}

std::optional<double> distanceTo(const BlockShape& shape, double x, double y)
{
    if (!shape.isSegment()) {
        return distanceWithin(shape.bounds(), x, y);
    }
    std::optional<double> best;
    for (const Box& piece : shape.pieces) {
        const auto distance = distanceWithin(piece, x, y);
        if (distance && (!best || *distance < *best)) {
            best = distance;
        }
    }
    return best;
}

/// The block nearest to the point: between two of them the line half-way divides.
Target blockAt(const Scene& scene, const Geometry& geometry, LaneBand band, double x, double y)
{
    const BlockShape* nearest = nullptr;
    double least = std::numeric_limits<double>::infinity();
    for (const BlockShape& shape : geometry.blocks()) {
        if (shape.band != band) {
            continue;
        }
        // Later blocks are painted over earlier ones, so they win where both are hit.
        if (const auto distance = distanceTo(shape, x, y); distance && *distance <= least) {
            least = *distance;
            nearest = &shape;
        }
    }
    if (nearest == nullptr) {
        return {};
    }
    return BlockTarget{scene.blocks[nearest->block].id, scene.lanes[nearest->lane].id};
}

Target pleatAt(const Geometry& geometry, double x)
{
    const double onAxis = x - geometry.offset();
    for (const TimeAxis::Piece& piece : geometry.axis().pieces()) {
        if (piece.isFolded && piece.x0 <= onAxis && onAxis < piece.x1) {
            return PleatTarget{piece.when.start};
        }
    }
    return {};
}

Target flagAt(const Scene& scene, const Geometry& geometry, const std::vector<Flag>& flags,
              double x, double y)
{
    const Strip& rail = geometry.lanes().rail;
    if (y >= rail.bottom()) {
        return {};
    }
    const double levelHeight = (rail.height - 4) / 2;
    for (std::size_t i = 0; i < flags.size() && i < scene.servings.size(); ++i) {
        const double top = rail.top + 2 + levelHeight * flags[i].level;
        const double left = std::min(flags[i].left, flags[i].right - leastTarget);
        if (Box{left, top - 1, flags[i].right + 3, top + std::max(flagHeight, levelHeight)}
                .contains(x, y)) {
            return FlagTarget{scene.servings[i].course};
        }
    }
    return {};
}

Target laneAt(const Scene& scene, const Geometry& geometry, LaneBand band, double x, double y)
{
    for (const LaneBox& box : geometry.lanes().boxes) {
        if (box.band == band && box.strip.top <= y && y < box.strip.bottom()) {
            return LaneTarget{scene.lanes[box.lane].id, x < geometry.timeLeft()};
        }
    }
    return {};
}

bool isHit(const Target& target)
{
    return !std::holds_alternative<std::monostate>(target);
}

Target tagAt(const std::vector<TagPlace>& tags, double x, double y)
{
    for (auto tag = tags.rbegin(); tag != tags.rend(); ++tag) {
        if (std::abs(tag->x - x) <= leastTarget / 2 && std::abs(tag->y - y) <= leastTarget / 2) {
            return TagTarget{tag->clash};
        }
    }
    return {};
}

Box boxOfTag(double x, double y)
{
    return {x - tagSize / 2, y - tagSize / 2, x + tagSize / 2, y + tagSize / 2};
}

/// The corner of a block that its tag sits on: the first that no other tag has taken and that
/// covers no other block, as far as there is such a one.
std::pair<double, double> tagCorner(const Geometry& geometry, const BlockShape& shape,
                                    const std::vector<TagPlace>& taken)
{
    const Box bounds = shape.bounds();
    const double inset = 2;
    const std::array corners{
        std::pair{bounds.left - inset, bounds.top - inset - 2},
        std::pair{bounds.right + inset, bounds.top - inset - 2},
        std::pair{bounds.right + inset, bounds.bottom + inset},
        std::pair{bounds.left - inset, bounds.bottom + inset},
    };
    const auto cost = [&](const std::pair<double, double>& corner) {
        const Box wanted = boxOfTag(corner.first, corner.second);
        const auto tags = std::count_if(taken.begin(), taken.end(), [&](const TagPlace& tag) {
            return boxOfTag(tag.x, tag.y).overlaps(wanted);
        });
        const auto blocks = std::count_if(
            geometry.blocks().begin(), geometry.blocks().end(), [&](const BlockShape& other) {
                return &other != &shape && other.bounds().overlaps(wanted);
            });
        return 10 * tags + blocks;
    };
    return *std::min_element(corners.begin(), corners.end(),
                             [&](const auto& a, const auto& b) { return cost(a) < cost(b); });
}

std::optional<TagPlace> placeOnBlock(const Scene& scene, const Geometry& geometry,
                                     const SceneClash& clash, const ClashPlace& place,
                                     const std::vector<TagPlace>& taken)
{
    for (const BlockShape& shape : geometry.blocks()) {
        if (scene.blocks[shape.block].id == *place.task &&
            scene.lanes[shape.lane].id == place.lane) {
            const auto [x, y] = tagCorner(geometry, shape, taken);
            return TagPlace{clash.number, clash.severity, x, y, shape.band};
        }
    }
    return std::nullopt;
}

std::optional<TagPlace> placeOnLane(const Scene& scene, const Geometry& geometry,
                                    const SceneClash& clash, const ClashPlace& place)
{
    const auto lane = findLane(scene, place.lane);
    const LaneBox* box = lane ? boxOfLane(geometry.lanes(), *lane) : nullptr;
    if (box == nullptr) {
        return std::nullopt;
    }
    const double x = (geometry.x(place.when.start) + geometry.x(place.when.end)) / 2;
    double y = box->strip.top + box->strip.height / 2;
    if (const auto* oven = std::get_if<OvenLane>(&scene.lanes[*lane].kind); oven && place.degrees) {
        y = Geometry::heatY(*box, *oven, place.degrees->high);
    } else if (!box->rows.empty() && !std::holds_alternative<OvenLane>(scene.lanes[*lane].kind)) {
        y = box->strip.top + tagSize / 2 + 1;
    }
    return TagPlace{clash.number, clash.severity, x, y, box->band};
}

} // namespace

std::vector<TagPlace> placeTags(const Scene& scene, const Geometry& geometry)
{
    std::vector<TagPlace> tags;
    for (const SceneClash& clash : scene.clashes) {
        for (const ClashPlace& place : clash.places) {
            std::optional<TagPlace> tag;
            if (place.task) {
                tag = placeOnBlock(scene, geometry, clash, place, tags);
            }
            if (!tag) {
                tag = placeOnLane(scene, geometry, clash, place);
            }
            if (tag) {
                tags.push_back(*tag);
            }
        }
    }
    for (const WaitShape& shape : geometry.waits()) {
        const SceneWait& wait = scene.waits[shape.wait];
        const SceneClash* clash = wait.clash ? findClash(scene, *wait.clash) : nullptr;
        if (clash != nullptr && shape.surplus) {
            tags.push_back({clash->number, clash->severity,
                            (shape.surplus->left + shape.surplus->right) / 2,
                            (shape.surplus->top + shape.surplus->bottom) / 2, shape.band});
        }
    }
    return tags;
}

Target targetAt(const Scene& scene, const Geometry& geometry, const std::vector<Flag>& flags,
                double x, double y)
{
    if (x >= geometry.timeLeft()) {
        if (Target flag = flagAt(scene, geometry, flags, x, y); isHit(flag)) {
            return flag;
        }
    }
    const auto band = bandAt(geometry, y);
    if (!band) {
        return x >= geometry.timeLeft() ? pleatAt(geometry, x) : Target{};
    }
    if (x < geometry.timeLeft()) {
        return laneAt(scene, geometry, *band, x, y);
    }
    std::vector<TagPlace> tags = placeTags(scene, geometry);
    std::erase_if(tags, [&](const TagPlace& tag) { return tag.band != *band; });
    if (Target tag = tagAt(tags, x, y); isHit(tag)) {
        return tag;
    }
    if (Target block = blockAt(scene, geometry, *band, x, y); isHit(block)) {
        return block;
    }
    if (Target pleat = pleatAt(geometry, x); isHit(pleat)) {
        return pleat;
    }
    return laneAt(scene, geometry, *band, x, y);
}

} // namespace suppertide::ui
