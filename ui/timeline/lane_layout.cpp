#include "ui/timeline/lane_layout.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace suppertide::ui {

namespace {

/// Heights of one of the two sizes, at a text scale. All from the design's table of lane heights.
struct Sizes
{
    double rail, ruler, ovenTop, shelfShare, shelf, shelfBlock, smallOven, row, rowBlock, rowTop,
        cook, cookGutter, tableBand, cold, groupGap;
};

constexpr double foldedHeight = 10;
constexpr double railToLanes = 5; // between the ruler's line and the first lane
/// A label needs 1.2 times its size, and a row 1.9 times (with a larger font).
constexpr double labelSize = 10.5;

Sizes sizesFor(bool isLarge, double textScale)
{
    Sizes s = isLarge ? Sizes{48, 22, 70, 31, 29, 20, 58, 26, 16, 3, 75, 12, 12, 48, 6}
                      : Sizes{40, 20, 64, 28, 27, 18, 52, 22, 13, 1, 56, 12, 12, 40, 4};
    const double label = labelSize * textScale;
    const double block = std::ceil(1.2 * label);
    const auto grow = [&](double& whole, double& inner) {
        const double extra = std::max(0.0, std::max(block, inner) - inner);
        inner += extra;
        whole += extra;
    };
    const double shelfBefore = s.shelf;
    grow(s.shelf, s.shelfBlock);
    s.shelfShare += s.shelf - shelfBefore;
    const double rowBefore = s.row;
    grow(s.row, s.rowBlock);
    s.row = std::max(s.row, std::ceil(1.9 * label));
    s.smallOven += s.row - rowBefore;
    const double secondary = std::ceil(1.1 * 10 * textScale);
    for (double* band : {&s.tableBand, &s.cookGutter}) {
        s.cook += std::max(0.0, secondary - *band);
        *band = std::max(*band, secondary);
    }
    s.rail *= std::max(1.0, textScale);
    s.ruler *= std::max(1.0, textScale);
    return s;
}

bool isCook(const SceneLane& lane)
{
    return std::holds_alternative<CookLane>(lane.kind);
}

bool isBurner(const SceneLane& lane)
{
    return std::holds_alternative<BurnerLane>(lane.kind);
}

double heightOf(const SceneLane& lane, const Sizes& s)
{
    if (const auto* oven = std::get_if<OvenLane>(&lane.kind)) {
        // An oven with one shelf is a small one.
        return oven->shelves <= 1 ? s.smallOven : s.ovenTop + s.shelfShare * oven->shelves;
    }
    if (isCook(lane)) {
        return s.cook;
    }
    return std::holds_alternative<ColdLane>(lane.kind) ? s.cold : s.row;
}

/// Places one lane whose strip is known: rows, gutters, table band.
void layoutInside(LaneBox& box, const SceneLane& lane, const Sizes& s)
{
    const Strip& strip = box.strip;
    if (box.isFolded) {
        return;
    }
    if (const auto* oven = std::get_if<OvenLane>(&lane.kind)) {
        const double gutter = s.shelf - s.shelfBlock;
        for (int shelf = 0; shelf < std::max(1, oven->shelves); ++shelf) {
            const double foot = strip.bottom() - s.shelf * shelf;
            box.gutters.push_back({foot - gutter, gutter});
            box.rows.push_back({foot - s.shelf, s.shelfBlock});
        }
    } else if (isCook(lane)) {
        const double barTop = strip.top + s.tableBand;
        const double gutterTop = strip.bottom() - s.cookGutter;
        box.tableBand = {strip.top + 1, s.tableBand - 2};
        box.rows.push_back({barTop, gutterTop - barTop});
        box.gutters.push_back({gutterTop, s.cookGutter});
    } else if (std::holds_alternative<ColdLane>(lane.kind)) {
        box.rows.push_back(strip);
    } else {
        const double top = strip.top + s.rowTop;
        box.rows.push_back({top, s.rowBlock});
        box.gutters.push_back({top + s.rowBlock, strip.bottom() - top - s.rowBlock});
    }
}

struct Stage
{
    bool isLarge;
    bool sharesIdleBurners;
    bool foldsIdle;
};

bool isBusyLane(const LayoutRequest& request, std::size_t lane)
{
    return lane >= request.isBusy.size() || request.isBusy[lane];
}

/// Boxes one under the other from y = 0, bands not yet placed.
std::vector<LaneBox> stack(const Scene& scene, const LayoutRequest& request, const Stage& stage,
                           const Sizes& sizes)
{
    std::vector<LaneBox> boxes;
    double y = 0;
    std::optional<std::size_t> idleBox; // the row that idle burners share
    for (std::size_t i = 0; i < scene.lanes.size(); ++i) {
        const SceneLane& lane = scene.lanes[i];
        const bool isIdle = !isBusyLane(request, i) && !lane.refusal;
        const bool mayShare = stage.sharesIdleBurners && isBurner(lane) && isIdle;
        if (mayShare && idleBox) {
            boxes[*idleBox].sharing.push_back(i);
            continue;
        }
        if (!boxes.empty() && scene.lanes[boxes.back().lane].group != lane.group) {
            y += sizes.groupGap;
        }
        LaneBox box;
        box.lane = i;
        const bool mayFold = !isCook(lane) && !std::holds_alternative<ColdLane>(lane.kind);
        box.isFolded = stage.foldsIdle && isIdle && mayFold;
        box.strip = {y, box.isFolded ? foldedHeight : heightOf(lane, sizes)};
        y += box.strip.height;
        boxes.push_back(std::move(box));
        if (mayShare) {
            idleBox = boxes.size() - 1;
        }
    }
    return boxes;
}

double totalHeight(const std::vector<LaneBox>& boxes)
{
    return boxes.empty() ? 0 : boxes.back().strip.bottom();
}

/// The first box of the foot: cooks and whatever stands below them.
std::size_t footBegin(const Scene& scene, const std::vector<LaneBox>& boxes)
{
    const auto cook = std::find_if(boxes.begin(), boxes.end(), [&](const LaneBox& box) {
        return isCook(scene.lanes[box.lane]);
    });
    return static_cast<std::size_t>(cook - boxes.begin());
}

/// Moves the boxes to where they stand in the widget. If all fit there is no scrolling.
void place(LaneLayout& layout, const Scene& scene, const LayoutRequest& request, double groupGap)
{
    const double top = layout.ruler.bottom() + railToLanes;
    const double room = std::max(0.0, request.height - top);
    const double total = totalHeight(layout.boxes);
    std::size_t foot = footBegin(scene, layout.boxes);
    const double footHeight =
        foot < layout.boxes.size() ? total - layout.boxes[foot].strip.top : 0.0;
    // Cooks that would leave the other lanes hardly any room scroll with them.
    if (total <= room || footHeight > 0.6 * room) {
        foot = layout.boxes.size();
    }
    const bool isSplit = foot < layout.boxes.size();
    const double upperHeight = isSplit ? layout.boxes[foot].strip.top - groupGap : total;
    layout.scrolling = {top, isSplit ? room - footHeight - groupGap : room};
    layout.foot = {isSplit ? top + room - footHeight : top + room, isSplit ? footHeight : 0.0};
    layout.scrollRange = std::max(0.0, upperHeight - layout.scrolling.height);
    const double scroll = std::clamp(request.scrollY, 0.0, layout.scrollRange);
    for (std::size_t i = 0; i < layout.boxes.size(); ++i) {
        LaneBox& box = layout.boxes[i];
        box.band = i >= foot ? LaneBand::Foot : LaneBand::Scrolling;
        box.strip.top += i >= foot ? layout.foot.top - (total - footHeight) : top - scroll;
    }
}

double headerWidthFor(const LayoutRequest& request, bool isLarge)
{
    if (request.width < 620) {
        return 76;
    }
    const double usual = isLarge && request.width >= 1000 ? 122 : 104;
    // With a larger font the column follows its longest name, within reason.
    return std::clamp(request.longestName + 20, usual, 1.6 * usual);
}

} // namespace

