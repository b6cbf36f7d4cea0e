// Canvas: the strokes that the timeline is drawn with, over a QPainter: lines that are sharp and
// at least one device pixel wide at any scale, flat fills, hatches and cached texts.
#pragma once

#include <QColor>
#include <QLineF>
#include <QPainter>
#include <QPolygonF>
#include <QRectF>
#include <QString>

#include <vector>

#include "ui/theme/theme.h"
#include "ui/timeline/block_shapes.h"
#include "ui/timeline/scene.h"
#include "ui/timeline/text_cache.h"

namespace suppertide::ui {

enum class TextSide
{
    RightOf, // the text begins at x
    LeftOf,  // it ends at x
    Around   // its middle is at x
};

struct Stroke
{
    QColor colour;
    double width = 1;
    std::vector<double> dash = {}; // px on, px off
};

class Canvas
{
public:
    Canvas(QPainter& painter, const Theme& theme, TextCache& texts, const QRectF& dirty);

    [[nodiscard]] QPainter& painter() { return painter_; }
    [[nodiscard]] const Theme& theme() const { return theme_; }
    [[nodiscard]] const Neutrals& neutral() const { return theme_.neutral(); }
    [[nodiscard]] const QRectF& dirty() const { return dirty_; }
    [[nodiscard]] bool isDirty(const Box& box) const;

    /// To the nearest device pixel.
    [[nodiscard]] double snapped(double at) const;

    void fill(const Box& box, const QColor& colour);
    void vLine(double x, double top, double bottom, double width, const QColor& colour);
    void hLine(double left, double right, double y, double width, const QColor& colour);
    /// Dots and dashes are set by hand, so that they stay sharp.
    void dottedVLine(double x, double top, double bottom, double on, double off,
                     const QColor& colour);
    void frame(const Box& box, const Stroke& stroke);
    void polygon(const QPolygonF& polygon, const QColor& ground);
    void outline(const QPolygonF& polygon, const Stroke& stroke);
    void polyline(const QPolygonF& points, const Stroke& stroke);
    void dot(double x, double y, double radius, const QColor& colour);
    void ring(double x, double y, double radius, const QColor& ground, const Stroke& stroke);
    /// The hatch of a clash, within `area` only; diagonals mean clash and nothing else.
    void hatch(const Box& area, ClashSeverity severity);
    /// Within `outline` as well. No clip path does this: its slanting edges are rounded to other
    /// pixels when only a part is painted anew.
    void hatch(const Box& area, const QPolygonF& outline, ClashSeverity severity);
    void stem(const Box& box, const DishFill& dish);

    void text(double x, double baseline, const QString& words, TypeRole role, const QColor& colour,
              TextSide side = TextSide::RightOf);
    /// With 3 px of `ground` around the letters, for text over hatch or lines.
    void haloText(double x, double baseline, const QString& words, TypeRole role,
                  const QColor& colour, const QColor& ground, TextSide side = TextSide::RightOf);
    /// Upwards, its middle at (x, y).
    void uprightText(double x, double y, const QString& words, TypeRole role, const QColor& colour);
    /// Shortened by an ellipsis if it is wider than `room`.
    [[nodiscard]] QString elided(const QString& words, TypeRole role, double room);
    [[nodiscard]] double widthOf(const QString& words, TypeRole role);
    /// The baseline that sets capitals in the middle of a strip.
    [[nodiscard]] double middleBaseline(double top, double bottom, TypeRole role);

    [[nodiscard]] const Fill& roleOf(ClashSeverity severity) const;

private:
    [[nodiscard]] QPen pen(const Stroke& stroke) const;
    void drawLineWithin(const QLineF& line, const QPolygonF& outline);
    [[nodiscard]] double leftOf(double x, double width, TextSide side) const;

    QPainter& painter_;
    const Theme& theme_;
    TextCache& texts_;
    QRectF dirty_;
    double scale_; // device pixels for a device-independent one
};

/// Keeps a painter's state for a scope.
class SavedState
{
public:
    explicit SavedState(QPainter& painter) : painter_(painter) { painter_.save(); }
    ~SavedState() { painter_.restore(); }
    SavedState(const SavedState&) = delete;
    SavedState& operator=(const SavedState&) = delete;
    SavedState(SavedState&&) = delete;
    SavedState& operator=(SavedState&&) = delete;

private:
    QPainter& painter_;
};

[[nodiscard]] inline QRectF toRect(const Box& box)
{
    return {box.left, box.top, box.width(), box.height()};
}

[[nodiscard]] inline QString toText(const std::string& text)
{
    return QString::fromStdString(text);
}

} // namespace suppertide::ui
