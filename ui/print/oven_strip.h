// Oven strips: each oven's temperature over time beside the rows: a grey level with its line, what
// stands in the oven as bars with their names, a black tag at every turn of the knob. Time is
// linear within a stretch and has another scale in the next, since rows grow with what is in them.
#pragma once

#include "ui/print/oven_track.h"
#include "ui/print/sheet_block.h"

namespace suppertide::ui {

/// The least height in which the stretch's knob tags do not stand on each other.
[[nodiscard]] double leastStripHeight(const Sheet& sheet, const Stretch& stretch);

/// The strips of a stretch that is drawn from `top` to `bottom`; tracks parallel to
/// SheetGeometry::strips.
[[nodiscard]] PaperMarks stripMarks(const Sheet& sheet, const OvenTracks& tracks,
                                    const Stretch& stretch, double top, double bottom);

} // namespace suppertide::ui
