// Sheet signs: the small shapes of the per-hour plan: note heads that tell how much of a cook a
// step takes, the tick box, the caution triangle, the cold box.
#pragma once

#include "ui/print/paper_marks.h"
#include "ui/print/sheet_words.h"

namespace suppertide::ui {

inline constexpr QSizeF noteSize{12, 8};

[[nodiscard]] PaperMarks noteSign(NoteShape shape, const QRectF& box);
[[nodiscard]] PaperMarks cautionSign(const QPointF& topLeft, double size);
/// Food that comes out of the cold, or goes into it.
[[nodiscard]] PaperMarks coldSign(const QPointF& topLeft);
[[nodiscard]] PaperMark tickBox(const QPointF& topLeft, double size);

} // namespace suppertide::ui