LaneLayout layoutLanes(const Scene& scene, const LayoutRequest& request)
{
    constexpr Stage stages[]{
        {true, false, false}, {false, false, false}, {false, true, false}, {false, true, true}};
    LaneLayout layout;
    Sizes sizes{};
    for (const Stage& stage : stages) {
        sizes = sizesFor(stage.isLarge, request.textScale);
        layout.isLarge = stage.isLarge;
        layout.rail = {0, sizes.rail};
        layout.ruler = {sizes.rail, sizes.ruler};
        layout.boxes = stack(scene, request, stage, sizes);
        if (layout.ruler.bottom() + railToLanes + totalHeight(layout.boxes) <= request.height) {
            break;
        }
    }
    layout.headerWidth = headerWidthFor(request, layout.isLarge);
    layout.showsNotes = layout.headerWidth > 76;
    place(layout, scene, request, sizes.groupGap);
    for (LaneBox& box : layout.boxes) {
        layoutInside(box, scene.lanes[box.lane], sizes);
    }
    return layout;
}

const LaneBox* boxOfLane(const LaneLayout& layout, std::size_t lane)
{
    for (const LaneBox& box : layout.boxes) {
        if (box.lane == lane ||
            std::find(box.sharing.begin(), box.sharing.end(), lane) != box.sharing.end()) {
            return &box;
        }
    }
    return nullptr;
}

} // namespace suppertide::ui
