// Pages of who gets what: a table for the cook, then cards to be cut out, one a place. Painted in
// points, onto paper or into a PDF file alike.
#pragma once

#include <QPainter>

#include <filesystem>
#include <functional>

#include "core/base/result.h"
#include "core/sheet/place_sheet.h"
#include "ui/print/page_style.h"

namespace suppertide::ui {

/// Paints all pages; `nextPage` is called between two.
void paintPlacePages(QPainter& painter, const PlaceSheet& sheet, PaperSize size,
                     const std::function<void()>& nextPage);

/// Writes the whole file or nothing. Io if the place cannot be written.
[[nodiscard]] Result<void> writePlacesPdf(const PlaceSheet& sheet,
                                          const std::filesystem::path& file, PaperSize size);

} // namespace suppertide::ui
