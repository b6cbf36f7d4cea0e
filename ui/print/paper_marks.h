// Paper marks: what a page consists of, as values in points from its top left corner. Pages are
// laid out into marks once; paint_marks.h draws them on whatever there is: a PDF, a printer, a
// preview. Only black, white and one grey, nothing translucent: printers at home are like that.
#pragma once

#include <QPointF>
#include <QPolygonF>
#include <QRectF>
#include <QString>

#include <variant>
#include <vector>

#include "ui/theme/patterns.h"

namespace suppertide::ui {

enum class Ink
{
    Black,
    White,
    Grey
};

/// A kind of type on paper; sizes are in points.
struct PaperFont
{
    double size = 11.5;
    bool isBold = false;
    bool isSerif = false;

    friend bool operator==(const PaperFont&, const PaperFont&) = default;
};

struct FillMark
{
    QRectF area;
    Ink ink = Ink::Black;
};

/// A rectangle in a dish's pattern with a thin outline.
struct PatternMark
{
    QRectF area;
    Pattern pattern = Pattern::Plain;
};

struct LineMark
{
    QPointF from;
    QPointF to;
    double width = 0.8;
    double dotGap = 0; // between dots, in widths of the line; 0: solid
};

/// An outline; its line lies within the area.
struct FrameMark
{
    QRectF area;
    double width = 0.8;
};

struct ShapeMark
{
    QPolygonF points; // closed by itself
    Ink ink = Ink::Black;
};

struct CurveMark
{
    QPolygonF points; // open
    double width = 1.8;
};

/// One line of text. It begins at the left end of its base line, and if it is upright runs from
/// there towards the head of the page.
struct TextMark
{
    QPointF at;
    QString text;
    PaperFont font;
    Ink ink = Ink::Black;
    bool isUpright = false;
};

using PaperMark =
    std::variant<FillMark, PatternMark, LineMark, FrameMark, ShapeMark, CurveMark, TextMark>;
using PaperMarks = std::vector<PaperMark>;

/// The same mark further down.
[[nodiscard]] PaperMark movedDown(PaperMark mark, double by);

/// What the mark covers, lines with their width; of a text the box of its type size.
[[nodiscard]] QRectF boundsOf(const PaperMark& mark);

} // namespace suppertide::ui
