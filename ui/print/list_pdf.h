// A list in HTML on paper, page by page with numbers, or as a PDF file. Needs a QGuiApplication.
#pragma once

#include <QPagedPaintDevice>
#include <QString>

#include <filesystem>

#include "core/base/result.h"
#include "ui/print/page_style.h"

namespace suppertide::ui {

/// Whatever paper the device has.
void paintHtml(const QString& html, QPagedPaintDevice& device);

/// Writes the whole file or nothing. Io if the place cannot be written.
[[nodiscard]] Result<void> writeHtmlPdf(const QString& html, const QString& title,
                                        const std::filesystem::path& file, PaperSize size);

} // namespace suppertide::ui
