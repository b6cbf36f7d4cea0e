#include "ui/theme/patterns.h"

#include <QBitmap>
#include <QPaintEngine>
#include <QPainter>

#include <algorithm>
#include <cmath>

#include "core/base/contracts.h"
#include "ui/theme/look_table.h"

namespace suppertide::ui {

namespace {

constexpr int tile = 8;

QBitmap bitmapOf(const PatternRows& rows)
{
    // QBitmap::fromData takes one byte a row here, its highest bit left, as the table has them.
    return QBitmap::fromData(QSize{tile, tile}, rows.data(), QImage::Format_Mono);
}

/// Calls `mark` for each run of marks in a row: column, row, length.
template <typename Mark>
void forEachRun(const PatternRows& rows, Mark mark)
{
    for (int y = 0; y < tile; ++y) {
        const unsigned row = rows.at(static_cast<std::size_t>(y));
        int x = 0;
        while (x < tile) {
            const auto isMark = [&](int column) {
                return column < tile && ((row >> (tile - 1 - column)) & 1U) != 0;
            };
            if (!isMark(x)) {
                ++x;
                continue;
            }
            const int from = x;
            while (isMark(x)) {
                ++x;
            }
            mark(from, y, x - from);
        }
    }
}

bool isVectorTarget(const QPainter& painter)
{
    const QPaintEngine* engine = painter.paintEngine();
    const bool isRaster = engine != nullptr && engine->type() == QPaintEngine::Raster;
    return !isRaster || painter.device()->devicePixelRatio() > 1.0;
}

} // namespace

PatternRows rowsOf(Pattern pattern)
{
    return lookTable().patterns.at(static_cast<std::size_t>(pattern));
}

QBrush patternBrush(Pattern pattern, const QColor& mark)
{
    if (pattern == Pattern::Plain) {
        return Qt::NoBrush;
    }
    QBrush brush{mark};
    brush.setTexture(bitmapOf(rowsOf(pattern)));
    return brush;
}

void fillPatterned(QPainter& painter, const QRectF& area, Pattern pattern, const QColor& ground,
                   const QColor& mark)
{
    if (isVectorTarget(painter)) {
        fillPatternedAsVectors(painter, area, pattern, ground, mark);
        return;
    }
    painter.fillRect(area, ground);
    if (pattern != Pattern::Plain) {
        // The tile begins at the block, so that it does not crawl while the block is dragged.
        painter.setBrushOrigin(QPointF{std::round(area.left()), std::round(area.top())});
        painter.fillRect(area, patternBrush(pattern, mark));
        painter.setBrushOrigin(QPointF{0, 0});
    }
}

void fillPatternedAsVectors(QPainter& painter, const QRectF& area, Pattern pattern,
                            const QColor& ground, const QColor& mark)
{
    painter.fillRect(area, ground);
    if (pattern == Pattern::Plain) {
        return;
    }
    const PatternRows rows = rowsOf(pattern);
    for (double top = area.top(); top < area.bottom(); top += tile) {
        for (double left = area.left(); left < area.right(); left += tile) {
            forEachRun(rows, [&](int x, int y, int length) {
                const QRectF run{left + x, top + y, static_cast<double>(length), 1.0};
                const QRectF inside = run.intersected(area);
                if (!inside.isEmpty()) {
                    painter.fillRect(inside, mark);
                }
            });
        }
    }
}

} // namespace suppertide::ui
