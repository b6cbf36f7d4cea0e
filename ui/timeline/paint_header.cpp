// The header column: lane names and notes, scales, hob plans, the lines at the lanes' feet.
#include <QCoreApplication>

#include <algorithm>
#include <cmath>

#include "ui/timeline/paint_layers.h"
#include "ui/timeline/shown_degrees.h"

namespace suppertide::ui {

namespace {

constexpr double usualMargin = 10;
constexpr double narrowMargin = 3;
constexpr double scaleRight = 8; // scale figures end this far left of the time area
constexpr double tickLength = 5;

QString words(const char* text)
{
    return QCoreApplication::translate("Timeline", text);
}

double marginOf(const Layer& layer)
{
    return layer.geometry().lanes().showsNotes ? usualMargin : narrowMargin;
}

void scaleFigure(const Layer& layer, double y, const QString& figure)
{
    layer.canvas.text(layer.left() - scaleRight, y + 3.5 * layer.in.theme.textScale, figure,
                      TypeRole::Secondary, layer.neutral().ink2, TextSide::LeftOf);
}

void scaleTick(const Layer& layer, double y)
{
    layer.canvas.hLine(layer.left() - tickLength, layer.left(), y, 1, layer.neutral().line);
}

void paintOvenScale(const Layer& layer, const LaneBox& box, const OvenLane& oven)
{
    const double lineHeight = 12 * layer.in.theme.textScale;
    double lastFigure = box.strip.bottom();
    for (int degrees = 50; degrees <= oven.top.wholeDegrees(); degrees += 50) {
        const double y = Geometry::heatY(box, oven, Celsius::degrees(degrees));
        scaleTick(layer, y);
        // The shelves' rows lie at the foot: figures begin above them.
        const bool isWanted = degrees >= 100 && (oven.shelves > 1 || degrees % 100 == 0);
        const bool hasRoom = lastFigure - y >= lineHeight && y - 4 >= box.strip.top - 2;
        if (layer.geometry().lanes().showsNotes && isWanted && hasRoom) {
            scaleFigure(layer, y,
                        QStringLiteral("%1°").arg(
                            shownDegrees(Celsius::degrees(degrees), layer.scene().isFahrenheit)));
            lastFigure = y;
        }
    }
}

void paintCookScale(const Layer& layer, const LaneBox& box)
{
    const double full = Geometry::handsY(box, 100);
    const double bed = Geometry::handsY(box, 0);
    scaleTick(layer, full);
    scaleTick(layer, bed);
    if (layer.geometry().lanes().showsNotes) {
        scaleFigure(layer, full, words("100 %"));
        scaleFigure(layer, bed, QStringLiteral("0"));
    }
}

void paintColdScale(const Layer& layer, const LaneBox& box, const ColdLane& cold)
{
    scaleTick(layer, Geometry::coldY(box, cold, cold.capacity));
    scaleFigure(layer, box.strip.bottom() - 4, QStringLiteral("0"));
}

/// Where a hob's burner lies in its plan, in halves or thirds of it: two rows, from the front left.
QPointF spotOf(int position, int burners)
{
    const int columns = std::max(1, (burners + 1) / 2);
    const bool isBack = position % 2 == 1;
    const int column = position / 2;
    const double x = (column + 0.5) / columns;
    return {x, burners == 1 ? 0.5 : isBack ? 0.28 : 0.72};
}

void paintHobPlan(const Layer& layer, double right, double middle, const BurnerLane& burner,
                  const std::vector<int>& filled)
{
    constexpr double size = 13;
    const double left = right - size;
    const double top = std::round(middle - size / 2);
    layer.canvas.frame({left, top, right, top + size}, {layer.neutral().line, 1});
    for (int i = 0; i < burner.burners; ++i) {
        const QPointF spot = spotOf(i, burner.burners);
        const bool isFilled = std::find(filled.begin(), filled.end(), i) != filled.end();
        layer.canvas.dot(left + 0.5 + spot.x() * size, top + 0.5 + spot.y() * size,
                         isFilled ? 2.6 : 1, isFilled ? layer.neutral().ink : layer.neutral().line);
    }
}

QString sizeText(const BurnerLane& burner)
{
    return words("%1 cm").arg(std::lround(static_cast<double>(burner.size.smallest()) / 10.0));
}

void paintBurnerHead(const Layer& layer, const LaneBox& box, const BurnerLane& burner)
{
    const double middle = (box.strip.top + box.strip.bottom()) / 2;
    const double baseline =
        layer.canvas.middleBaseline(box.strip.top, box.strip.bottom(), TypeRole::Secondary);
    std::vector<int> filled{burner.position};
    for (const std::size_t other : box.sharing) {
        if (const auto* shared = std::get_if<BurnerLane>(&layer.scene().lanes[other].kind)) {
            filled.push_back(shared->position);
        }
    }
    if (!layer.geometry().lanes().showsNotes) {
        paintHobPlan(layer, layer.left() - narrowMargin, middle, burner, filled);
        return;
    }
    const QString size = box.isShared() ? words("idle") : sizeText(burner);
    const double room = layer.canvas.widthOf(QStringLiteral("88 cm"), TypeRole::Secondary);
    layer.canvas.text(layer.left() - scaleRight, baseline, size, TypeRole::Secondary,
                      layer.neutral().ink2, TextSide::LeftOf);
    paintHobPlan(layer, layer.left() - scaleRight - room - 3, middle, burner, filled);
}

bool isFirstOfItsName(const Layer& layer, const LaneBox& box)
{
    const auto& lanes = layer.scene().lanes;
    return box.lane == 0 || lanes[box.lane].name != lanes[box.lane - 1].name ||
           lanes[box.lane].kind.index() != lanes[box.lane - 1].kind.index();
}

void paintName(const Layer& layer, const LaneBox& box, const SceneLane& lane)
{
    Canvas& canvas = layer.canvas;
    const double margin = marginOf(layer);
    const double scale = layer.in.theme.textScale;
    const bool isLow = box.strip.height < 30 * scale;
    const double baseline =
        isLow ? canvas.middleBaseline(box.strip.top, box.strip.bottom(), TypeRole::LaneName)
              : box.strip.top + 15 * scale;
    const bool isBurner = std::holds_alternative<BurnerLane>(lane.kind);
    if (!isBurner || isFirstOfItsName(layer, box)) {
        const double beside = isBurner ? 16 : 0;
        canvas.text(margin, baseline,
                    canvas.elided(toText(lane.name), TypeRole::LaneName,
                                  layer.left() - margin - beside - 1),
                    TypeRole::LaneName, layer.neutral().ink);
    }
    if (!isLow && layer.geometry().lanes().showsNotes) {
        canvas.text(margin, baseline + 14 * scale, toText(lane.note), TypeRole::Secondary,
                    layer.neutral().ink2);
    }
}

void paintFoot(const Layer& layer, const LaneBox& box, const SceneLane& lane)
{
    const auto& boxes = layer.geometry().lanes().boxes;
    const auto next = std::find_if(boxes.begin(), boxes.end(),
                                   [&](const LaneBox& other) { return other.lane == box.lane; });
    const bool isLast = next == boxes.end() || next + 1 == boxes.end();
    const bool isInside = !isLast && layer.scene().lanes[(next + 1)->lane].group == lane.group &&
                          !std::holds_alternative<CookLane>(lane.kind) &&
                          !std::holds_alternative<OvenLane>(lane.kind);
    layer.canvas.hLine(0, layer.right(), box.strip.bottom(), 1,
                       isInside ? layer.neutral().rule : layer.neutral().line);
}

} // namespace

void paintHeader(const Layer& layer)
{
    layer.forEachBox([&](const LaneBox& box, const SceneLane& lane) {
        paintFoot(layer, box, lane);
        if (box.isFolded) {
            return;
        }
        const SavedState saved{layer.canvas.painter()};
        layer.canvas.painter().setClipRect(
            QRectF{0, box.strip.top - 2, layer.left(), box.strip.height + 4}, Qt::IntersectClip);
        paintName(layer, box, lane);
        if (const auto* oven = std::get_if<OvenLane>(&lane.kind)) {
            paintOvenScale(layer, box, *oven);
        } else if (std::holds_alternative<CookLane>(lane.kind)) {
            paintCookScale(layer, box);
        } else if (const auto* cold = std::get_if<ColdLane>(&lane.kind)) {
            paintColdScale(layer, box, *cold);
        } else if (const auto* burner = std::get_if<BurnerLane>(&lane.kind)) {
            paintBurnerHead(layer, box, *burner);
        }
        if (lane.refusal) {
            QColor veil = layer.neutral().paper;
            veil.setAlphaF(0.6F);
            layer.canvas.fill({0, box.strip.top, layer.left(), box.strip.bottom() - 1}, veil);
        }
    });
}

} // namespace suppertide::ui
