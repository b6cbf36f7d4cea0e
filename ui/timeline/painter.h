// Painter: draws one scene as laid out by one geometry. A function of its arguments; screen and
// paper call the same one. The order of layers is the design's: paper, lane grounds, hour lines,
// heat and cold, pleats, allowed range, serving lines, level lines, spans, blocks, fold lines,
// dimming, waits, ghosts, hatch and outlines, selection and focus, labels, tags, now, card.
#pragma once

#include <QPainter>
#include <QRectF>

#include <vector>

#include "ui/theme/theme.h"
#include "ui/timeline/flag_layout.h"
#include "ui/timeline/geometry.h"
#include "ui/timeline/marks.h"
#include "ui/timeline/text_cache.h"

namespace suppertide::ui {

struct PaintInput
{
    const Scene& scene;
    const Geometry& geometry;
    const Theme& theme;
    const Marks& marks;
    const std::vector<Flag>& flags; // flagsOf, in the order of Scene::servings
};

/// Draws whatever of the timeline touches `dirty`. Antialiasing is switched on and off as needed.
void paintTimeline(QPainter& painter, const PaintInput& input, TextCache& texts,
                   const QRectF& dirty);

/// The flags' places, which need the widths of their texts.
[[nodiscard]] std::vector<Flag> flagsOf(const Scene& scene, const Geometry& geometry,
                                        const Theme& theme, TextCache& texts);

/// How wide the header column's longest name is, for Viewport::longestName.
[[nodiscard]] double longestLaneName(const Scene& scene, const Theme& theme, TextCache& texts);

} // namespace suppertide::ui
