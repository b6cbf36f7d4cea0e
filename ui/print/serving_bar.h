// Serving bar: where a course is served, across the whole sheet.
#pragma once

#include "ui/print/sheet_block.h"

namespace suppertide::ui {

[[nodiscard]] SheetBlock layOutServing(const Sheet& sheet, const SheetServing& serving);

} // namespace suppertide::ui
