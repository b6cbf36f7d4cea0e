// The tag of a clash: its number in the shape of its severity. Shared by the timeline, the list of
// clashes and whatever else names a clash.
#pragma once

#include "ui/timeline/scene.h"

namespace suppertide::ui {

class Canvas;

/// Square, triangle or open circle around (x, y), 16 px high and as wide as the number in it wants.
void paintTag(Canvas& canvas, double x, double y, int number, ClashSeverity severity);

} // namespace suppertide::ui
