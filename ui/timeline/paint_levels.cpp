// What rises and falls in a lane: heat, hands, cold.
#include <QCoreApplication>

#include <algorithm>
#include <cmath>

#include "ui/timeline/heat_path.h"
#include "ui/timeline/paint_layers.h"
#include "ui/timeline/shown_degrees.h"

namespace suppertide::ui {

namespace {

QString words(const char* text)
{
    return QCoreApplication::translate("Timeline", text);
}

template <typename Kind, typename Paint>
void forEachLaneOf(const Layer& layer, Paint paint)
{
    layer.forEachBox([&](const LaneBox& box, const SceneLane& lane) {
        if (const auto* kind = std::get_if<Kind>(&lane.kind); kind && !box.isFolded) {
            paint(box, lane, *kind);
        }
    });
}

double yOf(const LaneBox& box, const OvenLane& oven, double tenths)
{
    return Geometry::heatY(box, oven, Celsius::tenths(static_cast<int>(std::lround(tenths))));
}

/// Up to here an oven counts as being at rest: nothing is drawn along the bed.
constexpr double restingTenths = 300;

bool isResting(const HeatPoint& from, const HeatPoint& to)
{
    return !from.isOn && from.tenths < restingTenths && to.tenths < restingTenths;
}

/// The stretches of the curve in which the oven is on or still warm.
std::vector<QPolygonF> warmStretches(const Layer& layer, const LaneBox& box, const OvenLane& oven)
{
    const auto path = heatPath(oven.curve, oven.settings, layer.geometry().axis());
    const auto point = [&](const HeatPoint& p) {
        return QPointF{layer.geometry().offset() + p.x, yOf(box, oven, p.tenths)};
    };
    std::vector<QPolygonF> stretches;
    bool isOpen = false;
    for (std::size_t i = 0; i + 1 < path.size(); ++i) {
        if (isResting(path[i], path[i + 1])) {
            isOpen = false;
            continue;
        }
        if (!isOpen) {
            stretches.push_back(QPolygonF{{point(path[i])}});
            isOpen = true;
        }
        stretches.back().append(point(path[i + 1]));
    }
    return stretches;
}

/// Labels of one lane that have been set, so that a further one can keep off them.
class LabelRoom
{
public:
    void take(const Box& box) { taken_.push_back(box); }
    [[nodiscard]] bool isFree(const Box& box) const
    {
        return std::none_of(taken_.begin(), taken_.end(),
                            [&](const Box& other) { return other.overlaps(box); });
    }

private:
    std::vector<Box> taken_;
};

LabelRoom roomIn(const Layer& layer, const LaneBox& box)
{
    LabelRoom room;
    for (const BlockShape& shape : layer.geometry().blocks()) {
        if (shape.lane == box.lane) {
            room.take(shape.bounds().grown(1));
        }
    }
    for (const Box& words : rangeWordPlaces(layer)) {
        room.take(words);
    }
    for (const SceneServing& serving : layer.scene().servings) {
        const double x = layer.geometry().x(serving.time);
        room.take({x - 6, box.strip.top, x + 2, box.strip.bottom()});
    }
    layer.forEachFold([&](const TimeAxis::Piece&, double x0, double x1) {
        room.take({x0, box.strip.top, x1, box.strip.bottom()});
    });
    if (const auto now = layer.scene().now) {
        const double x = layer.geometry().x(*now);
        room.take({x - 3, box.strip.top, x + 3, box.strip.bottom()});
    }
    return room;
}

/// Sets a label if it is free of others, and within the lane and the view.
bool setLabel(const Layer& layer, const LaneBox& box, LabelRoom& room, double x, double baseline,
              const QString& label, TypeRole role, const QColor& colour, TextSide side)
{
    const double width = layer.canvas.widthOf(label, role);
    const double left = side == TextSide::LeftOf ? x - width : x;
    const double height = 10 * layer.in.theme.textScale;
    const Box area{left - 1, baseline - height + 1, left + width + 1, baseline + 1};
    const bool isInside = area.top >= box.strip.top && area.bottom <= box.strip.bottom() &&
                          area.left >= layer.left() && area.right <= layer.right();
    if (!isInside || !room.isFree(area)) {
        return false;
    }
    room.take(area);
    layer.canvas.text(x, baseline, label, role, colour, side);
    return true;
}

/// The figures on the holds: "150°" above the hold's left end, or left of it where there is no
/// room above.
void paintHoldFigures(const Layer& layer, const LaneBox& box, const OvenLane& oven, LabelRoom& room)
{
    std::vector<Hold> holds = holdsOf(oven);
    if (layer.geometry().stop() == ZoomStop::Day && holds.size() > 1) {
        std::iter_swap(holds.begin(), std::max_element(holds.begin(), holds.end(),
                                                       [](const Hold& a, const Hold& b) {
                                                           return a.temperature < b.temperature;
                                                       }));
        holds.resize(1);
    }
    for (const Hold& hold : holds) {
        const double end = layer.geometry().x(oven.settings[hold.setting].when.end);
        double x = layer.geometry().x(hold.from);
        if (x < layer.left() && end > layer.left() + 40) {
            x = layer.left(); // a hold that begins left of the view keeps its figure in view
        }
        const double y = Geometry::heatY(box, oven, hold.temperature);
        const QString figure =
            QStringLiteral("%1°").arg(shownDegrees(hold.temperature, layer.scene().isFahrenheit));
        const QColor colour = layer.neutral().heatLine;
        if (!setLabel(layer, box, room, x + 3, y - 5, figure, TypeRole::LabelBold, colour,
                      TextSide::RightOf)) {
            setLabel(layer, box, room, x - 7, y + 3, figure, TypeRole::LabelBold, colour,
                     TextSide::LeftOf);
        }
        if (oven.settings[hold.setting].isPinned) {
            layer.canvas.ring(x + 10, y - 17, 4, layer.in.theme.role().pinned.colour,
                              {layer.neutral().paper, 1.2});
            layer.canvas.vLine(x + 10, y - 13, y, 1.8, layer.in.theme.role().pinned.colour);
        }
    }
}

/// "heats", "cools" and "off" beside the slopes, where there is room.
void paintSlopeWords(const Layer& layer, const LaneBox& box, const OvenLane& oven, LabelRoom& room)
{
    if (layer.geometry().stop() == ZoomStop::Day) {
        return;
    }
    const auto& knots = oven.curve;
    const auto say = [&](PlanTime time, double tenths, const QString& label, TextSide side) {
        const double x = layer.geometry().x(time) + (side == TextSide::LeftOf ? -7 : 7);
        setLabel(layer, box, room, x, yOf(box, oven, tenths), label, TypeRole::Secondary,
                 layer.neutral().ink2, side);
    };
    for (std::size_t i = 0; i + 1 < knots.size(); ++i) {
        const double rise = knots[i + 1].temperature.tenths() - knots[i].temperature.tenths();
        const double middle =
            (knots[i + 1].temperature.tenths() + knots[i].temperature.tenths()) / 2.0;
        const PlanTime half = knots[i].time + (knots[i + 1].time - knots[i].time) / 2;
        if (rise > 300) {
            say(half, middle, words("heats"), TextSide::LeftOf);
        } else if (rise < -300) {
            const bool isSwitchedOff =
                std::any_of(oven.settings.begin(), oven.settings.end(), [&](const OvenSetting& s) {
                    return !s.set && s.when.start == knots[i].time;
                });
            if (isSwitchedOff) {
                say(knots[i].time, knots[i].temperature.tenths() + 10, words("off"),
                    TextSide::RightOf);
            } else {
                say(half, middle, words("cools"), TextSide::RightOf);
            }
        }
    }
}

/// Curve in strokes of one kind: full while on, dotted while off.
void paintCurve(const Layer& layer, const LaneBox& box, const OvenLane& oven)
{
    const auto path = heatPath(oven.curve, oven.settings, layer.geometry().axis());

    std::size_t i = 0;
    while (i + 1 < path.size()) {
        QPolygonF stroke;
        const bool isOn = path[i].isOn;
        const auto point = [&](const HeatPoint& p) {
            return QPointF{layer.geometry().offset() + p.x, yOf(box, oven, p.tenths)};
        };
        stroke.append(point(path[i]));
        while (i + 1 < path.size() && path[i].isOn == isOn) {
            const bool rests = isResting(path[i], path[i + 1]);
            ++i;
            if (rests) {
                break;
            }
            stroke.append(point(path[i]));
        }
        if (stroke.size() > 1) {
            layer.canvas.polyline(stroke, isOn ? Stroke{layer.neutral().heatLine, 2}
                                               : Stroke{layer.neutral().heatLine, 1.6, {2, 2}});
        }
    }
}

void paintAsked(const Layer& layer, const LaneBox& box, const OvenLane& oven, LabelRoom& room)
{
    for (const AskedHeat& asked : oven.asked) {
        QPolygonF points;
        for (const HeatPoint& point : heatPath(asked.knots, {}, layer.geometry().axis())) {
            points.append({layer.geometry().offset() + point.x, yOf(box, oven, point.tenths)});
        }
        if (points.size() < 2) {
            continue;
        }
        layer.canvas.polyline(points, asked.isGhost ? Stroke{layer.neutral().heatLine, 1.4, {3, 3}}
                                                    : Stroke{layer.neutral().heatLine, 2, {5, 3}});
        if (layer.geometry().stop() == ZoomStop::Day) {
            continue;
        }
        const auto peak =
            std::min_element(points.begin(), points.end(),
                             [](const QPointF& a, const QPointF& b) { return a.y() < b.y(); });
        const QString label = toText(asked.label);
        if (asked.isGhost &&
            setLabel(layer, box, room, peak->x() + 3, peak->y() - 4, label, TypeRole::LabelBold,
                     layer.neutral().heatLine, TextSide::RightOf)) {
            continue;
        }
        // Left of the rise, as near as serving lines and blocks let it.
        for (int off = 16; off <= 136; off += 6) {
            if (setLabel(layer, box, room, peak->x() - off, peak->y() + 5, label,
                         TypeRole::LabelBold, layer.neutral().heatLine, TextSide::LeftOf)) {
                break;
            }
        }
    }
}

QPolygonF levelOf(const Layer& layer, const LaneBox& box, const ColdLane& cold)
{
    QPolygonF points;
    double y = box.strip.bottom();
    points.append({layer.geometry().x(layer.scene().horizon.start), y});
    for (const ColdStep& step : cold.level) {
        const double x = layer.geometry().x(step.from);
        points.append({x, y});
        y = Geometry::coldY(box, cold, step.used);
        points.append({x, y});
    }
    points.append({layer.geometry().x(layer.scene().horizon.end), y});
    return points;
}

/// Words keep off the level's line.
void takeLevel(const Layer& layer, const LaneBox& box, const ColdLane& cold, LabelRoom& room)
{
    for (std::size_t i = 0; i < cold.level.size(); ++i) {
        const double y = Geometry::coldY(box, cold, cold.level[i].used);
        const PlanTime end =
            i + 1 < cold.level.size() ? cold.level[i + 1].from : layer.scene().horizon.end;
        room.take({layer.geometry().x(cold.level[i].from), y - 2, layer.geometry().x(end), y + 2});
    }
}

/// Where a figure is worth its room: at rises that are not at once topped, and at peaks.
bool isPeak(const ColdLane& cold, std::size_t i)
{
    const Litres before = i > 0 ? cold.level[i - 1].used : Litres{};
    const bool rises = cold.level[i].used > before;
    const bool falls = i + 1 >= cold.level.size() || cold.level[i + 1].used < cold.level[i].used;
    return rises && falls;
}

QString litresText(Litres amount)
{
    const auto tenths = amount.smallest();
    return tenths % 10 == 0 ? QString::number(tenths / 10)
                            : QString::number(static_cast<double>(tenths) / 10.0, 'f', 1);
}

} // namespace

void paintHeat(const Layer& layer)
{
    forEachLaneOf<OvenLane>(layer, [&](const LaneBox& box, const SceneLane&, const OvenLane& oven) {
        for (QPolygonF area : warmStretches(layer, box, oven)) {
            area.append({area.last().x(), box.strip.bottom()});
            area.prepend({area.first().x(), box.strip.bottom()});
            layer.canvas.polygon(area, layer.neutral().heat);
        }
    });
}

void paintHeatLines(const Layer& layer)
{
    forEachLaneOf<OvenLane>(layer, [&](const LaneBox& box, const SceneLane&, const OvenLane& oven) {
        for (const Strip& row : box.rows) {
            layer.canvas.hLine(layer.left(), layer.right(), row.bottom(), 0.6,
                               layer.neutral().rule);
        }
        paintCurve(layer, box, oven);
        LabelRoom room = roomIn(layer, box);
        paintHoldFigures(layer, box, oven, room);
        paintAsked(layer, box, oven, room);
        paintSlopeWords(layer, box, oven, room);
    });
}

void paintHandsLines(const Layer& layer)
{
    forEachLaneOf<CookLane>(layer, [&](const LaneBox& box, const SceneLane&, const CookLane& cook) {
        const double full = Geometry::handsY(box, 100);
        const double bed = Geometry::handsY(box, 0);
        layer.canvas.hLine(layer.left(), layer.right(), bed, 0.6, layer.neutral().rule);
        for (const Interval& free : cook.free) {
            const double x0 = std::max(layer.left(), layer.geometry().x(free.start));
            const double x1 = std::min(layer.right(), layer.geometry().x(free.end));
            if (x1 > x0) {
                layer.canvas.hLine(x0, x1, full, 1, layer.neutral().line);
            }
        }
        const QString label = words("at table");
        for (const Interval& table : cook.table) {
            const Box band{layer.geometry().x(table.start), box.tableBand.top,
                           layer.geometry().x(table.end), box.tableBand.bottom()};
            layer.canvas.fill(band, layer.neutral().pleatB);
            if (layer.canvas.widthOf(label, TypeRole::Secondary) + 6 <= band.width()) {
                layer.canvas.text(
                    (band.left + band.right) / 2,
                    layer.canvas.middleBaseline(band.top, band.bottom, TypeRole::Secondary), label,
                    TypeRole::Secondary, layer.neutral().ink, TextSide::Around);
            }
        }
    });
}

void paintCold(const Layer& layer)
{
    forEachLaneOf<ColdLane>(layer, [&](const LaneBox& box, const SceneLane&, const ColdLane& cold) {
        QPolygonF area = levelOf(layer, box, cold);
        area.append({area.last().x(), box.strip.bottom()});
        layer.canvas.polygon(area, layer.neutral().cold);
    });
}

void paintColdLines(const Layer& layer)
{
    forEachLaneOf<ColdLane>(layer, [&](const LaneBox& box, const SceneLane&, const ColdLane& cold) {
        layer.canvas.polyline(levelOf(layer, box, cold), {layer.neutral().coldLine, 1.8});
        const double full = Geometry::coldY(box, cold, cold.capacity);
        layer.canvas.hLine(layer.left(), layer.right(), full, 1.2, layer.neutral().ink);
        LabelRoom room = roomIn(layer, box);
        for (std::size_t i = 0; i < cold.level.size(); ++i) {
            if (!isPeak(cold, i)) {
                continue;
            }
            const double x = layer.geometry().x(cold.level[i].from) + 4;
            const double y = Geometry::coldY(box, cold, cold.level[i].used);
            const QString figure = litresText(cold.level[i].used);
            const double below = y + 10 * layer.in.theme.textScale;
            const double baseline = below < box.strip.bottom() - 1 ? below : y - 3;
            setLabel(layer, box, room, x, baseline, figure, TypeRole::SecondaryBold,
                     layer.neutral().coldLine, TextSide::RightOf);
        }
        takeLevel(layer, box, cold, room);
        const QString there = words("%1 litres there are").arg(litresText(cold.capacity));
        for (const double share : {0.55, 0.65, 0.45, 0.75, 0.35, 0.25, 0.15}) {
            const double x = layer.left() + (layer.right() - layer.left()) * share;
            if (setLabel(layer, box, room, x, full + 11 * layer.in.theme.textScale, there,
                         TypeRole::Secondary, layer.neutral().ink2, TextSide::RightOf)) {
                break;
            }
        }
    });
}

} // namespace suppertide::ui
