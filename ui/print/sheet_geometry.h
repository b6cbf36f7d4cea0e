// Sheet geometry: where the columns of a page stand, in points from the paper's top left corner.
#pragma once

#include <QSizeF>

#include <vector>

#include "ui/print/page_style.h"
#include "ui/print/sheet_rows.h"

namespace suppertide::ui {

struct Column
{
    double left = 0;
    double right = 0;

    [[nodiscard]] double width() const { return right - left; }
};

/// One oven's temperature over time.
struct Strip
{
    OvenIndex oven;
    Column column;
};

struct SheetGeometry
{
    QSizeF paper;
    double left = 0; // of what is printed
    double right = 0;
    double top = 0;
    double bottom = 0;
    Column hour;
    std::vector<Strip> strips;
    std::vector<Column> cooks;

    [[nodiscard]] double width() const { return right - left; }
};

[[nodiscard]] QSizeF sizeOf(PaperSize paper);

/// Columns for these ovens and that many cooks; more ovens than leave the cooks half the page make
/// the strips narrower.
[[nodiscard]] SheetGeometry sheetGeometry(const PageStyle& style,
                                          const std::vector<OvenIndex>& ovens, std::size_t cooks);

} // namespace suppertide::ui
