// Paint marks: draws paper marks on any QPainter whose unit is the point. It lays nothing out.
#pragma once

#include "ui/print/paper_marks.h"

class QPainter;

namespace suppertide::ui {

/// Draws in the given order; leaves the painter as it was.
void paintMarks(QPainter& painter, const PaperMarks& marks);

} // namespace suppertide::ui
