// Clashes: hatch, outlines and numbered tags at every place that they concern.
#include <algorithm>

#include "ui/timeline/clash_tag.h"
#include "ui/timeline/paint_layers.h"
#include "ui/timeline/tag_shape.h"

namespace suppertide::ui {

namespace {

constexpr double farthest = 20;  // px from a tag's middle that it paints, with three digits
constexpr double outlineOff = 3; // from the block, so that the outline stands on ground

Stroke outlineStroke(const Canvas& canvas, ClashSeverity severity)
{
    const QColor colour = canvas.roleOf(severity).colour;
    switch (severity) {
    case ClashSeverity::Impossible:
        return {colour, 2.4};
    case ClashSeverity::Unsafe:
        return {colour, 1.6};
    case ClashSeverity::Undesirable:
        return {colour, 1.6, {5, 3}};
    }
    return {colour, 1.6};
}

Box minutesOf(const Layer& layer, const Interval& when, double top, double bottom)
{
    return {std::max(layer.geometry().x(when.start), layer.left()), top,
            std::min(layer.geometry().x(when.end), layer.right()), bottom};
}

void paintOnBlock(const Layer& layer, const SceneClash& clash, const ClashPlace& place,
                  const BlockShape& shape)
{
    Box hatched = minutesOf(layer, place.when, shape.top, shape.bottom);
    hatched.left = std::max(hatched.left, shape.left);
    hatched.right = std::min(hatched.right, shape.bounds().right);
    if (hatched.left < hatched.right) {
        layer.canvas.hatch(hatched, outlineOf(shape, 0), clash.severity);
    }
    layer.canvas.frame(shape.bounds().grown(outlineOff),
                       outlineStroke(layer.canvas, clash.severity));
}

/// The percent of a cook that are taken beyond 100 in the minutes of a clash: hatched above the
/// line.
void paintOverHands(const Layer& layer, const SceneClash& clash, const ClashPlace& place,
                    const LaneBox& box, std::size_t lane)
{
    const double line = Geometry::handsY(box, 100);
    const Box minutes = minutesOf(layer, place.when, box.strip.top, line);
    for (const BlockShape& shape : layer.geometry().blocks()) {
        if (shape.lane != lane) {
            continue;
        }
        for (const Box& piece : shape.pieces) {
            const Box over{std::max(piece.left, minutes.left), std::max(piece.top, box.strip.top),
                           std::min(piece.right, minutes.right), std::min(piece.bottom, line)};
            if (over.left < over.right && over.top < over.bottom) {
                layer.canvas.hatch(over, clash.severity);
                layer.canvas.frame(over, outlineStroke(layer.canvas, clash.severity));
            }
        }
    }
}

void paintOverLitres(const Layer& layer, const SceneClash& clash, const ClashPlace& place,
                     const LaneBox& box, const ColdLane& cold)
{
    const double line = Geometry::coldY(box, cold, cold.capacity);
    for (std::size_t i = 0; i < cold.level.size(); ++i) {
        const PlanTime end =
            i + 1 < cold.level.size() ? cold.level[i + 1].from : layer.scene().horizon.end;
        const Interval when = Interval{cold.level[i].from, end}.common(place.when);
        if (when.empty() || cold.level[i].used <= cold.capacity) {
            continue;
        }
        const double y = Geometry::coldY(box, cold, cold.level[i].used);
        layer.canvas.hatch(minutesOf(layer, when, y, line), clash.severity);
    }
}

void paintOnLane(const Layer& layer, const SceneClash& clash, const ClashPlace& place)
{
    const auto lane = findLane(layer.scene(), place.lane);
    const LaneBox* box = lane ? boxOfLane(layer.geometry().lanes(), *lane) : nullptr;
    if (box == nullptr || box->band != layer.band || box->isFolded) {
        return;
    }
    const LaneKind& kind = layer.scene().lanes[*lane].kind;
    if (const auto* oven = std::get_if<OvenLane>(&kind); oven != nullptr && place.degrees) {
        const double top = Geometry::heatY(*box, *oven, place.degrees->high);
        const double bottom = Geometry::heatY(*box, *oven, place.degrees->low);
        layer.canvas.hatch(minutesOf(layer, place.when, top, bottom), clash.severity);
    } else if (std::holds_alternative<CookLane>(kind)) {
        paintOverHands(layer, clash, place, *box, *lane);
    } else if (const auto* cold = std::get_if<ColdLane>(&kind)) {
        paintOverLitres(layer, clash, place, *box, *cold);
    }
}

} // namespace

void paintClashAreas(const Layer& layer)
{
    for (const SceneClash& clash : layer.scene().clashes) {
        for (const ClashPlace& place : clash.places) {
            if (!place.task || place.degrees) {
                paintOnLane(layer, clash, place);
            }
            if (!place.task) {
                continue;
            }
            for (const BlockShape& shape : layer.geometry().blocks()) {
                const bool isMeant = shape.band == layer.band &&
                                     layer.scene().blocks[shape.block].id == *place.task &&
                                     layer.scene().lanes[shape.lane].id == place.lane;
                if (isMeant && layer.canvas.isDirty(shape.bounds().grown(outlineOff + 2))) {
                    paintOnBlock(layer, clash, place, shape);
                }
            }
        }
    }
}

void paintTag(Canvas& canvas, double x, double y, int number, ClashSeverity severity)
{
    const Fill& role = canvas.roleOf(severity);
    const QColor halo = canvas.neutral().paper;
    const QString figure = QString::number(number);
    const double scale = std::max(1.0, canvas.theme().textScale);
    const double half = 8 * scale;
    const double width = canvas.widthOf(figure, TypeRole::ControlBold);
    const double side = halfWidth(width, half);
    double baseline = canvas.middleBaseline(y - half, y + half, TypeRole::ControlBold);
    QColor ink = role.textOn;
    switch (severity) {
    case ClashSeverity::Impossible:
        canvas.fill(Box{x - side, y - half, x + side, y + half}.grown(1), halo);
        canvas.fill({x - side, y - half, x + side, y + half}, role.colour);
        break;
    case ClashSeverity::Unsafe: {
        // A triangle has room for its number only at its foot.
        constexpr double figureTop = 9; // over the foot
        const double foot = halfFoot(width, figureTop * scale, 2 * half + scale, half + 2 * scale);
        const QPolygonF triangle{{QPointF{x, y - half - scale}, QPointF{x + foot, y + half},
                                  QPointF{x - foot, y + half}}};
        canvas.polygon(triangle, role.colour);
        canvas.outline(triangle, {halo, 1.2});
        baseline = y + half - 1.6 * scale;
        break;
    }
    case ClashSeverity::Undesirable:
        canvas.ring(x, y, side - 1, halo, {role.colour, 2});
        ink = role.colour;
        break;
    }
    canvas.text(x, baseline, figure, TypeRole::ControlBold, ink, TextSide::Around);
}

void paintTags(const Layer& layer)
{
    for (const TagPlace& tag : placeTags(layer.scene(), layer.geometry())) {
        if (tag.band == layer.band &&
            layer.canvas.isDirty(Box{tag.x, tag.y, tag.x, tag.y}.grown(farthest))) {
            paintTag(layer.canvas, tag.x, tag.y, tag.clash, tag.severity);
        }
    }
}

} // namespace suppertide::ui
