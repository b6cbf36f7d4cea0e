// What ties blocks together: spans, waits, and the threads of ghosts.
#include <QPolygonF>

#include <algorithm>
#include <array>

#include "ui/timeline/paint_layers.h"

namespace suppertide::ui {

namespace {

/// A free stretch for a label on a line, so that serving lines, folds and other labels stay clear.
class LineRoom
{
public:
    LineRoom(const Layer& layer, double left, double right)
        : left_(std::max(left, layer.left())), right_(std::min(right, layer.right()))
    {
        for (const SceneServing& serving : layer.scene().servings) {
            const double x = layer.geometry().x(serving.time);
            taken_.push_back({x - 6, 0, x + 3, 0});
        }
        layer.forEachFold([&](const TimeAxis::Piece&, double x0, double x1) {
            taken_.push_back({x0, 0, x1, 0});
        });
        if (const auto now = layer.scene().now) {
            const double x = layer.geometry().x(*now);
            taken_.push_back({x - 3, 0, x + 3, 0});
        }
    }

    void take(double left, double right) { taken_.push_back({left, 0, right, 0}); }

    /// The left end of a free stretch of that width, the one nearest to the middle; none if there
    /// is none.
    [[nodiscard]] std::optional<double> find(double width) const
    {
        constexpr double step = 6;
        const double middle = (left_ + right_ - width) / 2;
        for (double off = 0; off <= (right_ - left_) / 2; off += step) {
            for (const double at : {middle - off, middle + off}) {
                if (at >= left_ && at + width <= right_ && isFree(at, at + width)) {
                    return at;
                }
            }
        }
        return std::nullopt;
    }

private:
    [[nodiscard]] bool isFree(double left, double right) const
    {
        return std::none_of(taken_.begin(), taken_.end(),
                            [&](const Box& box) { return box.left < right && left < box.right; });
    }

