#include "ui/timeline/block_words.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

#include "ui/timeline/time_words.h"

namespace suppertide::ui {

namespace {

QString words(const char* text)
{
    return QCoreApplication::translate("Timeline", text);
}

QString toQ(const std::string& text)
{
    return QString::fromStdString(text);
}

QString whenAndWhere(const Scene& scene, const SceneBlock& block)
{
    QStringList lanes;
    for (const Placement& placement : block.places) {
        if (const auto lane = findLane(scene, placement.lane)) {
            lanes.append(toQ(scene.lanes[*lane].name));
        }
    }
    lanes.removeDuplicates();
    return words("%1 %2, %3 to %4 (%5), %6")
        .arg(toQ(block.verb), toQ(block.object), toQ(clockText(scene.calendar, block.start)),
             toQ(clockText(scene.calendar, block.when().end)), toQ(lengthText(block.likely)),
             lanes.join(words(" and ")))
        .simplified();
}

QStringList clashesOf(const Scene& scene, const SceneBlock& block)
{
    QStringList clashes;
    for (const SceneClash& clash : scene.clashes) {
        const bool concerns =
            std::any_of(clash.places.begin(), clash.places.end(), [&](const ClashPlace& place) {
                return place.task && *place.task == block.id;
            });
        if (concerns) {
            clashes.append(words("clash %1: %2").arg(clash.number).arg(toQ(clash.sentence)));
        }
    }
    return clashes;
}

QString describeLane(const Scene& scene, const LaneTarget& target, double x,
                     const Geometry& geometry)
{
    const auto index = findLane(scene, target.lane);
    if (!index) {
        return {};
    }
    const SceneLane& lane = scene.lanes[*index];
    if (const auto* cold = std::get_if<ColdLane>(&lane.kind); cold && !target.isHeader) {
        const PlanTime time = geometry.timeAt(x);
        QString contents;
        for (const ColdStep& step : cold->level) {
            if (step.from <= time) {
                contents = toQ(step.contents);
            }
        }
        return contents;
    }
    if (!target.isHeader) {
        return {};
    }
    const QString note = toQ(lane.refusal ? *lane.refusal : lane.note);
    return note.isEmpty() ? toQ(lane.name) : toQ(lane.name) + QStringLiteral(": ") + note;
}

} // namespace

QString sentenceOf(const Scene& scene, const SceneBlock& block)
{
    QStringList parts{block.sentence.empty() ? whenAndWhere(scene, block) : toQ(block.sentence)};
    if (block.isPinned) {
        parts.append(words("pinned"));
    }
    if (block.progress.isDone) {
        parts.append(words("done"));
    }
    if (block.progress.late) {
        parts.append(words("%1 min late").arg(block.progress.late->count()));
    }
    if (!block.slackWords.empty()) {
        parts.append(words("slack: %1").arg(toQ(block.slackWords)));
    }
    parts.append(clashesOf(scene, block));
    return parts.join(QStringLiteral("; "));
}

QString describe(const Scene& scene, const Target& target, double x, const Geometry& geometry)
{
    if (const auto* block = std::get_if<BlockTarget>(&target)) {
        const SceneBlock* found = findBlock(scene, block->id);
        return found != nullptr ? sentenceOf(scene, *found) : QString{};
    }
    if (const auto* flag = std::get_if<FlagTarget>(&target)) {
        const SceneServing* serving = findServing(scene, flag->course);
        return serving == nullptr
                   ? QString{}
                   : words("Course %1, %2: served at %3. Drag to move it.")
                         .arg(serving->course)
                         .arg(toQ(serving->name), toQ(clockText(scene.calendar, serving->time)));
    }
    if (const auto* tag = std::get_if<TagTarget>(&target)) {
        const SceneClash* clash = findClash(scene, tag->clash);
        return clash != nullptr ? toQ(clash->sentence) : QString{};
    }
    if (std::holds_alternative<PleatTarget>(target)) {
        return words("Nobody does anything here. Click to unfold these hours.");
    }
    if (const auto* lane = std::get_if<LaneTarget>(&target)) {
        return describeLane(scene, *lane, x, geometry);
    }
    return {};
}

} // namespace suppertide::ui
