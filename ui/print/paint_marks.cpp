#include "ui/print/paint_marks.h"

#include <QPainter>
#include <QPainterPath>

#include "ui/print/paper_text.h"

namespace suppertide::ui {

namespace {

constexpr double patternTile = 8;
constexpr double patternOutline = 0.6;
constexpr int tileMarks = 8;

QColor colourOf(Ink ink)
{
    switch (ink) {
    case Ink::Black:
        return Qt::black;
    case Ink::White:
        return Qt::white;
    case Ink::Grey:
        return {0xDA, 0xDA, 0xDA};
    }
    return Qt::black;
}

/// The pattern's marks within the area as one path: filled at once, marks that touch show no seam.
QPainterPath patternPath(const PatternRows& rows, const QRectF& area)
{
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    const double mark = patternTile / tileMarks;
    for (double top = area.top(); top < area.bottom(); top += patternTile) {
        for (int y = 0; y < tileMarks; ++y) {
            for (int x = 0; x < tileMarks; ++x) {
                if (((rows.at(static_cast<std::size_t>(y)) >> (tileMarks - 1 - x)) & 1U) == 0) {
                    continue;
                }
                // Bars are no wider than a tile: one column of tiles is all there is.
                const QRectF whole{area.left() + x * mark, top + y * mark, mark, mark};
                const QRectF inside = whole.intersected(area);
                if (!inside.isEmpty()) {
                    path.addRect(inside);
                }
            }
        }
    }
    return path;
}

void draw(QPainter& painter, const FillMark& mark)
{
    painter.fillRect(mark.area, colourOf(mark.ink));
}

void draw(QPainter& painter, const FrameMark& mark)
{
    const double half = mark.width / 2;
    painter.setPen(QPen{Qt::black, mark.width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin});
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(mark.area.adjusted(half, half, -half, -half));
}

void draw(QPainter& painter, const PatternMark& mark)
{
    if (mark.pattern == Pattern::Plain) {
        painter.fillRect(mark.area, Qt::black);
        return;
    }
    painter.fillRect(mark.area, Qt::white);
    painter.fillPath(patternPath(rowsOf(mark.pattern), mark.area), Qt::black);
    draw(painter, FrameMark{mark.area, patternOutline});
}

void draw(QPainter& painter, const LineMark& mark)
{
    QPen pen{Qt::black, mark.width, Qt::SolidLine, Qt::FlatCap};
    if (mark.isDotted) {
        pen.setDashPattern({1, 4});
    }
    painter.setPen(pen);
    painter.drawLine(mark.from, mark.to);
}

void draw(QPainter& painter, const ShapeMark& mark)
{
    painter.setPen(Qt::NoPen);
    painter.setBrush(colourOf(mark.ink));
    painter.drawPolygon(mark.points);
}

void draw(QPainter& painter, const CurveMark& mark)
{
    painter.setPen(QPen{Qt::black, mark.width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin});
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(mark.points);
}

void draw(QPainter& painter, const TextMark& mark)
{
    painter.save();
    painter.translate(mark.at);
    if (mark.isUpright) {
        painter.rotate(-90);
    }
    painter.scale(1 / fontMagnification, 1 / fontMagnification);
    painter.setFont(magnifiedFont(mark.font));
    painter.setPen(colourOf(mark.ink));
    painter.drawText(QPointF{0, 0}, mark.text);
    painter.restore();
}

} // namespace

void paintMarks(QPainter& painter, const PaperMarks& marks)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    for (const PaperMark& mark : marks) {
        std::visit([&painter](const auto& it) { draw(painter, it); }, mark);
    }
    painter.restore();
}

} // namespace suppertide::ui
