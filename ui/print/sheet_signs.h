// Sheet signs: the small shapes of the per-hour plan: note heads that tell how much of a cook a
// step takes, the tick box, the caution triangle, the cold box.
#pragma once

#include "core/quantity/quantity.h"
#include "ui/print/paper_marks.h"

namespace suppertide::ui {

inline constexpr double noteWidth = 12;
inline constexpr double noteHeight = 8;

/// How a step is drawn: like accented, full, half and open notes.
enum class NoteShape
{
    Undivided, // 100 %
    HandsOn,   // 60 … 99 %
    KeepAnEye, // 1 … 59 %
    Unattended // 0 %
};

[[nodiscard]] NoteShape noteShapeOf(Attention attention);

[[nodiscard]] PaperMarks noteSign(NoteShape shape, const QPointF& topLeft);
[[nodiscard]] PaperMarks cautionSign(const QPointF& topLeft, double size);
/// Food that comes out of the cold, or goes into it.
[[nodiscard]] PaperMarks coldSign(const QPointF& topLeft);
[[nodiscard]] PaperMark tickBox(const QPointF& topLeft, double size);

} // namespace suppertide::ui
