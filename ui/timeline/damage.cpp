#include "ui/timeline/damage.h"

#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "ui/timeline/hit_test.h"

namespace suppertide::ui {

namespace {

/// Outlines, tags, handles, countdowns and late marks stand this far off their block at most.
constexpr double aroundX = 64;
constexpr double aroundY = 22;
constexpr double gutterRoom = 10; // labels of waits reach this far above and below their line

Box around(const Box& box)
{
    return {box.left - aroundX, box.top - aroundY, box.right + aroundX, box.bottom + aroundY};
}

bool isSameFrame(const Scene& a, const Geometry& ga, const Scene& b, const Geometry& gb)
{
    return ga.axis() == gb.axis() && ga.lanes() == gb.lanes() && ga.scrollX() == gb.scrollX() &&
           ga.timeRight() == gb.timeRight() && a.calendar == b.calendar && a.days == b.days &&
           a.dishes == b.dishes && a.servings == b.servings && a.now == b.now &&
           a.threads == b.threads && a.card == b.card && a.lanes.size() == b.lanes.size();
}

using ShapesOfBlock = std::unordered_multimap<std::string, const BlockShape*>;

ShapesOfBlock shapesByBlock(const Scene& scene, const Geometry& geometry)
{
    ShapesOfBlock shapes;
    for (const BlockShape& shape : geometry.blocks()) {
        shapes.emplace(scene.blocks[shape.block].id, &shape);
    }
    return shapes;
}

void addShapes(Damage& damage, const ShapesOfBlock& shapes, const std::string& id)
{
    const auto [from, to] = shapes.equal_range(id);
    for (auto it = from; it != to; ++it) {
        damage.boxes.push_back(around(it->second->bounds()));
    }
}

/// True if the block looks the same and all its shapes stand where they stood.
bool isUnmoved(const ShapesOfBlock& before, const ShapesOfBlock& after, const std::string& id)
{
    const auto [fromA, toA] = before.equal_range(id);
    const auto [fromB, toB] = after.equal_range(id);
    if (std::distance(fromA, toA) != std::distance(fromB, toB)) {
        return false;
    }
    return std::all_of(fromA, toA, [&, first = fromB, last = toB](const auto& entry) {
        return std::any_of(first, last, [&](const auto& other) {
            const BlockShape& a = *entry.second;
            const BlockShape& b = *other.second;
            return a.lane == b.lane && a.bounds() == b.bounds() && a.least == b.least &&
                   a.likely == b.likely && a.pieces == b.pieces;
        });
    });
}

/// Returns the ids of the blocks that came, went or changed.
std::vector<std::string> addBlocks(Damage& damage, const Scene& before,
                                   const ShapesOfBlock& shapesBefore, const Scene& after,
                                   const ShapesOfBlock& shapesAfter)
{
    std::vector<std::string> changed;
    std::unordered_map<std::string, const SceneBlock*> known;
    for (const SceneBlock& block : before.blocks) {
        known.emplace(block.id, &block);
    }
    for (const SceneBlock& block : after.blocks) {
        const auto found = known.find(block.id);
        const bool isSame = found != known.end() && *found->second == block &&
                            isUnmoved(shapesBefore, shapesAfter, block.id);
        if (!isSame) {
            addShapes(damage, shapesBefore, block.id);
            addShapes(damage, shapesAfter, block.id);
            changed.push_back(block.id);
        }
        if (found != known.end()) {
            known.erase(found);
        }
    }
    for (const auto& [id, block] : known) {
        addShapes(damage, shapesBefore, id);
        changed.push_back(id);
    }
    return changed;
}

void addLane(Damage& damage, const Geometry& geometry, std::size_t lane)
{
    if (const LaneBox* box = boxOfLane(geometry.lanes(), lane)) {
        damage.boxes.push_back(
            {0, box->strip.top - aroundY, geometry.timeRight(), box->strip.bottom() + aroundY});
    }
}

void addLaneNamed(Damage& damage, const Scene& scene, const Geometry& geometry,
                  const std::string& id)
{
    if (const auto lane = findLane(scene, id)) {
        addLane(damage, geometry, *lane);
    }
}

/// A clash that came, went or changed: its blocks, or the lanes of places that are on no block.
void addClashes(Damage& damage, const Scene& scene, const Geometry& geometry,
                const ShapesOfBlock& shapes, const Scene& other)
{
    for (const SceneClash& clash : scene.clashes) {
        const bool isSame =
            std::find(other.clashes.begin(), other.clashes.end(), clash) != other.clashes.end();
        if (isSame) {
            continue;
        }
        for (const ClashPlace& place : clash.places) {
            if (place.task && !place.degrees) {
                addShapes(damage, shapes, *place.task);
            } else {
                addLaneNamed(damage, scene, geometry, place.lane);
            }
        }
    }
}

/// A tag keeps off other blocks and tags, and so may move though its clash is the same.
void addTags(Damage& damage, const Scene& before, const Geometry& geometryBefore,
             const Scene& after, const Geometry& geometryAfter)
{
    const std::vector<TagPlace> old = placeTags(before, geometryBefore);
    const std::vector<TagPlace> now = placeTags(after, geometryAfter);
    const auto addUnlike = [&](const std::vector<TagPlace>& tags,
                               const std::vector<TagPlace>& others) {
        for (const TagPlace& tag : tags) {
            if (std::find(others.begin(), others.end(), tag) == others.end()) {
                damage.boxes.push_back(Box{tag.x, tag.y, tag.x, tag.y}.grown(leastTarget / 2));
            }
        }
    };
    addUnlike(old, now);
    addUnlike(now, old);
}

/// Figures on an oven's curve keep off the blocks in front of it, and the hours in a fold off
/// those of cooks.
void addWhatKeepsOff(Damage& damage, const Scene& scene, const Geometry& geometry,
                     const std::vector<std::string>& moved)
{
    for (const BlockShape& shape : geometry.blocks()) {
        if (std::find(moved.begin(), moved.end(), scene.blocks[shape.block].id) == moved.end()) {
            continue;
        }
        if (std::holds_alternative<OvenLane>(scene.lanes[shape.lane].kind)) {
            addLane(damage, geometry, shape.lane);
        }
        for (const TimeAxis::Piece& piece : geometry.axis().pieces()) {
            const Box fold{geometry.offset() + piece.x0, 0, geometry.offset() + piece.x1,
                           geometry.height()};
            if (piece.isFolded && shape.isSegment() && fold.overlaps(shape.bounds().grown(2))) {
                damage.boxes.push_back(fold);
            }
        }
    }
}

Box boxOf(const WaitShape& shape)
{
    const double right = std::max({shape.end, shape.least, shape.most.value_or(0)});
    const double landing = shape.landsAt.value_or(shape.y);
    return around({shape.start, std::min(shape.y, landing), right, std::max(shape.foot, landing)});
}

/// Waits of `scene` that are drawn unlike in `other`: with them their whole gutter, since the
/// labels in it keep off each other.
void addWaits(Damage& damage, const Scene& scene, const Geometry& geometry, const Scene& other,
              const Geometry& otherGeometry)
{
    for (const WaitShape& shape : geometry.waits()) {
        const SceneWait& wait = scene.waits[shape.wait];
        const bool isSame = std::any_of(
            otherGeometry.waits().begin(), otherGeometry.waits().end(), [&](const WaitShape& o) {
                return other.waits[o.wait] == wait && o.y == shape.y && o.lane == shape.lane &&
                       o.landsAt == shape.landsAt;
            });
        if (!isSame) {
            damage.boxes.push_back(boxOf(shape));
            damage.boxes.push_back({geometry.timeLeft(), shape.y - gutterRoom, geometry.timeRight(),
                                    shape.foot + gutterRoom});
        }
    }
}

void addSpansAndRanges(Damage& damage, const Scene& scene, const Geometry& geometry,
                       const Scene& other)
{
    for (const SceneSpan& span : scene.spans) {
        if (std::find(other.spans.begin(), other.spans.end(), span) == other.spans.end()) {
            addLaneNamed(damage, scene, geometry, span.lane);
        }
    }
    for (const AllowedRange& range : scene.allowed) {
        if (std::find(other.allowed.begin(), other.allowed.end(), range) == other.allowed.end()) {
            addLaneNamed(damage, scene, geometry, range.lane);
        }
    }
}

} // namespace

Damage damageBetween(const Scene& before, const Geometry& geometryBefore, const Scene& after,
                     const Geometry& geometryAfter)
{
    Damage damage;
    if (!isSameFrame(before, geometryBefore, after, geometryAfter)) {
        damage.isAll = true;
        return damage;
    }
    const ShapesOfBlock shapesBefore = shapesByBlock(before, geometryBefore);
    const ShapesOfBlock shapesAfter = shapesByBlock(after, geometryAfter);
    for (std::size_t i = 0; i < after.lanes.size(); ++i) {
        if (before.lanes[i] != after.lanes[i]) {
            addLane(damage, geometryAfter, i);
        }
    }
    const std::vector<std::string> moved =
        addBlocks(damage, before, shapesBefore, after, shapesAfter);
    addWhatKeepsOff(damage, before, geometryBefore, moved);
    addWhatKeepsOff(damage, after, geometryAfter, moved);
    addTags(damage, before, geometryBefore, after, geometryAfter);
    addClashes(damage, before, geometryBefore, shapesBefore, after);
    addClashes(damage, after, geometryAfter, shapesAfter, before);
    addWaits(damage, before, geometryBefore, after, geometryAfter);
    addWaits(damage, after, geometryAfter, before, geometryBefore);
    addSpansAndRanges(damage, before, geometryBefore, after);
    addSpansAndRanges(damage, after, geometryAfter, before);
    return damage;
}

} // namespace suppertide::ui
