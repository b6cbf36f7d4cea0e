#include "ui/timeline/painter.h"

#include <algorithm>

#include "ui/timeline/paint_layers.h"
#include "ui/timeline/time_words.h"

namespace suppertide::ui {

namespace {

Box stripBox(const Strip& strip, double left, double right)
{
    return {left, strip.top, right, strip.bottom()};
}

/// Where the lowest lane of the band ends.
double lastFoot(const Layer& layer)
{
    double foot = 0;
    for (const LaneBox& box : layer.geometry().lanes().boxes) {
        if (box.band == layer.band) {
            foot = std::max(foot, box.strip.bottom());
        }
    }
    return foot;
}

/// All layers of one band of lanes, right of the header column.
void paintBand(const Layer& layer)
{
    const Strip strip = layer.geometry().lanes().visible(layer.band);
    const double top = strip.top - 6;
    const double bottom = std::min(strip.bottom(), lastFoot(layer));
    paintGrounds(layer);
    paintHourLines(layer);
    paintAbsences(layer);
    paintHeat(layer);
    paintCold(layer);
    paintFacets(layer, top, bottom);
    paintAllowed(layer);
    paintServingLines(layer, top, bottom);
    paintHeatLines(layer);
    paintHandsLines(layer);
    paintColdLines(layer);
    paintSpans(layer);
    paintBlocks(layer);
    paintFoldLines(layer, top, bottom);
    paintRefusals(layer);
    paintWaits(layer);
    paintThreads(layer);
    paintGhosts(layer);
    paintClashAreas(layer);
    paintHover(layer);
    paintSelection(layer);
    paintFocus(layer);
    paintWaitLabels(layer);
    paintBlockLabels(layer);
    paintPleatHours(layer);
    paintPins(layer);
    paintTags(layer);
}

} // namespace

DishFill Layer::dishAt(const std::optional<std::size_t>& dish) const
{
    const Palette& palette = *in.theme.palette;
    if (!dish || *dish >= in.scene.dishes.size()) {
        return palette.houseJob();
    }
    return palette.dish(in.scene.dishes[*dish].look);
}

DishFill Layer::dishOf(const SceneBlock& block) const
{
    return dishAt(block.dish);
}

void paintTimeline(QPainter& painter, const PaintInput& input, TextCache& texts,
                   const QRectF& dirty)
{
    Canvas canvas{painter, input.theme, texts, dirty};
    const Geometry& geometry = input.geometry;
    painter.fillRect(dirty, canvas.neutral().paper);
    for (const LaneBand band : {LaneBand::Scrolling, LaneBand::Foot}) {
        const Strip strip = geometry.lanes().visible(band);
        // The ruler's foot room belongs to the lanes above which it stands.
        const double above = band == LaneBand::Scrolling ? 6 : 0;
        const Box area{0, strip.top - above, geometry.timeRight(), strip.bottom()};
        if (strip.height <= 0 || !canvas.isDirty(area)) {
            continue;
        }
        const Layer layer{canvas, input, band};
        {
            const SavedState saved{painter};
            painter.setClipRect(toRect(Box{geometry.timeLeft(), area.top, area.right, area.bottom}),
                                Qt::IntersectClip);
            paintBand(layer);
        }
        const SavedState saved{painter};
        painter.setClipRect(toRect(area), Qt::IntersectClip);
        paintHeader(layer);
    }
    const Layer rail{canvas, input, LaneBand::Scrolling};
    if (input.scene.lanes.empty()) {
        paintMissingLanes(rail);
    }
    if (canvas.isDirty(stripBox({0, geometry.lanesTop()}, 0, geometry.timeRight()))) {
        paintRail(rail);
    }
    paintPointedClash(rail);
    paintNowLine(rail, geometry.lanes().ruler.bottom(), geometry.lanesBottom());
    paintCard(rail);
}

std::vector<Flag> flagsOf(const Scene& scene, const Geometry& geometry, const Theme& theme,
                          TextCache& texts)
{
    std::vector<FlagNeed> needs;
    for (const SceneServing& serving : scene.servings) {
        const QString time = toText(clockText(scene.calendar, serving.time));
        needs.push_back({geometry.x(serving.time),
                         texts.laid(theme, TypeRole::SecondaryBold, toText(serving.name)).width,
                         texts.laid(theme, TypeRole::Secondary, time).width});
    }
    return layoutFlags(needs, geometry.timeLeft());
}

double longestLaneName(const Scene& scene, const Theme& theme, TextCache& texts)
{
    double longest = 0;
    for (const SceneLane& lane : scene.lanes) {
        const bool isBurner = std::holds_alternative<BurnerLane>(lane.kind);
        // A burner's hob plan and size stand right of the hob's name.
        const double beside =
            isBurner ? 20 + texts.laid(theme, TypeRole::Secondary, QStringLiteral("88 cm")).width
                     : 0;
        longest = std::max(longest,
                           texts.laid(theme, TypeRole::LaneName, toText(lane.name)).width + beside);
    }
    return longest;
}

} // namespace suppertide::ui
