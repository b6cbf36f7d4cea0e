// Blocks: their forms by attention, their stems, pins, and ghosts. Labels have their own file.
#include <algorithm>

#include "ui/timeline/block_form.h"
#include "ui/timeline/block_label.h"
#include "ui/timeline/paint_layers.h"
#include "ui/timeline/time_words.h"

namespace suppertide::ui {

namespace {

Box stemOf(const BlockShape& shape)
{
    return {shape.left, shape.top, std::min(shape.left + stemWidth, shape.likely), shape.bottom};
}

/// What of `outline` lies below `y`.
QPolygonF partBelow(const QPolygonF& outline, double y)
{
    QPolygonF part;
    for (qsizetype i = 0; i < outline.size(); ++i) {
        const QPointF a = outline[i];
        const QPointF b = outline[(i + 1) % outline.size()];
        if (a.y() >= y) {
            part.append(a);
        }
        if ((a.y() < y) != (b.y() < y)) {
            part.append(a + (b - a) * ((y - a.y()) / (b.y() - a.y())));
        }
    }
    return part;
}

void paintFootBand(const Layer& layer, const BlockShape& shape, const QPolygonF& outline,
                   const QColor& colour)
{
    const double height = footBandHeight(shape.bottom - shape.top);
    layer.canvas.polygon(partBelow(outline, layer.canvas.snapped(shape.bottom - height)), colour);
}

/// Ticks for the least and the likely end, in the finest zoom.
void paintEndTicks(const Layer& layer, const BlockShape& shape, const QColor& colour)
{
    if (layer.geometry().stop() != ZoomStop::QuarterHours || shape.most - shape.least < 6) {
        return;
    }
    layer.canvas.vLine(shape.least, shape.top - 3, shape.top, 1, colour);
    const double middle = (shape.top + shape.bottom) / 2;
    layer.canvas.vLine(shape.likely, middle - 3, middle + 3, 1, colour);
}

void paintRowBlock(const Layer& layer, const BlockShape& shape)
{
    const SceneBlock& block = layer.scene().blocks[shape.block];
    const DishFill dish = layer.dishOf(block);
    const BlockForm form = formOf(block.attention);
    const QPolygonF outline = outlineOf(shape, 0);
    Canvas& canvas = layer.canvas;
    if (shape.likely - shape.left < leastLabelled) {
        canvas.polygon(outline, dish.fill.colour);
        canvas.stem({shape.left, shape.top, shape.likely, shape.bottom}, dish);
        return;
    }
    if (isSolid(form)) {
        canvas.polygon(outline, dish.fill.colour);
        if (form == BlockForm::Undivided) {
            canvas.hLine(shape.left + stemWidth, shape.least, shape.top + 3, 1.4,
                         layer.neutral().paper);
        }
    } else {
        canvas.polygon(outline, layer.neutral().paper);
        if (form == BlockForm::KeepAnEye) {
            paintFootBand(layer, shape, outline, dish.fill.colour);
        }
        canvas.outline(outline, {dish.fill.colour, 1.5});
    }
    const Box stem = stemOf(shape);
    canvas.stem(stem, dish);
    if (isSolid(form)) {
        canvas.vLine(stem.right, shape.top, shape.bottom, 1, layer.neutral().paper);
    }
    paintEndTicks(layer, shape, isSolid(form) ? layer.neutral().ink : dish.fill.colour);
}

void paintSegment(const Layer& layer, const BlockShape& shape)
{
    const SceneBlock& block = layer.scene().blocks[shape.block];
    const DishFill dish = layer.dishOf(block);
    Canvas& canvas = layer.canvas;
    const bool isOutline = layer.geometry().stop() == ZoomStop::Day;
    for (const Box& piece : shape.pieces) {
        if (isOutline) {
            canvas.fill(piece, layer.neutral().hands);
            canvas.frame(piece, {layer.neutral().ink2, 1});
            continue;
        }
        canvas.fill(piece, dish.fill.colour);
        if (&piece == &shape.pieces.front()) {
            canvas.stem({piece.left, piece.top, std::min(piece.left + stemWidth, piece.right),
                         piece.bottom},
                        dish);
        }
        canvas.frame(piece, {layer.neutral().paper, 1});
        if (formOf(block.attention) == BlockForm::Undivided) {
            canvas.hLine(piece.left, piece.right, piece.top + 3, 1.4, layer.neutral().paper);
        }
    }
}

/// Whether words so wide left of the ghost run neither into another ghost of its lane nor into that
/// one's words: the first of a crowd keeps its countdown.
bool isCountdownClear(const Layer& layer, const BlockShape& shape, double width)
{
    const auto& shapes = layer.geometry().blocks();
    return std::none_of(shapes.begin(), shapes.end(), [&](const BlockShape& other) {
        return other.lane == shape.lane && other.left < shape.left &&
               layer.scene().blocks[other.block].ghost && shape.left - other.left < width + 8;
    });
}

void paintCountdown(const Layer& layer, const BlockShape& shape, Minutes countdown)
{
    const QString words = toText(countdownText(countdown));
    if (!isCountdownClear(layer, shape, layer.canvas.widthOf(words, TypeRole::SecondaryBold))) {
        return;
    }
    layer.canvas.haloText(
        shape.left - 4,
        layer.canvas.middleBaseline(shape.top, shape.bottom, TypeRole::SecondaryBold), words,
        TypeRole::SecondaryBold, layer.neutral().ink, layer.neutral().lane, TextSide::LeftOf);
}

void paintGhost(const Layer& layer, const BlockShape& shape)
{
    const SceneBlock& block = layer.scene().blocks[shape.block];
    const DishFill dish = layer.dishOf(block);
    const QPolygonF outline = outlineOf(shape, 0);
    QColor veil = layer.neutral().paper;
    veil.setAlphaF(0.86F);
    layer.canvas.polygon(outline, veil);
    if (!shape.isSegment() && formOf(block.attention) == BlockForm::KeepAnEye) {
        QColor pale = dish.fill.colour;
        pale.setAlphaF(0.45F);
        paintFootBand(layer, shape, outline, pale);
    }
    layer.canvas.outline(outline, {dish.fill.colour, 1.6, {4, 3}});
    layer.canvas.stem(stemOf(shape), dish);
    // Once a step: at the thing that it stands on, or else with its cook.
    if (block.ghost->countdown && (!shape.isSegment() || block.places.size() == 1)) {
        paintCountdown(layer, shape, *block.ghost->countdown);
    }
}

} // namespace

QPolygonF outlineOf(const BlockShape& shape, double by)
{
    const double top = shape.top - by;
    const double bottom = shape.bottom + by;
    if (shape.isSegment()) {
        const Box box = shape.bounds().grown(by);
        return QPolygonF{{QPointF{box.left, box.top}, QPointF{box.right, box.top},
                          QPointF{box.right, box.bottom}, QPointF{box.left, box.bottom}}};
    }
    return QPolygonF{{QPointF{shape.left - by, top}, QPointF{shape.least + by, top},
                      QPointF{shape.likely + by, (top + bottom) / 2},
                      QPointF{shape.most + by, bottom}, QPointF{shape.left - by, bottom}}};
}

void paintBlocks(const Layer& layer)
{
    layer.forEachShape(false, [&](const BlockShape& shape) {
        if (shape.isSegment()) {
            paintSegment(layer, shape);
        } else {
            paintRowBlock(layer, shape);
        }
    });
}

void paintGhosts(const Layer& layer)
{
    layer.forEachShape(true, [&](const BlockShape& shape) { paintGhost(layer, shape); });
}

void paintPins(const Layer& layer)
{
    layer.forEachShape(false, [&](const BlockShape& shape) {
        const SceneBlock& block = layer.scene().blocks[shape.block];
        if (block.isPinned && !shape.isSegment()) {
            const double x = shape.left + 3;
            layer.canvas.ring(x, shape.top - 9, 4, layer.in.theme.role().pinned.colour,
                              {layer.neutral().paper, 1.2});
            layer.canvas.vLine(x, shape.top - 5, shape.top + 2, 1.8,
                               layer.in.theme.role().pinned.colour);
        }
        if (block.progress.late && !shape.isSegment()) {
            layer.canvas.haloText(
                shape.bounds().right + 3,
                layer.canvas.middleBaseline(shape.top, shape.bottom, TypeRole::SecondaryBold),
                QStringLiteral("+%1").arg(block.progress.late->count()), TypeRole::SecondaryBold,
                layer.in.theme.role().impossible.colour, layer.neutral().lane);
        }
    });
}

} // namespace suppertide::ui
