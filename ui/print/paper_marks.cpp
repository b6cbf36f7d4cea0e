#include "ui/print/paper_marks.h"

#include "ui/print/paper_text.h"

namespace suppertide::ui {

namespace {

template <typename... Fs>
struct Overloaded : Fs...
{
    using Fs::operator()...;
};
template <typename... Fs>
Overloaded(Fs...) -> Overloaded<Fs...>;

QRectF boundsOfLine(const QPolygonF& points, double width)
{
    const double half = width / 2;
    return points.boundingRect().adjusted(-half, -half, half, half);
}

QRectF boundsOfText(const TextMark& mark)
{
    const double width = textWidth(mark.text, mark.font);
    const double above = mark.font.size * 0.76; // ascenders and descenders of DejaVu Sans
    const double below = mark.font.size * 0.24;
    if (mark.isUpright) {
        return {mark.at.x() - above, mark.at.y() - width, above + below, width};
    }
    return {mark.at.x(), mark.at.y() - above, width, above + below};
}

} // namespace

PaperMark movedDown(PaperMark mark, double by)
{
    std::visit(Overloaded{[by](FillMark& it) { it.area.translate(0, by); },
                          [by](PatternMark& it) { it.area.translate(0, by); },
                          [by](FrameMark& it) { it.area.translate(0, by); },
                          [by](LineMark& it) {
                              it.from.ry() += by;
                              it.to.ry() += by;
                          },
                          [by](ShapeMark& it) { it.points.translate(0, by); },
                          [by](CurveMark& it) { it.points.translate(0, by); },
                          [by](TextMark& it) { it.at.ry() += by; }},
               mark);
    return mark;
}

QRectF boundsOf(const PaperMark& mark)
{
    return std::visit(
        Overloaded{[](const FillMark& it) { return it.area; },
                   [](const PatternMark& it) { return it.area; },
                   [](const FrameMark& it) { return it.area; },
                   [](const LineMark& it) {
                       return boundsOfLine(QPolygonF{{it.from, it.to}}, it.width);
                   },
                   [](const ShapeMark& it) { return it.points.boundingRect(); },
                   [](const CurveMark& it) { return boundsOfLine(it.points, it.width); },
                   [](const TextMark& it) { return boundsOfText(it); }},
        mark);
}

} // namespace suppertide::ui
