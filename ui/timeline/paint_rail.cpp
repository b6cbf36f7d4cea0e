// The rail with the course flags, the ruler, and the heads of the pleats.
#include <QCoreApplication>

#include <algorithm>
#include <array>

#include "ui/timeline/paint_layers.h"
#include "ui/timeline/ruler_marks.h"
#include "ui/timeline/time_words.h"

namespace suppertide::ui {

namespace {

constexpr double flagHeight = 17;
constexpr double railTop = 1;

QString words(const char* text)
{
    return QCoreApplication::translate("Timeline", text);
}

struct RailPlaces
{
    double levelTop[2];
    double flagHeight;
    double dayBaseline;
    double rulerLine;
};

RailPlaces placesOf(const Layer& layer)
{
    const Strip& rail = layer.geometry().lanes().rail;
    const Strip& ruler = layer.geometry().lanes().ruler;
    const double height = flagHeight * std::max(1.0, layer.in.theme.textScale);
    const double gap = std::max(1.0, (rail.height - 2 - 2 * height) / 2);
    RailPlaces places{};
    places.levelTop[0] = rail.top + 2;
    places.levelTop[1] = places.levelTop[0] + height + gap;
    places.flagHeight = height;
    places.dayBaseline = rail.bottom() - 4;
    places.rulerLine = ruler.bottom();
    return places;
}

void paintPleatHeads(const Layer& layer, const RailPlaces& places)
{
    const double top = layer.geometry().lanes().ruler.top + 1;
    const double bottom = layer.geometry().lanesTop() - 6;
    layer.forEachFold([&](const TimeAxis::Piece& piece, double x0, double x1) {
        const std::array crease{x0, x0 + 0.36 * (x1 - x0), x0 + 0.64 * (x1 - x0), x1};
        const std::array rise{top, top + 5, top - 1, top};
        for (std::size_t i = 0; i + 1 < crease.size(); ++i) {
            const QColor ground = i == 1 ? layer.neutral().pleatB : layer.neutral().pleatA;
            layer.canvas.polygon(
                QPolygonF{{QPointF{crease.at(i), rise.at(i)},
                           QPointF{crease.at(i + 1), rise.at(i + 1)},
                           QPointF{crease.at(i + 1), bottom}, QPointF{crease.at(i), bottom}}},
                ground);
        }
        for (std::size_t i = 0; i < crease.size(); ++i) {
            layer.canvas.vLine(layer.canvas.snapped(crease.at(i)), rise.at(i), bottom, 0.8,
                               layer.neutral().line);
        }
        const QString length = toText(roughLengthText(piece.when.length()));
        const double half = layer.canvas.widthOf(length, TypeRole::Secondary) / 2;
        const double middle = std::max((x0 + x1) / 2, layer.left() + half + 2);
        layer.canvas.text(middle, places.dayBaseline, length, TypeRole::Secondary,
                          layer.neutral().ink2, TextSide::Around);
    });
}

void paintRuler(const Layer& layer, const RailPlaces& places)
{
    Canvas& canvas = layer.canvas;
    const Geometry& geometry = layer.geometry();
    canvas.hLine(layer.left(), layer.right(), places.rulerLine, 1, layer.neutral().ink);
    const double numeral = canvas.widthOf(QStringLiteral("00"), TypeRole::ControlBold);
    const double minutes = canvas.widthOf(QStringLiteral("00"), TypeRole::Minute);
    const bool hasMinutes = geometry.stop() != ZoomStop::Day;
    const double needed = 3 + numeral + (hasMinutes ? minutes + 1 : 0);
    const double baseline = places.rulerLine - 6;
    for (const RulerMark& mark :
         rulerMarks(layer.scene().calendar, geometry.axis(), geometry.visibleTime(), needed)) {
        const double x = geometry.offset() + mark.x;
        const double length = mark.rank == MarkRank::Hour ? 9 : mark.rank == MarkRank::Half ? 6 : 3;
        canvas.vLine(x, places.rulerLine - length, places.rulerLine, 1, layer.neutral().ink);
        if (!mark.hasNumeral) {
            continue;
        }
        const QString hour = QStringLiteral("%1").arg(mark.hour, 2, 10, QLatin1Char('0'));
        canvas.text(x + 3, baseline, hour, TypeRole::ControlBold, layer.neutral().ink);
        const auto& servings = layer.scene().servings;
        const bool isClear =
            std::none_of(servings.begin(), servings.end(), [&](const SceneServing& serving) {
                const double mast = geometry.x(serving.time);
                return x + numeral < mast && mast < x + needed + 2;
            });
        if (hasMinutes && isClear) {
            canvas.text(x + 4 + numeral, baseline - 4, QStringLiteral("00"), TypeRole::Minute,
                        layer.neutral().ink2);
        }
    }
}

/// What is written beside the day names already, on both levels: flags and the lengths of pleats.
/// A box's height counts levels: 0 to 1 the upper, 1 to 2 the lower.
std::vector<Box> takenByOthers(const Layer& layer)
{
    std::vector<Box> taken;
    for (const Flag& flag : layer.in.flags) {
        const double level = flag.level;
        taken.push_back({flag.left - 4, level, flag.right + 6, level + 1});
        taken.push_back({flag.right - 6, 0, flag.right + 4, 2}); // the mast
    }
    layer.forEachFold([&](const TimeAxis::Piece& piece, double x0, double x1) {
        const QString length = toText(roughLengthText(piece.when.length()));
        const double half = layer.canvas.widthOf(length, TypeRole::Secondary) / 2 + 4;
        taken.push_back({(x0 + x1) / 2 - half, 1, (x0 + x1) / 2 + half, 2});
    });
    return taken;
}

/// Where a day's name stands: at its first minute in view, right of a fold that it begins in.
double dayStart(const Layer& layer, const DayHeading& day)
{
    double x = std::max(layer.geometry().x(day.from), layer.left()) + 3;
    layer.forEachFold([&](const TimeAxis::Piece& piece, double, double x1) {
        if (piece.when.start <= day.from && day.from < piece.when.end) {
            x = x1 + 12;
        }
    });
    return x;
}

/// The lower level is theirs; where that is taken, the short name stands on the upper one.
void paintDays(const Layer& layer, const RailPlaces& places)
{
    struct Wording
    {
        const std::string& name;
        int level;
    };
    const auto& days = layer.scene().days;
    std::vector<Box> taken = takenByOthers(layer);
    for (std::size_t i = 0; i < days.size(); ++i) {
        const double end =
            i + 1 < days.size() ? layer.geometry().x(days[i + 1].from) : layer.right();
        const double x = dayStart(layer, days[i]);
        if (layer.geometry().x(days[i].from) > layer.right() || end < layer.left()) {
            continue;
        }
        for (const Wording& wording : {Wording{days[i].longName, 1}, Wording{days[i].shortName, 1},
                                       Wording{days[i].shortName, 0}}) {
            const QString label = toText(wording.name);
            const Box area{x, wording.level + 0.0, x + layer.canvas.widthOf(label, TypeRole::Day),
                           wording.level + 1.0};
            const bool isFree = area.right <= std::max(end, x) &&
                                std::none_of(taken.begin(), taken.end(),
                                             [&](const Box& box) { return box.overlaps(area); });
            if (isFree) {
                const double baseline =
                    wording.level == 1
                        ? places.dayBaseline
                        : layer.canvas.middleBaseline(places.levelTop[0],
                                                      places.levelTop[0] + places.flagHeight,
                                                      TypeRole::Day);
                layer.canvas.text(x, baseline, label, TypeRole::Day, layer.neutral().ink);
                taken.push_back({area.left - 6, area.top, area.right + 6, area.bottom});
                break;
            }
        }
    }
}

bool isPointedAt(const Target& target, int course)
{
    const auto* flag = std::get_if<FlagTarget>(&target);
    return flag != nullptr && flag->course == course;
}

void paintFlag(const Layer& layer, const RailPlaces& places, const SceneServing& serving,
               const Flag& flag)
{
    Canvas& canvas = layer.canvas;
    const double top = places.levelTop[flag.level == 0 ? 0 : 1];
    const double bottom = top + places.flagHeight;
    const double right = flag.right + 1;
    const QColor ink = layer.neutral().ink;
    if (flag.showsName || flag.showsTime) {
        const QPolygonF tailed{{QPointF{right, top}, QPointF{flag.left, top},
                                QPointF{flag.left + 4, (top + bottom) / 2},
                                QPointF{flag.left, bottom}, QPointF{right, bottom}}};
        canvas.polygon(tailed, layer.neutral().card);
        canvas.outline(tailed,
                       {ink, isPointedAt(layer.in.marks.hovered, serving.course) ? 2 : 1.2});
    }
    const double baseline = canvas.middleBaseline(top, bottom, TypeRole::Secondary);
    double x = right - flagNumberWidth - 1;
    canvas.fill({x, top, right, bottom}, ink);
    canvas.text(x + (flagNumberWidth + 1) / 2, baseline, QString::number(serving.course),
                TypeRole::SecondaryBold, layer.neutral().paper, TextSide::Around);
    x -= 3;
    if (flag.showsTime) {
        const QString time = toText(clockText(layer.scene().calendar, serving.time));
        canvas.text(x, baseline, time, TypeRole::Secondary, ink, TextSide::LeftOf);
        x -= canvas.widthOf(time, TypeRole::Secondary) + 3;
    }
    if (flag.showsName) {
        canvas.text(x, baseline, toText(serving.name), TypeRole::SecondaryBold, ink,
                    TextSide::LeftOf);
    }
    if (layer.in.marks.hasKeyboard && isPointedAt(layer.in.marks.focused, serving.course)) {
        canvas.outline(
            QPolygonF{QRectF{flag.left - 2, top - 1, right - flag.left + 4, places.flagHeight + 2}},
            {ink, 2, {2, 2}});
    }
}

/// Masts reach from the rail to the ruler's foot, behind all flags.
void paintMasts(const Layer& layer, const RailPlaces& places)
{
    for (const SceneServing& serving : layer.scene().servings) {
        const double x = layer.geometry().x(serving.time);
        layer.canvas.vLine(x, railTop, layer.geometry().lanesTop(), 2, layer.neutral().ink);
        layer.canvas.vLine(x - 4, places.rulerLine, layer.geometry().lanesTop(), 0.8,
                           layer.neutral().ink);
    }
}

} // namespace

void paintRail(const Layer& layer)
{
    Canvas& canvas = layer.canvas;
    const RailPlaces places = placesOf(layer);
    {
        const SavedState saved{canvas.painter()};
        canvas.painter().setClipRect(
            QRectF{layer.left(), 0, layer.right() - layer.left(), layer.geometry().lanesTop()},
            Qt::IntersectClip);
        paintPleatHeads(layer, places);
        paintRuler(layer, places);
        paintDays(layer, places);
        paintMasts(layer, places);
        canvas.hLine(layer.left(), layer.right(), railTop, 1.6, layer.neutral().ink);
        const auto& flags = layer.in.flags;
        for (std::size_t i = 0; i < flags.size() && i < layer.scene().servings.size(); ++i) {
            paintFlag(layer, places, layer.scene().servings[i], flags[i]);
        }
    }
    const Strip& rail = layer.geometry().lanes().rail;
    const double margin = layer.geometry().lanes().showsNotes ? 10 : 3;
    canvas.text(margin, rail.top + 16 * layer.in.theme.textScale, words("Serving"),
                TypeRole::LaneName, layer.neutral().ink);
    canvas.text(margin, places.rulerLine - 6, words("Hour"), TypeRole::Secondary,
                layer.neutral().ink2);
}

} // namespace suppertide::ui
