// Lane grounds, hour lines, absences, pleats, serving lines, now.
#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "ui/timeline/paint_layers.h"
#include "ui/timeline/ruler_marks.h"
#include "ui/timeline/time_words.h"

namespace suppertide::ui {

namespace {

QString words(const char* text)
{
    return QCoreApplication::translate("Timeline", text);
}

/// Everything of the horizon in which a cook is not free.
std::vector<Interval> absencesOf(const CookLane& cook, const Interval& horizon)
{
    std::vector<Interval> absences;
    PlanTime at = horizon.start;
    for (const Interval& free : cook.free) {
        if (free.start > at) {
            absences.push_back({at, free.start});
        }
        at = std::max(at, free.end);
    }
    if (at < horizon.end) {
        absences.push_back({at, horizon.end});
    }
    return absences;
}

const DayHeading* dayOf(const Scene& scene, PlanTime time)
{
    const DayHeading* found = nullptr;
    for (const DayHeading& day : scene.days) {
        if (day.from <= time) {
            found = &day;
        }
    }
    return found;
}

/// "not here until Sat 16:00", and "not here" for where that does not fit or no return is in
/// sight: the longest first.
QStringList absenceWords(const Scene& scene, const CookLane& cook, const Interval& absence)
{
    const bool isAtHome = std::any_of(cook.atHome.begin(), cook.atHome.end(),
                                      [&](const Interval& home) { return home.overlaps(absence); });
    const QString brief = isAtHome ? words("not free") : words("not here");
    if (absence.end >= scene.horizon.end) {
        return {brief};
    }
    const DayHeading* day = dayOf(scene, absence.end);
    const QString weekday =
        day == nullptr ? QString{} : toText(day->shortName).section(QLatin1Char(' '), 0, 0);
    const QString clock = toText(clockText(scene.calendar, absence.end));
    const QString format = isAtHome ? words("not free until %1 %2") : words("not here until %1 %2");
    return {format.arg(weekday, clock), brief};
}

/// The x of a fold's four lines: its facets are 36, 28 and 36 of 100 wide.
std::array<double, 4> creases(const Layer& layer, double x0, double x1)
{
    const double width = x1 - x0;
    return {layer.canvas.snapped(x0), layer.canvas.snapped(x0 + 0.36 * width),
            layer.canvas.snapped(x0 + 0.64 * width), layer.canvas.snapped(x1)};
}

} // namespace

void paintGrounds(const Layer& layer)
{
    layer.forEachBox([&](const LaneBox& box, const SceneLane& lane) {
        const Strip& strip = box.strip;
        layer.canvas.fill({layer.left(), strip.top, layer.right(), strip.bottom()},
                          layer.neutral().lane);
        if (const auto* oven = std::get_if<OvenLane>(&lane.kind); oven && !box.isFolded) {
            for (int degrees = 100; degrees < oven->top.wholeDegrees(); degrees += 50) {
                const double y = Geometry::heatY(box, *oven, Celsius::degrees(degrees));
                const bool isLabelled = oven->shelves > 1 || degrees % 100 == 0;
                if (isLabelled) {
                    layer.canvas.hLine(layer.left(), layer.right(), y, 1, layer.neutral().paper);
                }
            }
        }
    });
}

void paintMissingLanes(const Layer& layer)
{
    constexpr int rows = 5;
    constexpr double height = 26;
    constexpr double gap = 8;
    const Stroke stroke{layer.neutral().line, 1, {5, 4}};
    double top = layer.geometry().lanesTop() + gap;
    for (int i = 0; i < rows && top + height <= layer.geometry().height(); ++i) {
        layer.canvas.frame({10, top, layer.left() - 10, top + height}, stroke);
        layer.canvas.frame({layer.left(), top, layer.geometry().timeRight() - 10, top + height},
                           stroke);
        top += height + gap;
    }
}

void paintHourLines(const Layer& layer)
{
    const Geometry& geometry = layer.geometry();
    Strip strip = geometry.lanes().visible(layer.band);
    strip.height = std::min(strip.height, geometry.lanesBottom() - strip.top);
    const bool hasHalves = geometry.stop() != ZoomStop::Day;
    for (const RulerMark& mark :
         rulerMarks(layer.scene().calendar, geometry.axis(), geometry.visibleTime(), 0)) {
        const double x = geometry.offset() + mark.x;
        if (x < layer.left() || !layer.canvas.isDirty({x - 1, strip.top, x + 1, strip.bottom()})) {
            continue;
        }
        if (mark.rank == MarkRank::Hour) {
            layer.canvas.vLine(x, strip.top, strip.bottom(), 1, layer.neutral().rule);
        } else if (mark.rank == MarkRank::Half && hasHalves) {
            layer.canvas.dottedVLine(x, strip.top, strip.bottom(), 1, 4, layer.neutral().rule);
        }
    }
}

namespace {

/// The first of `wordings` that fits into [x0, x1) clear of folds.
void paintAbsenceWords(const Layer& layer, const LaneBox& box, const QStringList& wordings,
                       double x0, double x1)
{
    const auto [from, to] = widestClear(layer, x0, x1);
    for (const QString& wording : wordings) {
        if (layer.canvas.widthOf(wording, TypeRole::Secondary) + 12 <= to - from) {
            layer.canvas.text(
                (from + to) / 2,
                layer.canvas.middleBaseline(box.strip.top, box.strip.bottom(), TypeRole::Secondary),
                wording, TypeRole::Secondary, layer.neutral().ink2, TextSide::Around);
            return;
        }
    }
}

} // namespace

void paintAbsences(const Layer& layer)
{
    layer.forEachBox([&](const LaneBox& box, const SceneLane& lane) {
        const auto* cook = std::get_if<CookLane>(&lane.kind);
        if (cook == nullptr) {
            return;
        }
        for (const Interval& absence : absencesOf(*cook, layer.scene().horizon)) {
            const double x0 = std::max(layer.left(), layer.geometry().x(absence.start));
            const double x1 = std::min(layer.right(), layer.geometry().x(absence.end));
            if (x1 <= x0) {
                continue;
            }
            layer.canvas.fill({x0, box.strip.top, x1, box.strip.bottom()}, layer.neutral().panel);
            if (absence.start > layer.scene().horizon.start) {
                layer.canvas.vLine(x0, box.strip.top, box.strip.bottom(), 1.2,
                                   layer.neutral().line);
            }
            if (absence.end < layer.scene().horizon.end) {
                layer.canvas.vLine(x1, box.strip.top, box.strip.bottom(), 1.2,
                                   layer.neutral().line);
            }
            paintAbsenceWords(layer, box, absenceWords(layer.scene(), *cook, absence), x0, x1);
        }
    });
}

void paintFacets(const Layer& layer, double top, double bottom)
{
    layer.forEachFold([&](const TimeAxis::Piece&, double x0, double x1) {
        if (!layer.canvas.isDirty({x0, top, x1, bottom})) {
            return;
        }
        const auto x = creases(layer, x0, x1);
        layer.canvas.fill({x[0], top, x[1], bottom}, layer.neutral().pleatA);
        layer.canvas.fill({x[1], top, x[2], bottom}, layer.neutral().pleatB);
        layer.canvas.fill({x[2], top, x[3], bottom}, layer.neutral().pleatA);
    });
}

void paintFoldLines(const Layer& layer, double top, double bottom)
{
    layer.forEachFold([&](const TimeAxis::Piece&, double x0, double x1) {
        if (layer.canvas.isDirty({x0 - 1, top, x1 + 1, bottom})) {
            for (const double x : creases(layer, x0, x1)) {
                layer.canvas.vLine(x, top, bottom, 0.8, layer.neutral().line);
            }
        }
    });
}

namespace {

/// From the top of the uppermost cook's lane to the foot of the lowest; empty if no cook's lane
/// stands in this band.
Strip cooksStrip(const Layer& layer)
{
    Strip strip;
    for (const LaneBox& box : layer.geometry().lanes().boxes) {
        if (box.band == layer.band &&
            std::holds_alternative<CookLane>(layer.scene().lanes[box.lane].kind)) {
            strip.top = strip.height > 0 ? strip.top : box.strip.top;
            strip.height = box.strip.bottom() - strip.top;
        }
    }
    return strip;
}

/// In a drag folds stay, and a step of a cook's may be dragged over one.
bool coversABlockOfACook(const Layer& layer, const Box& area)
{
    const auto& shapes = layer.geometry().blocks();
    return std::any_of(shapes.begin(), shapes.end(), [&](const BlockShape& shape) {
        return shape.isSegment() && shape.band == layer.band && shape.bounds().overlaps(area);
    });
}

} // namespace

void paintPleatHours(const Layer& layer)
{
    // The hours stand upright in the cooks' lanes, where a fold is empty but for waits, which run
    // on behind its middle facet.
    const Strip strip = cooksStrip(layer);
    const double middle = (strip.top + strip.bottom()) / 2;
    layer.forEachFold([&](const TimeAxis::Piece& piece, double x0, double x1) {
        const QString label = words("%1 to %2")
                                  .arg(toText(clockText(layer.scene().calendar, piece.when.start)),
                                       toText(clockText(layer.scene().calendar, piece.when.end)));
        const double half = layer.canvas.widthOf(label, TypeRole::Secondary) / 2 + 3;
        const auto crease = creases(layer, x0, x1);
        const Box area{crease[1] + 1, middle - half, crease[2], middle + half};
        if (2 * half + 2 > strip.height || !layer.canvas.isDirty(area.grown(2)) ||
            coversABlockOfACook(layer, area.grown(2))) {
            return;
        }
        layer.canvas.fill(area, layer.neutral().pleatB);
        layer.canvas.uprightText((x0 + x1) / 2, middle, label, TypeRole::Secondary,
                                 layer.neutral().ink);
    });
}

void paintServingLines(const Layer& layer, double top, double bottom)
{
    for (const SceneServing& serving : layer.scene().servings) {
        const double x = layer.geometry().x(serving.time);
        if (x < layer.left() || !layer.canvas.isDirty({x - 6, top, x + 2, bottom})) {
            continue;
        }
        layer.canvas.vLine(x, top, bottom, 2, layer.neutral().ink);
        layer.canvas.vLine(x - 4, top, bottom, 0.8, layer.neutral().ink);
    }
}

void paintNowLine(const Layer& layer, double top, double bottom)
{
    const auto now = layer.scene().now;
    if (!now) {
        return;
    }
    const double x = layer.geometry().x(*now);
    if (x < layer.left() || x > layer.right()) {
        return;
    }
    Canvas& canvas = layer.canvas;
    canvas.vLine(x, top, bottom, 3.4, layer.neutral().paper);
    canvas.vLine(x, top, bottom, 1.4, layer.in.theme.role().now.colour);
    const QString clock = toText(clockText(layer.scene().calendar, *now));
    const double half = std::max(20.0, canvas.widthOf(clock, TypeRole::LabelBold) / 2 + 5);
    const double foot = top + 1;
    const double height = 15 * layer.in.theme.textScale;
    canvas.polygon(
        QPolygonF{{QPointF{x - half, foot - 6 - height}, QPointF{x + half, foot - 6 - height},
                   QPointF{x + half, foot - 6}, QPointF{x + 5, foot - 6}, QPointF{x, foot},
                   QPointF{x - 5, foot - 6}, QPointF{x - half, foot - 6}}},
        layer.in.theme.role().now.colour);
    canvas.text(x, canvas.middleBaseline(foot - 6 - height, foot - 6, TypeRole::LabelBold), clock,
                TypeRole::LabelBold, layer.neutral().paper, TextSide::Around);
}

} // namespace suppertide::ui
