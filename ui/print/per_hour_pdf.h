// The per-hour plan as a PDF file. Needs a QGuiApplication (any platform plugin will do), which the
// caller sees to.
#pragma once

#include <filesystem>

#include "core/base/result.h"
#include "core/sheet/per_hour_plan.h"
#include "ui/print/page_style.h"

namespace suppertide::ui {

/// Writes the whole file or nothing. Io if the place cannot be written.
[[nodiscard]] Result<void> writePerHourPdf(const PerHourPlan& sheet,
                                           const std::filesystem::path& file, PaperSize size);

/// The same in any style.
[[nodiscard]] Result<void> writePerHourPdf(const PerHourPlan& sheet,
                                           const std::filesystem::path& file,
                                           const PageStyle& style);

} // namespace suppertide::ui
