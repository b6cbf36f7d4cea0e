// The timeline for screen readers: a list with an item for each task, in the order of time, each
// with a sentence as its name and actions to select and to move it.
#pragma once

namespace suppertide::ui {

class TimelineView;

/// Must have been called before a reader first asks; calling it again does nothing.
void installTimelineAccessibility();

/// The scene has other blocks than before.
void notifyBlocksChanged(TimelineView& view);
/// Another block has the focus.
void notifyFocusMoved(TimelineView& view);

} // namespace suppertide::ui
