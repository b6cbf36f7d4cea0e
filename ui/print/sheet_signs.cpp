#include "ui/print/sheet_signs.h"

namespace suppertide::ui {

namespace {

/// A note head: upright at the left, its right edge slants from the least end to the most.
QPolygonF noteOutline(const QRectF& box)
{
    const double slant = box.height() * 0.45;
    return QPolygonF{{box.topLeft(), QPointF{box.right() - slant, box.top()}, box.bottomRight(),
                      box.bottomLeft()}};
}

} // namespace

PaperMarks noteSign(NoteShape shape, const QRectF& box)
{
    PaperMarks marks{ShapeMark{noteOutline(box)}};
    switch (shape) {
    case NoteShape::Undivided:
        marks.emplace_back(FillMark{{box.left(), box.top() + 2.2, box.width() - 1.6, 1.3},
                                    Ink::White}); // the second top edge
        break;
    case NoteShape::HandsOn:
        break;
    case NoteShape::KeepAnEye: {
        QRectF hollow = box.adjusted(1.2, 1.2, -1.9, -3.4);
        marks.emplace_back(ShapeMark{noteOutline(hollow), Ink::White});
        break;
    }
    case NoteShape::Unattended:
        marks.emplace_back(ShapeMark{noteOutline(box.adjusted(1.2, 1.2, -2.2, -1.2)), Ink::White});
        break;
    }
    return marks;
}

PaperMarks cautionSign(const QPointF& topLeft, double size)
{
    const double left = topLeft.x();
    const double top = topLeft.y();
    const double middle = left + size / 2;
    const double height = size * 0.9;
    return {
        ShapeMark{QPolygonF{{QPointF{middle, top}, QPointF{left + size, top + height},
                             QPointF{left, top + height}}}},
        FillMark{{middle - size * 0.05, top + size * 0.32, size * 0.1, size * 0.28}, Ink::White},
        FillMark{{middle - size * 0.05, top + size * 0.68, size * 0.1, size * 0.1}, Ink::White}};
}

PaperMarks coldSign(const QPointF& topLeft)
{
    const QRectF box{topLeft, QSizeF{8, 10}};
    const double shelf = box.top() + 3.6;
    return {FrameMark{box, 1.1}, LineMark{{box.left(), shelf}, {box.right(), shelf}, 1.1},
            LineMark{{box.left() + 2.6, shelf + 1.6}, {box.left() + 2.6, box.bottom() - 1.8}, 1}};
}

PaperMark tickBox(const QPointF& topLeft, double size)
{
    return FrameMark{{topLeft, QSizeF{size, size}}, 1.6};
}

} // namespace suppertide::ui
