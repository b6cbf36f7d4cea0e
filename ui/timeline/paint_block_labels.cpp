// The words on blocks, over whatever hatch lies on them, and the ticks of what is done.
#include <algorithm>

#include "ui/timeline/block_form.h"
#include "ui/timeline/block_label.h"
#include "ui/timeline/paint_layers.h"
#include "ui/timeline/time_words.h"

namespace suppertide::ui {

namespace {

/// Of words in a lane where what is dragged cannot go: as much as its veil lets through.
constexpr double dimmed = 0.4;

TypeRole typeOf(const BlockLabel& label)
{
    return label.isLetter ? TypeRole::LabelBold : TypeRole::Label;
}

LabelRequest requestFor(const Layer& layer, const SceneBlock& block, double room)
{
    std::string letter;
    if (block.dish && *block.dish < layer.scene().dishes.size()) {
        letter = dishLetter(layer.scene().dishes[*block.dish].look).toStdString();
    }
    return {std::move(letter), layer.geometry().stop(), room, [&layer](const BlockLabel& label) {
                return layer.canvas.widthOf(toText(label.words), typeOf(label));
            }};
}

std::pair<double, double> roomIn(const Layer& layer, double left, double right)
{
    const auto now = layer.scene().now;
    return labelRoom(left, right, layer.left(),
                     now ? std::optional{layer.geometry().x(*now)} : std::nullopt);
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
             const BlockLabel& label)
{
    const LabelColours colours = labelColours(layer, block);
    const QString words = toText(label.words);
    if (isClashing(layer, block)) {
        layer.canvas.haloText(x, baseline, words, typeOf(label), colours.text, colours.ground);
    } else {
        layer.canvas.text(x, baseline, words, typeOf(label), colours.text);
    }
}

void paintRowLabel(const Layer& layer, const BlockShape& shape)
{
    const SceneBlock& block = layer.scene().blocks[shape.block];
    if (shape.likely - shape.left < leastLabelled) {
        return;
    }
    auto [from, to] = roomIn(layer, shape.left, shape.least - 1);
    const BlockForm form = formOf(block.attention);
    const double height = shape.bottom - shape.top;
    const double foot = form == BlockForm::KeepAnEye ? footRoom(height) : 0;
    const double top = shape.top + (form == BlockForm::Undivided ? 2 : 0);
    const double baseline = layer.canvas.middleBaseline(top, shape.bottom - foot, TypeRole::Label);
    if (block.progress.isDone && to - from >= leastLetterRoom) {
        paintTick(layer, from, (shape.top + shape.bottom - foot) / 2,
                  labelColours(layer, block).text);
        from += 12;
    }
    if (const auto label = fittingLabel(block, requestFor(layer, block, to - from))) {
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
    const auto [from, to] = roomIn(layer, piece.left, piece.right - 1);
    double baseline = piece.top + line + 1;
    if (block.progress.isDone && to - from >= leastLetterRoom) {
        paintTick(layer, from, baseline - 4, labelColours(layer, block).text);
        return;
    }
    const std::string times = clockText(layer.scene().calendar, block.start) + "–" +
                              clockText(layer.scene().calendar, block.when().end);
    for (const BlockLabel& label :
         fittingLines(block, times, requestFor(layer, block, to - from))) {
        if (baseline > piece.bottom - 2) {
            break;
        }
        setText(layer, block, from, baseline, label);
        baseline += line;
    }
}

} // namespace

void paintBlockLabels(const Layer& layer)
{
    for (const bool ghosts : {false, true}) {
        layer.forEachShape(ghosts, [&](const BlockShape& shape) {
            const SavedState saved{layer.canvas.painter()};
            if (layer.scene().lanes[shape.lane].refusal) {
                layer.canvas.painter().setOpacity(dimmed);
            }
            if (shape.isSegment()) {
                paintSegmentLabel(layer, shape);
            } else {
                paintRowLabel(layer, shape);
            }
        });
    }
}

} // namespace suppertide::ui
