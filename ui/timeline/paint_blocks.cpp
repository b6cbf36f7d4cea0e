// Blocks: their forms by attention, their stems, labels, pins, and ghosts.
#include <QPainterPath>

#include <algorithm>
#include <array>

#include "ui/timeline/paint_layers.h"
#include "ui/timeline/time_words.h"

namespace suppertide::ui {

namespace {

constexpr double stemWidth = 9;
constexpr double labelGap = 4;        // between stem and label
constexpr double leastLetterRoom = 8; // for the letter alone
constexpr double leastLabelled = 24;  // a narrower block is filled by its stem's pattern
constexpr double lowRow = 16.5;       // rows up to this height have a lower foot band

enum class BlockForm
{
    Undivided,
    HandsOn,
    KeepAnEye,
    Unattended
};

BlockForm formOf(Attention attention)
{
    if (attention.percent() >= 100) {
        return BlockForm::Undivided;
    }
    if (attention.percent() >= 60) {
        return BlockForm::HandsOn;
    }
    return attention.percent() >= 1 ? BlockForm::KeepAnEye : BlockForm::Unattended;
}

bool isSolid(BlockForm form)
{
    return form == BlockForm::Undivided || form == BlockForm::HandsOn;
}

Box stemOf(const BlockShape& shape)
{
    return {shape.left, shape.top, std::min(shape.left + stemWidth, shape.likely), shape.bottom};
}

void paintFootBand(const Layer& layer, const BlockShape& shape, const QPolygonF& outline,
                   const QColor& colour)
{
    const double height = shape.bottom - shape.top <= lowRow ? 4 : 6;
    QPainterPath clip;
    clip.addPolygon(outline);
    const SavedState saved{layer.canvas.painter()};
    layer.canvas.painter().setClipPath(clip, Qt::IntersectClip);
    layer.canvas.fill({shape.left, shape.bottom - height, shape.bounds().right, shape.bottom},
                      colour);
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

QString letterOf(const Layer& layer, const SceneBlock& block)
{
    if (!block.dish || *block.dish >= layer.scene().dishes.size()) {
        return {};
    }
    return dishLetter(layer.scene().dishes[*block.dish].look);
}

struct Label
{
    QString words;
    TypeRole role = TypeRole::Label;
};

QString verbAndObject(const SceneBlock& block)
{
    const QString verb = toText(block.verb);
    return block.object.empty() ? verb : verb + QLatin1Char(' ') + toText(block.object);
}

/// The longest wording that fits into `room`; none if not even the letter does.
std::optional<Label> fittingLabel(const Layer& layer, const SceneBlock& block, double room)
{
    const QString letter = letterOf(layer, block);
    const bool isBrief = layer.geometry().stop() == ZoomStop::Day;
    if (!isBrief) {
        const QString both = verbAndObject(block);
        const std::array candidates{both + QLatin1Char(' ') + toText(lengthText(block.likely)),
                                    both, toText(block.verb)};
        for (const QString& words : candidates) {
            if (layer.canvas.widthOf(words, TypeRole::Label) <= room) {
                return Label{words, TypeRole::Label};
            }
        }
    }
    if (!letter.isEmpty() && room >= leastLetterRoom &&
        layer.canvas.widthOf(letter, TypeRole::LabelBold) <= room + 2) {
        return Label{letter, TypeRole::LabelBold};
    }
    return std::nullopt;
}

/// The stretch in which a label may stand: right of the stem, in view, clear of the now line.
std::pair<double, double> labelRoom(const Layer& layer, double left, double right)
{
    double from = left + stemWidth + labelGap;
    // A block that begins left of the view keeps its label in view.
    if (left < layer.left()) {
        from = std::max(from, layer.left() + labelGap);
    }
    if (const auto now = layer.scene().now) {
        const double x = layer.geometry().x(*now);
        if (x > from - 4 && x < right && x - from < right - x) {
            from = x + 5;
        } else if (x > from && x < right) {
            right = x - 3;
        }
    }
    return {from, right};
}

/// A tick, drawn instead of the letter on steps that are done.
void paintTick(const Layer& layer, double x, double middle, const QColor& colour)
{
    layer.canvas.polyline(
        QPolygonF{{QPointF{x, middle}, QPointF{x + 3, middle + 3.5}, QPointF{x + 8, middle - 4}}},
        {colour, 1.8});
}

struct LabelColours
{
    QColor text;
    QColor ground;
};

LabelColours labelColours(const Layer& layer, const SceneBlock& block)
{
    const DishFill dish = layer.dishOf(block);
    if (block.ghost || !isSolid(formOf(block.attention))) {
        return {layer.neutral().ink, layer.neutral().paper};
    }
    return {dish.fill.textOn, dish.fill.colour};
}

bool isClashing(const Layer& layer, const SceneBlock& block)
{
    return std::any_of(layer.scene().clashes.begin(), layer.scene().clashes.end(),
                       [&](const SceneClash& clash) {
                           return std::any_of(clash.places.begin(), clash.places.end(),
                                              [&](const ClashPlace& place) {
                                                  return place.task && *place.task == block.id;
                                              });
                       });
}

void setText(const Layer& layer, const SceneBlock& block, double x, double baseline,
             const Label& label)
{
    const LabelColours colours = labelColours(layer, block);
    if (isClashing(layer, block)) {
        layer.canvas.haloText(x, baseline, label.words, label.role, colours.text, colours.ground);
    } else {
        layer.canvas.text(x, baseline, label.words, label.role, colours.text);
    }
}

void paintRowLabel(const Layer& layer, const BlockShape& shape)
{
    const SceneBlock& block = layer.scene().blocks[shape.block];
    if (shape.likely - shape.left < leastLabelled) {
        return;
    }
    auto [from, to] = labelRoom(layer, shape.left, shape.least - 1);
    const bool hasFootBand = formOf(block.attention) == BlockForm::KeepAnEye;
    const double foot = hasFootBand ? (shape.bottom - shape.top <= lowRow ? 3 : 6) : 0;
    const double top = shape.top + (formOf(block.attention) == BlockForm::Undivided ? 2 : 0);
    const double baseline = layer.canvas.middleBaseline(top, shape.bottom - foot, TypeRole::Label);
    if (block.progress.isDone && to - from >= leastLetterRoom) {
        paintTick(layer, from, (shape.top + shape.bottom - foot) / 2,
                  labelColours(layer, block).text);
        from += 12;
    }
    if (const auto label = fittingLabel(layer, block, to - from)) {
        setText(layer, block, from, baseline, *label);
    }
}

/// In a cook's lane there is room for two lines, and in the finest zoom for the time as well.
void paintSegmentLabel(const Layer& layer, const BlockShape& shape)
{
    const SceneBlock& block = layer.scene().blocks[shape.block];
    const Box& piece =
        *std::max_element(shape.pieces.begin(), shape.pieces.end(),
                          [](const Box& a, const Box& b) { return a.width() < b.width(); });
    const double line = 13 * layer.in.theme.textScale;
    if (piece.height() < line || layer.geometry().stop() == ZoomStop::Day) {
        return;
    }
    const auto [from, to] = labelRoom(layer, piece.left, piece.right - 1);
    const double room = to - from;
    double baseline = piece.top + line + 1;
    if (block.progress.isDone && room >= leastLetterRoom) {
        paintTick(layer, from, baseline - 4, labelColours(layer, block).text);
        return;
    }
    const auto fits = [&](const QString& words) {
        return layer.canvas.widthOf(words, TypeRole::Label) <= room;
    };
    std::vector<QString> lines;
    if (fits(verbAndObject(block))) {
        lines.push_back(verbAndObject(block));
    } else if (fits(toText(block.verb))) {
        lines.push_back(toText(block.verb));
        if (!block.object.empty() && fits(toText(block.object))) {
            lines.push_back(toText(block.object));
        }
    }
    if (lines.empty()) {
        const QString letter = letterOf(layer, block);
        if (!letter.isEmpty() && room >= leastLetterRoom) {
            setText(layer, block, from, baseline, {letter, TypeRole::LabelBold});
        }
        return;
    }
    if (layer.geometry().stop() == ZoomStop::QuarterHours) {
        const QString times = toText(clockText(layer.scene().calendar, block.start)) +
                              QChar{0x2013} +
                              toText(clockText(layer.scene().calendar, block.when().end));
        if (fits(times)) {
            lines.push_back(times);
        }
    }
    for (const QString& words : lines) {
        if (baseline > piece.bottom - 2) {
            break;
        }
        setText(layer, block, from, baseline, {words, TypeRole::Label});
        baseline += line;
    }
}

void paintLabel(const Layer& layer, const BlockShape& shape)
{
    if (shape.isSegment()) {
        paintSegmentLabel(layer, shape);
    } else {
        paintRowLabel(layer, shape);
    }
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
        layer.canvas.haloText(
            shape.left - 4,
            layer.canvas.middleBaseline(shape.top, shape.bottom, TypeRole::SecondaryBold),
            toText(countdownText(*block.ghost->countdown)), TypeRole::SecondaryBold,
            layer.neutral().ink, layer.neutral().lane, TextSide::LeftOf);
    }
}

template <typename Paint>
void forEachShape(const Layer& layer, bool ghosts, Paint paint)
{
    for (const BlockShape& shape : layer.geometry().blocks()) {
        if (shape.band != layer.band ||
            layer.scene().blocks[shape.block].ghost.has_value() != ghosts) {
            continue;
        }
        const Box bounds = shape.bounds();
        // Countdowns of ghosts stand left of them.
        const Box touched =
            ghosts ? Box{bounds.left - 60, bounds.top, bounds.right, bounds.bottom} : bounds;
        if (bounds.right >= layer.left() && bounds.left <= layer.right() &&
            layer.canvas.isDirty(touched.grown(4))) {
            paint(shape);
        }
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
    forEachShape(layer, false, [&](const BlockShape& shape) {
        if (shape.isSegment()) {
            paintSegment(layer, shape);
        } else {
            paintRowBlock(layer, shape);
        }
    });
}

void paintBlockLabels(const Layer& layer)
{
    for (const bool ghosts : {false, true}) {
        forEachShape(layer, ghosts, [&](const BlockShape& shape) { paintLabel(layer, shape); });
    }
}

void paintGhosts(const Layer& layer)
{
    forEachShape(layer, true, [&](const BlockShape& shape) { paintGhost(layer, shape); });
}

void paintPins(const Layer& layer)
{
    forEachShape(layer, false, [&](const BlockShape& shape) {
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
