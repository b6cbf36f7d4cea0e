#include "ui/timeline/canvas.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <QPen>

#include <algorithm>
#include <cmath>

namespace suppertide::ui {

Canvas::Canvas(QPainter& painter, const Theme& theme, TextCache& texts, const QRectF& dirty)
    : painter_(painter), theme_(theme), texts_(texts), dirty_(dirty),
      scale_(painter.device() != nullptr ? painter.device()->devicePixelRatio() : 1.0)
{}

bool Canvas::isDirty(const Box& box) const
{
    return box.left <= dirty_.right() && dirty_.left() <= box.right && box.top <= dirty_.bottom() &&
           dirty_.top() <= box.bottom;
}

double Canvas::snapped(double at) const
{
    return std::round(at * scale_) / scale_;
}

void Canvas::fill(const Box& box, const QColor& colour)
{
    const double left = snapped(box.left);
    const double top = snapped(box.top);
    painter_.fillRect(QRectF{left, top, snapped(box.right) - left, snapped(box.bottom) - top},
                      colour);
}

void Canvas::vLine(double x, double top, double bottom, double width, const QColor& colour)
{
    const double device = std::max(1.0, std::round(width * scale_));
    const double left = std::round(x * scale_ - device / 2) / scale_;
    painter_.fillRect(QRectF{left, snapped(top), device / scale_, snapped(bottom) - snapped(top)},
                      colour);
}

void Canvas::hLine(double left, double right, double y, double width, const QColor& colour)
{
    const double device = std::max(1.0, std::round(width * scale_));
    const double top = std::round(y * scale_ - device / 2) / scale_;
    painter_.fillRect(QRectF{snapped(left), top, snapped(right) - snapped(left), device / scale_},
                      colour);
}

void Canvas::dottedVLine(double x, double top, double bottom, double on, double off,
                         const QColor& colour)
{
    const double from = std::max(top, dirty_.top() - on);
    const double first = top + std::floor((from - top) / (on + off)) * (on + off);
    for (double y = first; y < std::min(bottom, dirty_.bottom()); y += on + off) {
        vLine(x, y, std::min(y + on, bottom), 1, colour);
    }
}

QPen Canvas::pen(const Stroke& stroke) const
{
    const double width = std::max(stroke.width, 1.0 / scale_);
    QPen result{stroke.colour, width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin};
    if (!stroke.dash.empty()) {
        QList<qreal> pattern;
        for (const double length : stroke.dash) {
            pattern.append(length / width); // Qt counts dashes in widths of the pen
        }
        result.setDashPattern(pattern);
    }
    return result;
}

void Canvas::frame(const Box& box, const Stroke& stroke)
{
    if (!stroke.dash.empty()) {
        outline(QPolygonF{toRect(box)}, stroke);
        return;
    }
    const double half = stroke.width / 2;
    hLine(box.left - half, box.right + half, box.top, stroke.width, stroke.colour);
    hLine(box.left - half, box.right + half, box.bottom, stroke.width, stroke.colour);
    vLine(box.left, box.top, box.bottom, stroke.width, stroke.colour);
    vLine(box.right, box.top, box.bottom, stroke.width, stroke.colour);
}

void Canvas::polygon(const QPolygonF& polygon, const QColor& ground)
{
    painter_.setRenderHint(QPainter::Antialiasing, true);
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(ground);
    painter_.drawPolygon(polygon);
    painter_.setRenderHint(QPainter::Antialiasing, false);
}

void Canvas::outline(const QPolygonF& polygon, const Stroke& stroke)
{
    painter_.setRenderHint(QPainter::Antialiasing, true);
    painter_.setPen(pen(stroke));
    painter_.setBrush(Qt::NoBrush);
    painter_.drawPolygon(polygon);
    painter_.setRenderHint(QPainter::Antialiasing, false);
}

void Canvas::polyline(const QPolygonF& points, const Stroke& stroke)
{
    painter_.setRenderHint(QPainter::Antialiasing, true);
    painter_.setPen(pen(stroke));
    painter_.setBrush(Qt::NoBrush);
    painter_.drawPolyline(points);
    painter_.setRenderHint(QPainter::Antialiasing, false);
}

void Canvas::dot(double x, double y, double radius, const QColor& colour)
{
    painter_.setRenderHint(QPainter::Antialiasing, true);
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(colour);
    painter_.drawEllipse(QPointF{x, y}, radius, radius);
    painter_.setRenderHint(QPainter::Antialiasing, false);
}

void Canvas::ring(double x, double y, double radius, const QColor& ground, const Stroke& stroke)
{
    painter_.setRenderHint(QPainter::Antialiasing, true);
    painter_.setPen(pen(stroke));
    painter_.setBrush(ground);
    painter_.drawEllipse(QPointF{x, y}, radius, radius);
    painter_.setRenderHint(QPainter::Antialiasing, false);
}

/// The pieces of `line` inside `outline`: between every second of its crossings with the edges.
void Canvas::drawLineWithin(const QLineF& line, const QPolygonF& outline)
{
    const QPointF along = line.p2() - line.p1();
    const auto side = [&](const QPointF& point) {
        const QPointF from = point - line.p1();
        return along.x() * from.y() - along.y() * from.x();
    };
    std::vector<double> crossings; // as parts of the line's length
    for (qsizetype i = 0; i < outline.size(); ++i) {
        const QPointF a = outline[i];
        const QPointF b = outline[(i + 1) % outline.size()];
        const double sideA = side(a);
        const double sideB = side(b);
        if ((sideA < 0) == (sideB < 0)) {
            continue;
        }
        const QPointF from = a + (b - a) * (sideA / (sideA - sideB)) - line.p1();
        crossings.push_back(QPointF::dotProduct(from, along) / QPointF::dotProduct(along, along));
    }
    std::sort(crossings.begin(), crossings.end());
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
        const double begin = std::clamp(crossings[i], 0.0, 1.0);
        const double end = std::clamp(crossings[i + 1], 0.0, 1.0);
        if (begin < end) {
            painter_.drawLine(line.pointAt(begin), line.pointAt(end));
        }
    }
}

