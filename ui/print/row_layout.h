// Row layout: an hour of the sheet as blocks: its numeral, oven strips, the cooks' columns and the
// bars where courses are served.
#pragma once

#include "ui/print/oven_track.h"
#include "ui/print/sheet_block.h"

namespace suppertide::ui {

/// The row as one block, or as several that continue it: what follows a serving is one of its own,
/// and so is each page's worth of an hour that no page holds.
[[nodiscard]] std::vector<SheetBlock> layOutRow(const Sheet& sheet, const OvenTracks& tracks,
                                                const SheetRow& row);

} // namespace suppertide::ui
