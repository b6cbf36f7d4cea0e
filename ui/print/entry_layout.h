// Entry layout: one entry of a cook's column: a step, a caution, a fetch, the time at table.
#pragma once

#include "ui/print/sheet_block.h"

namespace suppertide::ui {

/// A long entry ends in "…" before it outgrows a page.
[[nodiscard]] SheetBlock layOutEntry(const Sheet& sheet, const SheetEntry& entry,
                                     std::size_t column);

} // namespace suppertide::ui