void Canvas::hatch(const Box& area, ClashSeverity severity)
{
    hatch(area, QPolygonF{toRect(area)}, severity);
}

void Canvas::hatch(const Box& area, const QPolygonF& outline, ClashSeverity severity)
{
    const QRectF whole = toRect(area);
    const QRectF clip = whole.intersected(dirty_.adjusted(-1, -1, 1, 1));
    if (clip.isEmpty()) {
        return;
    }
    const double pitch = severity == ClashSeverity::Undesirable ? 9 : 6;
    const double width = severity == ClashSeverity::Impossible ? 1.5
                         : severity == ClashSeverity::Unsafe   ? 1.2
                                                               : 1.0;
    const SavedState saved{painter_};
    painter_.setClipRect(clip, Qt::IntersectClip);
    painter_.setRenderHint(QPainter::Antialiasing, true);
    painter_.setPen(pen({roleOf(severity).colour, width}));
    // Lines x + y = k (and x − y = k) at fixed k, so that the hatch does not swim in a drag; each
    // over the area's whole height, so that a part painted anew meets the rest without a seam.
    const double step = pitch * std::sqrt(2.0);
    const double height = whole.height();
    const auto firstOf = [step](double k) { return (std::floor(k / step) - 1) * step; };
    for (double k = firstOf(clip.left() + clip.top()); k < clip.right() + clip.bottom() + step;
         k += step) {
        const double x = k - whole.top();
        drawLineWithin({x, whole.top(), x - height, whole.bottom()}, outline);
    }
    if (severity == ClashSeverity::Unsafe) {
        for (double k = firstOf(clip.left() - clip.bottom()); k < clip.right() - clip.top() + step;
             k += step) {
            const double x = k + whole.top();
            drawLineWithin({x, whole.top(), x + height, whole.bottom()}, outline);
        }
    }
}

void Canvas::stem(const Box& box, const DishFill& dish)
{
    const double left = snapped(box.left);
    const double top = snapped(box.top);
    fillPatterned(painter_, {left, top, snapped(box.right) - left, snapped(box.bottom) - top},
                  dish.pattern, dish.fill.colour, neutral().paper);
}

double Canvas::leftOf(double x, double width, TextSide side) const
{
    switch (side) {
    case TextSide::RightOf:
        return snapped(x);
    case TextSide::LeftOf:
        return snapped(x - width);
    case TextSide::Around:
        return snapped(x - width / 2);
    }
    return x;
}

void Canvas::text(double x, double baseline, const QString& words, TypeRole role,
                  const QColor& colour, TextSide side)
{
    const LaidText& laid = texts_.laid(theme_, role, words);
    const double left = leftOf(x, laid.width, side);
    if (left > dirty_.right() || left + laid.width < dirty_.left()) {
        return;
    }
    painter_.setFont(texts_.font(theme_, role));
    painter_.setPen(colour);
    painter_.drawStaticText(QPointF{left, snapped(baseline) - laid.ascent}, laid.text);
}

void Canvas::haloText(double x, double baseline, const QString& words, TypeRole role,
                      const QColor& colour, const QColor& ground, TextSide side)
{
    const LaidText& laid = texts_.laid(theme_, role, words);
    const double left = leftOf(x, laid.width, side);
    if (left > dirty_.right() + 2 || left + laid.width < dirty_.left() - 2) {
        return;
    }
    QPainterPath path;
    path.addText(left, snapped(baseline), texts_.font(theme_, role), words);
    painter_.setRenderHint(QPainter::Antialiasing, true);
    painter_.strokePath(path, QPen{ground, 3, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin});
    painter_.setRenderHint(QPainter::Antialiasing, false);
    text(left, baseline, words, role, colour);
}

void Canvas::uprightText(double x, double y, const QString& words, TypeRole role,
                         const QColor& colour)
{
    const LaidText& laid = texts_.laid(theme_, role, words);
    const SavedState saved{painter_};
    painter_.translate(snapped(x), snapped(y));
    painter_.rotate(-90);
    painter_.setFont(texts_.font(theme_, role));
    painter_.setPen(colour);
    painter_.drawText(QPointF{-laid.width / 2, laid.capHeight / 2}, words);
}

QString Canvas::elided(const QString& words, TypeRole role, double room)
{
    if (widthOf(words, role) <= room) {
        return words;
    }
    return QFontMetricsF{texts_.font(theme_, role)}.elidedText(words, Qt::ElideRight, room);
}

double Canvas::widthOf(const QString& words, TypeRole role)
{
    return texts_.laid(theme_, role, words).width;
}

double Canvas::middleBaseline(double top, double bottom, TypeRole role)
{
    const double cap = texts_.laid(theme_, role, QString{}).capHeight;
    return (top + bottom + cap) / 2;
}

const Fill& Canvas::roleOf(ClashSeverity severity) const
{
    switch (severity) {
    case ClashSeverity::Impossible:
        return theme_.role().impossible;
    case ClashSeverity::Unsafe:
        return theme_.role().unsafe;
    case ClashSeverity::Undesirable:
        return theme_.role().undesirable;
    }
    return theme_.role().impossible;
}

} // namespace suppertide::ui