    double left_;
    double right_;
    std::vector<Box> taken_;
};

void paintArrow(Canvas& canvas, double x, double y, const QColor& colour)
{
    canvas.polygon(QPolygonF{{QPointF{x, y - 3}, QPointF{x + 5, y}, QPointF{x, y + 3}}}, colour);
}

/// The bracket from least to most. A least of 0 begins at the dot.
void paintBracket(const Layer& layer, const WaitShape& shape, double width)
{
    const SceneWait& wait = layer.scene().waits[shape.wait];
    Canvas& canvas = layer.canvas;
    const QColor ink = layer.neutral().ink;
    const bool hasLeast = wait.least > Minutes{0};
    if (!hasLeast && !shape.hasMost) {
        return; // nothing to hold it by
    }
    if (hasLeast) {
        canvas.vLine(shape.least, shape.y - 4, shape.foot, width, ink);
    }
    const double from = hasLeast ? shape.least : shape.start;
    if (shape.most) {
        canvas.vLine(*shape.most, shape.y - 4, shape.foot, width, ink);
        canvas.hLine(from, *shape.most, shape.foot, width, ink);
    } else {
        canvas.hLine(from, from + 12, shape.foot, width, ink);
        const double end = std::max(from + 16, std::min(shape.end, layer.right() - 16));
        canvas.hLine(end - 6, end + 9, shape.foot, width, ink);
        paintArrow(canvas, end + 9, shape.foot, ink);
    }
}

/// Far from its dot the wait's line ends; what is missing or too much is hatched as its clash.
void paintSurplus(const Layer& layer, const WaitShape& shape)
{
    const SceneWait& wait = layer.scene().waits[shape.wait];
    const SceneClash* clash = wait.clash ? findClash(layer.scene(), *wait.clash) : nullptr;
    if (clash == nullptr || !shape.surplus) {
        return;
    }
    const Fill& role = layer.canvas.roleOf(clash->severity);
    layer.canvas.fill(*shape.surplus, layer.neutral().lane);
    layer.canvas.hatch(*shape.surplus, clash->severity);
    layer.canvas.frame(*shape.surplus, {role.colour, 1.2});
    if (shape.landsAt) {
        layer.canvas.vLine(shape.surplus->right, std::min(shape.foot, *shape.landsAt),
                           std::max(shape.surplus->top, *shape.landsAt), 1.2, role.colour);
    }
}

bool isTied(const Layer& layer, const SceneWait& wait)
{
    const auto* hovered = std::get_if<BlockTarget>(&layer.in.marks.hovered);
    const auto touches = [&](const std::string& id) {
        return !id.empty() && (wait.from == id || wait.to == id);
    };
    return (hovered != nullptr && touches(hovered->id)) || touches(layer.in.marks.dragged);
}

void paintWaitLine(const Layer& layer, const WaitShape& shape)
{
    const SceneWait& wait = layer.scene().waits[shape.wait];
    Canvas& canvas = layer.canvas;
    const QColor ink = layer.neutral().ink;
    const double width = isTied(layer, wait) ? 2 : 1;
    const double end = shape.surplus && shape.most ? std::min(shape.end, *shape.most) : shape.end;
    canvas.hLine(shape.start, end, shape.y, width, ink);
    if (wait.isByProduct) {
        constexpr double half = 5;
        canvas.polygon(
            QPolygonF{{QPointF{shape.start - half, shape.y}, QPointF{shape.start, shape.y - half},
                       QPointF{shape.start + half, shape.y}, QPointF{shape.start, shape.y + half}}},
            ink);
    } else {
        canvas.dot(shape.start, shape.y, 1.8, ink);
    }
    paintBracket(layer, shape, width + 0.6);
    paintSurplus(layer, shape);
    if (shape.landsAt && !shape.surplus && width > 1) {
        // Only while it is pointed at: else uprights would cross every lane.
        canvas.vLine(shape.end, std::min(shape.y, *shape.landsAt),
                     std::max(shape.y, *shape.landsAt), 1, ink);
    }
}

/// All labels are placed, also where nothing needs painting: each keeps off those before it.
void paintWaitLabel(const Layer& layer, const WaitShape& shape, std::vector<Box>& taken)
{
    const QString label = toText(layer.scene().waits[shape.wait].label);
    if (label.isEmpty() || layer.geometry().stop() == ZoomStop::Day) {
        return;
    }
    Canvas& canvas = layer.canvas;
    const double width = canvas.widthOf(label, TypeRole::Secondary) + 4;
    const double half = 5 * layer.in.theme.textScale;
    LineRoom room{layer, shape.start + 6, (shape.surplus ? shape.surplus->left : shape.end) - 6};
    for (const Box& box : taken) {
        if (box.top < shape.y + half && shape.y - half < box.bottom) {
            room.take(box.left, box.right);
        }
    }
    auto left = room.find(width);
    if (!left) {
        // No gap in the line: right of the bracket, if nothing is there.
        const double after = std::max({shape.end, shape.least, shape.most.value_or(0)}) + 6;
        LineRoom beside{layer, after, after + width + 24};
        for (const Box& box : taken) {
            if (box.top < shape.y + half && shape.y - half < box.bottom) {
                beside.take(box.left, box.right);
            }
        }
        left = beside.find(width);
    }
    if (!left) {
        return;
    }
    const Box area{*left, shape.y - half, *left + width, shape.y + half};
    taken.push_back(area);
    if (!canvas.isDirty(area)) {
        return;
    }
    canvas.fill(area, layer.neutral().lane);
    canvas.text(area.left + 2, canvas.middleBaseline(area.top, area.bottom, TypeRole::Secondary),
                label, TypeRole::Secondary, layer.neutral().ink2);
}

struct WaitsInView
{
    std::vector<const WaitShape*> shapes;
    std::vector<Box> brackets; // no place for a label
};

WaitsInView waitsInView(const Layer& layer)
{
    WaitsInView result;
    for (const WaitShape& shape : layer.geometry().waits()) {
        const double right = std::max({shape.end, shape.least, shape.most.value_or(0)}) + 20;
        if (shape.band != layer.band || right < layer.left() || shape.start > layer.right()) {
            continue;
        }
        result.brackets.push_back({shape.least - 3, shape.y - 5, shape.least + 14, shape.foot});
        if (shape.most) {
            result.brackets.push_back({*shape.most - 3, shape.y - 5, *shape.most + 3, shape.foot});
        }
        result.shapes.push_back(&shape);
    }
    return result;
}

/// The middle of the side of `shape` from which a thread leaves.
QPointF threadEnd(const BlockShape& shape, bool above)
{
    return {shape.left, above ? shape.top : shape.bottom};
}

const BlockShape* firstShapeOf(const Layer& layer, const std::string& id)
{
    for (const BlockShape& shape : layer.geometry().blocks()) {
        if (layer.scene().blocks[shape.block].id == id && shape.band == layer.band) {
            return &shape;
        }
    }
    return nullptr;
}

} // namespace

void paintSpans(const Layer& layer)
{
    for (const SceneSpan& span : layer.scene().spans) {
        const auto lane = findLane(layer.scene(), span.lane);
        const LaneBox* box = lane ? boxOfLane(layer.geometry().lanes(), *lane) : nullptr;
        if (box == nullptr || box->band != layer.band || box->rows.empty() || box->isShared()) {
            continue;
        }
        const Strip& row = box->rows.front();
        const double x0 = layer.geometry().x(span.when.start);
        const double x1 = layer.geometry().x(span.when.end);
        if (x1 < layer.left() || x0 > layer.right() ||
            !layer.canvas.isDirty({x0, row.top, x1, row.bottom()})) {
            continue;
        }
        const double middle = (row.top + row.bottom()) / 2;
        const QColor hue = layer.dishAt(span.dish).fill.colour;
        layer.canvas.hLine(x0, x1, middle - 3, 1.4, hue);
        layer.canvas.hLine(x0, x1, middle + 3, 1.4, hue);
        const QString label = toText(span.label);
        const double width = layer.canvas.widthOf(label, TypeRole::Secondary) + 6;
        const auto left = LineRoom{layer, x0 + 8, x1 - 8}.find(width);
        if (left && !label.isEmpty() && layer.geometry().stop() != ZoomStop::Day) {
            layer.canvas.fill({*left, row.top, *left + width, row.bottom()}, layer.neutral().lane);
            layer.canvas.text(
                *left + 3, layer.canvas.middleBaseline(row.top, row.bottom(), TypeRole::Secondary),
                label, TypeRole::Secondary, layer.neutral().ink2);
        }
    }
}

void paintWaits(const Layer& layer)
{
    for (const WaitShape* shape : waitsInView(layer).shapes) {
        const double landing = shape->landsAt.value_or(shape->y);
        const double right = std::max({shape->end, shape->least, shape->most.value_or(0)}) + 20;
        if (layer.canvas.isDirty({shape->start - 6, std::min(shape->y - 8, landing), right,
                                  std::max(shape->foot + 6, landing)})) {
            paintWaitLine(layer, *shape);
        }
    }
}

void paintWaitLabels(const Layer& layer)
{
    WaitsInView waits = waitsInView(layer);
    std::vector<Box> taken = reasonPlaces(layer);
    taken.insert(taken.end(), waits.brackets.begin(), waits.brackets.end());
    for (const WaitShape* shape : waits.shapes) {
        paintWaitLabel(layer, *shape, taken);
    }
}

void paintThreads(const Layer& layer)
{
    for (const GhostThread& thread : layer.scene().threads) {
        const BlockShape* from = firstShapeOf(layer, thread.from);
        if (from == nullptr) {
            continue;
        }
        const Stroke stroke{
            layer.dishOf(layer.scene().blocks[from->block]).fill.colour, 1.4, {1.5, 3}};
        if (thread.to.empty()) {
            const SceneServing* serving = findServing(layer.scene(), thread.course);
            if (serving != nullptr) {
                const double y = (from->top + from->bottom) / 2;
                layer.canvas.polyline(QPolygonF{{QPointF{from->likely, y},
                                                 QPointF{layer.geometry().x(serving->time), y}}},
                                      stroke);
            }
            continue;
        }
        if (const BlockShape* to = firstShapeOf(layer, thread.to)) {
            const bool isBelow = from->top > to->top;
            const QPointF end = threadEnd(*to, !isBelow);
            const QPointF start = threadEnd(*from, isBelow);
            layer.canvas.polyline(QPolygonF{{start, QPointF{start.x(), end.y()}, end}}, stroke);
        }
    }
}

} // namespace suppertide::ui
