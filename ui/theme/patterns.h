// Patterns: the eight marks that tell dishes apart without colour, each an 8 by 8 tile. On screen
// they are bitmap brushes; on paper and at whole device scales the same marks as rectangles.
#pragma once

#include <QBrush>
#include <QColor>
#include <QRectF>

#include <array>
#include <cstdint>

class QPainter;

namespace suppertide::ui {

enum class Pattern
{
    Plain,
    Rain,
    Swell,
    Shingle,
    Net,
    Check,
    Wave,
    Bond
};

inline constexpr std::array allPatterns{Pattern::Plain,   Pattern::Rain, Pattern::Swell,
                                        Pattern::Shingle, Pattern::Net,  Pattern::Check,
                                        Pattern::Wave,    Pattern::Bond};

using PatternRows = std::array<std::uint8_t, 8>;

/// One byte a row, highest bit left, 1 = mark.
[[nodiscard]] PatternRows rowsOf(Pattern pattern);

/// The marks in `mark`, nothing between them; NoBrush for Plain.
[[nodiscard]] QBrush patternBrush(Pattern pattern, const QColor& mark);

/// Fills `area` with `ground` and the pattern's marks on it, the tile beginning at its top left.
void fillPatterned(QPainter& painter, const QRectF& area, Pattern pattern, const QColor& ground,
                   const QColor& mark);

/// The same as rectangles, for printers and for scales at which bitmaps would blur.
void fillPatternedAsVectors(QPainter& painter, const QRectF& area, Pattern pattern,
                            const QColor& ground, const QColor& mark);

} // namespace suppertide::ui
