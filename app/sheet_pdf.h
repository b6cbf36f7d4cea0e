// The per-hour plan as a PDF, for verbs that open no window. Needs no display.
#pragma once

#include <filesystem>

#include "app/command_line.h"
#include "core/sheet/per_hour_plan.h"

namespace suppertide::app {

/// Io if the file cannot be written. Starts Qt's font engine without a display where nothing has
/// yet.
[[nodiscard]] Result<void> writeSheetPdf(const PerHourPlan& sheet,
                                         const std::filesystem::path& file, Paper paper);

} // namespace suppertide::app
