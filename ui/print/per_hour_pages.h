// The per-hour plan as pages: laid out once, then painted on a PDF, a printer or a preview. Fonts
// need a QGuiApplication. The same content as text for reading aloud: per_hour_html.h.
#pragma once

#include <QSizeF>

#include <vector>

#include "core/sheet/per_hour_plan.h"
#include "ui/print/page_style.h"
#include "ui/print/paper_marks.h"

class QPainter;

namespace suppertide::ui {

struct PerHourPages
{
    QSizeF paper; // points
    std::vector<PaperMarks> pages;
};

/// At least one page. Requires that the plan it speaks of is there.
[[nodiscard]] PerHourPages layOutPages(const PerHourPlan& plan, const PageStyle& style = {});

/// Paints a page on a painter whose unit is the point and whose origin is the paper's corner (a
/// printer's: QPrinter::setFullPage). Requires page < pages.size().
void paintPage(QPainter& painter, const PerHourPages& pages, std::size_t page);

} // namespace suppertide::ui
