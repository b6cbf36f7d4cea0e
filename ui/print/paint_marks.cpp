#include "ui/print/paint_marks.h"

#include <QPainter>
#include <QPainterPath>

#include <cmath>

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

/// The marks of one tile within the area.
void addTile(QPainterPath& path, const PatternRows& rows, const QPointF& corner, const QRectF& area)
{
    constexpr double mark = patternTile / tileMarks;
    for (int y = 0; y < tileMarks; ++y) {
        const unsigned row = rows.at(static_cast<std::size_t>(y));
        for (int x = 0; x < tileMarks; ++x) {
            if (((row >> (tileMarks - 1 - x)) & 1U) == 0) {
                continue;
            }
            const QRectF whole{corner.x() + x * mark, corner.y() + y * mark, mark, mark};
            const QRectF inside = whole.intersected(area);
            if (!inside.isEmpty()) {
                path.addRect(inside);
            }
        }
    }
}

/// The pattern's marks within the area as one path: filled at once, marks that touch show no seam.
QPainterPath patternPath(const PatternRows& rows, const QRectF& area)
{
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    const int across = static_cast<int>(std::ceil(area.width() / patternTile));
    const int down = static_cast<int>(std::ceil(area.height() / patternTile));
    for (int row = 0; row < down; ++row) {
        for (int column = 0; column < across; ++column) {
            addTile(path, rows, area.topLeft() + QPointF{column * patternTile, row * patternTile},
                    area);
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
    if (mark.dotGap > 0) {
        pen.setDashPattern({1, mark.dotGap});
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
