// What the user points at: hover, selection, focus, a clash pointed at in the list, the card of a
// dragged variant.
#include <QCoreApplication>

#include <algorithm>

#include "ui/timeline/paint_layers.h"
#include "ui/timeline/target_box.h"

namespace suppertide::ui {

namespace {

QString words(const char* text)
{
    return QCoreApplication::translate("Timeline", text);
}

template <typename Paint>
void forEachShapeOf(const Layer& layer, const std::string& id, Paint paint)
{
    if (id.empty()) {
        return;
    }
    for (const BlockShape& shape : layer.geometry().blocks()) {
        if (shape.band == layer.band && layer.scene().blocks[shape.block].id == id) {
            paint(shape, layer.scene().blocks[shape.block]);
        }
    }
}

/// Above the block, where no other stands in the way; else not at all (the hover card has them).
void paintSlackWords(const Layer& layer, const BlockShape& shape, const QString& label)
{
    constexpr double step = 10;
    const double height = 11 * layer.in.theme.textScale;
    const double width = layer.canvas.widthOf(label, TypeRole::Secondary);
    const double baseline = shape.top - 9;
    const double to = std::min(shape.least, layer.right()) - 6;
    for (double x = std::max(shape.left, layer.left()) + 30; x + width <= to; x += step) {
        const Box area{x - 3, baseline - height, x + width + 3, baseline + 3};
        const auto& shapes = layer.geometry().blocks();
        const bool isFree =
            std::none_of(shapes.begin(), shapes.end(), [&](const BlockShape& other) {
                return other.band == layer.band && other.bounds().grown(4).overlaps(area);
            });
        if (isFree) {
            layer.canvas.haloText(x, baseline, label, TypeRole::Secondary, layer.neutral().ink,
                                  layer.neutral().lane);
            return;
        }
    }
}

/// From the earliest to the latest that the step may stand, left and right of it.
void paintSlack(const Layer& layer, const BlockShape& shape, const SceneBlock& block)
{
    if (!block.slack || shape.isSegment()) {
        return;
    }
    const QColor ok = layer.in.theme.role().ok.colour;
    const double y = (shape.top + shape.bottom) / 2;
    const double earliest = layer.geometry().x(block.slack->start);
    const double latest = layer.geometry().x(block.slack->end + block.likely);
    const double left = shape.left - 4;
    const double right = shape.bounds().right + 4;
    if (earliest < left) {
        layer.canvas.hLine(earliest, left, y, 1.6, ok);
        layer.canvas.vLine(earliest, y - 6, y + 6, 2.2, ok);
    }
    if (latest > right) {
        layer.canvas.hLine(right, latest, y, 1.6, ok);
        layer.canvas.vLine(latest, y - 6, y + 6, 2.2, ok);
    }
    if (!block.slackWords.empty()) {
        paintSlackWords(layer, shape, words("slack: %1").arg(toText(block.slackWords)));
    }
}

void paintHandle(const Layer& layer, double x, double y)
{
    const QColor selected = layer.in.theme.role().selected.colour;
    const Box box{x - 2.5, y - 2.5, x + 2.5, y + 2.5};
    layer.canvas.fill(box.grown(1), selected);
    layer.canvas.fill(box.grown(-0.6), layer.neutral().paper);
}

} // namespace

void paintHover(const Layer& layer)
{
    const auto* hovered = std::get_if<BlockTarget>(&layer.in.marks.hovered);
    if (hovered == nullptr) {
        return;
    }
    forEachShapeOf(layer, hovered->id, [&](const BlockShape& shape, const SceneBlock& block) {
        const QColor colour = layer.dishOf(block).fill.colour;
        layer.canvas.outline(outlineOf(shape, 0), {colour, 2});
        if (shape.isSegment() || block.most <= block.least) {
            return;
        }
        // The whisker from the least to the most.
        const double y = shape.bottom + 3;
        layer.canvas.hLine(shape.least, shape.most, y, 1, layer.neutral().ink);
        for (const double x : {shape.least, shape.most}) {
            layer.canvas.vLine(x, y - 3, y + 3, 1, layer.neutral().ink);
        }
    });
}

void paintSelection(const Layer& layer)
{
    forEachShapeOf(
        layer, layer.in.marks.selected, [&](const BlockShape& shape, const SceneBlock& block) {
            layer.canvas.outline(outlineOf(shape, 2), {layer.in.theme.role().selected.colour, 2.2});
            if (!shape.isSegment()) {
                paintHandle(layer, shape.left - 2, shape.top - 2);
                paintHandle(layer, shape.least + 2, shape.top - 2);
            }
            paintSlack(layer, shape, block);
        });
}

void paintFocus(const Layer& layer)
{
    if (!layer.in.marks.hasKeyboard) {
        return;
    }
    const Stroke stroke{layer.neutral().ink, 2, {2, 2}};
    if (const auto* block = std::get_if<BlockTarget>(&layer.in.marks.focused)) {
        forEachShapeOf(layer, block->id, [&](const BlockShape& shape, const SceneBlock&) {
            if (layer.scene().lanes[shape.lane].id == block->lane) {
                layer.canvas.outline(outlineOf(shape, 6), stroke);
            }
        });
        return;
    }
    if (std::holds_alternative<FlagTarget>(layer.in.marks.focused)) {
        return; // drawn with its flag
    }
    if (const auto box =
            boxOfTarget(layer.scene(), layer.geometry(), layer.in.marks.focused, layer.band)) {
        const bool isLane = std::holds_alternative<LaneTarget>(layer.in.marks.focused);
        layer.canvas.outline(QPolygonF{toRect(box->grown(isLane ? -2 : 0))}, stroke);
    }
}

void paintPointedClash(const Layer& layer)
{
    if (!layer.in.marks.pointedClash) {
        return;
    }
    QPolygonF line;
    for (const TagPlace& tag : placeTags(layer.scene(), layer.geometry())) {
        if (tag.clash == *layer.in.marks.pointedClash && tag.x >= layer.left()) {
            line.append({tag.x, tag.y});
        }
    }
    if (line.size() > 1) {
        layer.canvas.polyline(line, {layer.neutral().ink, 1});
    }
}

void paintCard(const Layer& layer)
{
    const auto& card = layer.scene().card;
    if (!card) {
        return;
    }
    Canvas& canvas = layer.canvas;
    const double scale = layer.in.theme.textScale;
    const QString title = toText(card->title);
    const QString line = toText(card->line);
    const QString verdict = toText(card->verdict);
    const double widest = std::max({canvas.widthOf(title, TypeRole::ControlBold),
                                    canvas.widthOf(line, TypeRole::Secondary),
                                    canvas.widthOf(verdict, TypeRole::SecondaryBold)});
    const double width = std::max(122 * scale, widest + 22);
    const double height = 44 * scale;
    const double line1 = layer.geometry().x(card->servingAt) + 8;
    const double left =
        std::clamp(line1, layer.left(), std::max(layer.left(), layer.right() - width - 4));
    const double top = layer.geometry().lanesTop() + 12;
    const Box box{left, top, left + width, top + height};
    canvas.fill({box.left + 2, box.top + 3, box.right + 2, box.bottom + 3}, layer.neutral().pleatB);
    canvas.fill(box, layer.neutral().card);
    canvas.frame(box, {layer.neutral().ink, 1.2});
    const DishFill dish =
        card->look ? layer.in.theme.palette->dish(*card->look) : layer.in.theme.palette->houseJob();
    canvas.stem({box.left, box.top, box.left + 9, box.bottom}, dish);
    const double x = box.left + 15;
    canvas.text(x, box.top + 15 * scale, title, TypeRole::ControlBold, layer.neutral().ink);
    canvas.text(x, box.top + 28 * scale, line, TypeRole::Secondary, layer.neutral().ink2);
    const Roles& roles = layer.in.theme.role();
    canvas.text(x, box.top + 39 * scale, verdict, TypeRole::SecondaryBold,
                card->isGood ? roles.ok.colour : roles.impossible.colour);
}

} // namespace suppertide::ui
