// Row layout: an hour of the sheet as a block: its numeral, oven strips, the cooks' columns and the
// bars where courses are served.
#pragma once

#include "ui/print/oven_strip.h"
#include "ui/print/sheet_block.h"

namespace suppertide::ui {

[[nodiscard]] SheetBlock layOutRow(const Sheet& sheet, const OvenStrips& strips,
                                   const SheetRow& row);

} // namespace suppertide::ui
