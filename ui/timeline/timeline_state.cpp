#include "ui/timeline/timeline_state.h"

#include <algorithm>
#include <utility>

#include "ui/timeline/pleats.h"

namespace suppertide::ui {

namespace {

constexpr Damage everything{true, {}};

// Wider than this (px) they are drawn as quarter hours.
constexpr double widestHours = 140;

Minutes distance(PlanTime a, PlanTime b)
{
    return a < b ? b - a : a - b;
}

} // namespace

TimelineState::TimelineState() = default;

Damage TimelineState::refresh(const Viewport& viewport)
{
    viewport_ = settled(scene_, viewport, pleats_);
    geometry_ = Geometry{scene_, viewport_, pleats_};
    return everything;
}

Damage TimelineState::setScene(Scene scene)
{
    const Scene before = std::exchange(scene_, std::move(scene));
    const Geometry geometryBefore = geometry_;
    if (!holdsPleats_) {
        pleats_ = pleatsOf(scene_);
    }
    refresh(viewport_);
    if (!hasShownAnything_ && !scene_.servings.empty() && viewport_.width > 0) {
        // The first look is at the evening, not at the shopping three days before.
        return showEvening();
    }
    return damageBetween(before, geometryBefore, scene_, geometry_);
}

Damage TimelineState::resize(double width, double height)
{
    Viewport next = viewport_;
    next.width = width;
    next.height = height;
    refresh(next);
    if (!hasShownAnything_ && !scene_.servings.empty()) {
        showEvening();
    }
    return everything;
}

Damage TimelineState::setText(double textScale, double longestName)
{
    Viewport next = viewport_;
    next.textScale = textScale;
    next.longestName = longestName;
    return refresh(next);
}

Damage TimelineState::scrollTo(double x, double y)
{
    Viewport next = viewport_;
    next.scrollX = x;
    next.scrollY = y;
    next = settled(scene_, next, pleats_);
    return next == viewport_ ? Damage{} : refresh(next);
}

Damage TimelineState::zoomTo(double pixelsPerHour, double aroundX)
{
    const double x = std::max(aroundX, geometry_.timeLeft());
    return refresh(zoomedAround(scene_, viewport_, pleats_, pixelsPerHour, x));
}

Damage TimelineState::show(const Interval& when)
{
    const Viewport next = showing(scene_, viewport_, pleats_, when);
    return next == viewport_ ? Damage{} : refresh(next);
}

Damage TimelineState::showEvening()
{
    if (scene_.servings.empty()) {
        return {};
    }
    hasShownAnything_ = true;
    // The first look is at the evening, not at the shopping three days before.
    const PlanTime last = scene_.servings.back().time;
    Viewport next = viewport_;
    next.pixelsPerHour = pixelsPerHourAt(ZoomStop::Hours);
    refresh(next);
    // Folds keep their width: all the room that is left goes to the hours between them.
    const double room = geometry_.timeRight() - geometry_.timeLeft() - geometry_.axis().width();
    double hours = 0;
    for (const TimeAxis::Piece& piece : geometry_.axis().pieces()) {
        hours += piece.isFolded ? 0 : (piece.x1 - piece.x0) / next.pixelsPerHour;
    }
    if (room > 0 && hours > 0) {
        next.pixelsPerHour = std::min(widestHours, next.pixelsPerHour + room / hours);
        refresh(next);
    }
    show({last - Minutes{30}, last + Minutes{60}});
    return everything;
}

Damage TimelineState::togglePleat(PlanTime start)
{
    Viewport next = viewport_;
    if (next.openPleats.erase(start) == 0) {
        next.openPleats.insert(start);
    }
    return refresh(next);
}

void TimelineState::holdPleats(bool isHeld)
{
    holdsPleats_ = isHeld;
    if (!isHeld) {
        pleats_ = pleatsOf(scene_);
        refresh(viewport_);
    }
}

std::vector<Box> TimelineState::markedBoxes(const Marks& marks) const
{
    std::vector<Box> boxes;
    const auto addBlock = [&](const std::string& id) {
        for (const BlockShape& shape : geometry_.blocks()) {
            if (!id.empty() && scene_.blocks[shape.block].id == id) {
                // Slack and ties reach along the whole lane.
                boxes.push_back({geometry_.timeLeft(), shape.top - 24, geometry_.timeRight(),
                                 shape.bottom + 24});
            }
        }
    };
    const auto addTarget = [&](const Target& target) {
        if (const auto* block = std::get_if<BlockTarget>(&target)) {
            addBlock(block->id);
        } else if (std::holds_alternative<FlagTarget>(target)) {
            boxes.push_back({0, 0, geometry_.timeRight(), geometry_.lanesTop()});
        } else if (!std::holds_alternative<std::monostate>(target)) {
            boxes.push_back({0, 0, geometry_.timeRight(), geometry_.height()});
        }
    };
    const auto addTies = [&](const std::string& id) {
        for (const WaitShape& shape : geometry_.waits()) {
            const SceneWait& wait = scene_.waits[shape.wait];
            if (!id.empty() && (wait.from == id || wait.to == id)) {
                const double landing = shape.landsAt.value_or(shape.y);
                boxes.push_back(Box{std::min(shape.start, shape.end), std::min(shape.y, landing),
                                    std::max({shape.end, shape.least, shape.most.value_or(0)}),
                                    std::max(shape.foot, landing)}
                                    .grown(8));
            }
        }
    };
    if (const auto* hovered = std::get_if<BlockTarget>(&marks.hovered)) {
        addTies(hovered->id);
    }
    addTies(marks.dragged);
    addTarget(marks.focused);
    if (std::holds_alternative<BlockTarget>(marks.hovered) ||
        std::holds_alternative<FlagTarget>(marks.hovered)) {
        addTarget(marks.hovered);
    }
    addBlock(marks.selected);
    addBlock(marks.dragged);
    return boxes;
}

Damage TimelineState::setMarks(const Marks& marks)
{
    if (marks == marks_) {
        return {};
    }
    Damage damage;
    damage.isAll = marks.pointedClash != marks_.pointedClash;
    Marks before = std::exchange(marks_, marks);
    // What stayed the same needs no paint.
    Marks after = marks;
    if (before.selected == after.selected) {
        before.selected.clear();
        after.selected.clear();
    }
    if (before.hovered == after.hovered) {
        before.hovered = after.hovered = {};
    }
    if (before.focused == after.focused && before.hasKeyboard == after.hasKeyboard) {
        before.focused = after.focused = {};
    }
    for (const Marks& changed : {before, after}) {
        const std::vector<Box> boxes = markedBoxes(changed);
        damage.boxes.insert(damage.boxes.end(), boxes.begin(), boxes.end());
    }
    return damage;
}

std::optional<DragPick> TimelineState::pickBlock(const std::string& id, PlanTime at) const
{
    const SceneBlock* block = findBlock(scene_, id);
    if (block == nullptr || block->ghost) {
        return std::nullopt;
    }
    return DragPick{id, block->start, block->likely, at, scene_.horizon, block->slack};
}

std::optional<DragPick> TimelineState::pickServing(int course, PlanTime at) const
{
    const SceneServing* serving = findServing(scene_, course);
    if (serving == nullptr) {
        return std::nullopt;
    }
    return DragPick{std::to_string(course), serving->time, Minutes{0}, at,
                    scene_.horizon,         std::nullopt};
}

Scene TimelineState::withBlockAt(const std::string& id, PlanTime start) const
{
    Scene scene = scene_;
    for (SceneBlock& block : scene.blocks) {
        if (block.id == id) {
            block.start = start;
        }
    }
    return scene;
}

Scene TimelineState::withServingAt(int course, PlanTime time) const
{
    Scene scene = scene_;
    for (SceneServing& serving : scene.servings) {
        if (serving.course == course) {
            serving.time = time;
        }
    }
    return scene;
}

std::optional<int> TimelineState::nearestCourse(PlanTime time) const
{
    const auto nearest =
        std::min_element(scene_.servings.begin(), scene_.servings.end(),
                         [&](const SceneServing& a, const SceneServing& b) {
                             return distance(a.time, time) < distance(b.time, time);
                         });
    return nearest == scene_.servings.end() ? std::nullopt : std::optional{nearest->course};
}

} // namespace suppertide::ui
