// What a TemperatureChart paints under and over the curves of Qt Charts.
#include <QPainter>

#include <algorithm>
#include <cmath>

#include "ui/models/scene_of_plan.h"
#include "ui/pages/temperatures/temperature_chart.h"
#include "ui/timeline/canvas.h"
#include "ui/timeline/clash_tag.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr double gap = 4; // px between words and what they are about

ClashSeverity shown(Severity severity)
{
    switch (severity) {
    case Severity::Impossible:
        return ClashSeverity::Impossible;
    case Severity::Unsafe:
        return ClashSeverity::Unsafe;
    case Severity::Undesirable:
        return ClashSeverity::Undesirable;
    }
    return ClashSeverity::Unsafe;
}

enum class DayForm
{
    Full,
    Short
};

/// "Saturday 19 June", "Sat 19".
QString dayName(const CivilDate& date, DayForm form)
{
    const QString full = QString::fromStdString(dayText(date));
    constexpr int letters = 3;
    return form == DayForm::Full
               ? full
               : full.left(letters) + u' ' + QString::number(static_cast<int>(date.day));
}

} // namespace

void TemperatureChart::drawBackground(QPainter* painter, const QRectF& rect)
{
    painter->fillRect(rect, theme_.neutral().paper);
    if (view_.key.empty()) {
        return;
    }
    Canvas canvas(*painter, theme_, texts_, rect);
    paintZones(canvas);
    paintGrid(canvas);
    paintCounted(canvas);
}

void TemperatureChart::drawForeground(QPainter* painter, const QRectF& rect)
{
    if (!view_.key.empty()) {
        Canvas canvas(*painter, theme_, texts_, rect);
        paintLimits(canvas);
        paintBars(canvas);
        paintTimes(canvas);
        paintLegend(canvas);
    }
    if (hasFocus()) {
        painter->setPen(QPen(theme_.neutral().ink, 2, Qt::DotLine));
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(QRectF(viewport()->rect()).adjusted(1, 1, -1, -1));
    }
}

/// Zones of all the time are flat grounds; what a dish accepts is framed in its minutes.
void TemperatureChart::paintZones(Canvas& canvas) const
{
    const SavedState saved{canvas.painter()};
    canvas.painter().setClipRect(plot());
    for (const LimitBand& band : view_.bands) {
        const ui::Box box{
            band.when ? x(static_cast<double>(minuteOf(band.when->start))) : plot().left(),
            y(band.high),
            band.when ? x(static_cast<double>(minuteOf(band.when->end))) : plot().right(),
            y(band.low)};
        if (!band.when) {
            canvas.fill(box, theme_.neutral().pleatA);
            continue;
        }
        canvas.fill(box, theme_.neutral().allowed);
        canvas.frame(box, {theme_.role().ok.colour, 1});
    }
}

void TemperatureChart::paintGrid(Canvas& canvas) const
{
    const int steps = static_cast<int>(std::lround((degrees_.high - degrees_.low) / degrees_.step));
    for (int i = 0; i <= steps; ++i) {
        const double degrees = degrees_.low + i * degrees_.step;
        canvas.hLine(plot().left(), plot().right(), y(degrees), 1, theme_.neutral().rule);
        const QString figure =
            QString::fromStdString(tickText(degrees, view_.isFahrenheit, i == steps));
        canvas.text(plot().left() - gap, y(degrees) + 4 * theme_.textScale, figure,
                    TypeRole::Secondary, theme_.neutral().ink2, TextSide::LeftOf);
    }
    canvas.hLine(plot().left(), plot().right(), plot().bottom(), 1, theme_.neutral().line);
    canvas.vLine(plot().left(), plot().top(), plot().bottom(), 1, theme_.neutral().line);
}

/// A flat shade in the plot; the hatch stands in the finding's own row, where it hides no curve.
void TemperatureChart::paintCounted(Canvas& canvas) const
{
    for (const TemperatureBar& bar : view_.bars) {
        const double left = std::max(x(bar.from), plot().left());
        const double right = std::min(std::max(x(bar.to), x(bar.from) + 2), plot().right());
        if (bar.kind != BarKind::Finding || left >= right) {
            continue;
        }
        QColor shade = canvas.roleOf(shown(bar.severity)).colour;
        constexpr float strength = 0.12F;
        shade.setAlphaF(strength);
        canvas.fill({left, plot().top(), right, plot().bottom()}, shade);
        canvas.vLine(left, plot().top(), plot().bottom(), 1,
                     canvas.roleOf(shown(bar.severity)).colour);
        canvas.vLine(right, plot().top(), plot().bottom(), 1,
                     canvas.roleOf(shown(bar.severity)).colour);
    }
}

void TemperatureChart::paintBars(Canvas& canvas) const
{
    for (const TemperatureBar& bar : view_.bars) {
        if (x(bar.to) > plot().left() && x(bar.from) < plot().right()) {
            paintBar(canvas, bar);
        }
    }
}

void TemperatureChart::paintBar(Canvas& canvas, const TemperatureBar& bar) const
{
    const double top = bar.row * rowHeight() + 2;
    const double bottom = top + rowHeight() - 2;
    const double left = std::max(x(bar.from), plot().left());
    const double right = std::min(x(bar.to), plot().right());
    const double baseline = canvas.middleBaseline(top, bottom, TypeRole::Secondary);
    if (bar.kind == BarKind::Place) {
        canvas.fill({left, top, right, bottom}, theme_.neutral().panel);
        canvas.vLine(left, top, bottom, 1, theme_.neutral().line);
        canvas.vLine(right, top, bottom, 1, theme_.neutral().line);
        const QString label = canvas.elided(bar.label, TypeRole::Secondary, right - left - 2 * gap);
        if (label.size() > 2) { // an ellipsis alone says nothing
            canvas.text(left + gap, baseline, label, TypeRole::Secondary, theme_.neutral().ink);
        }
        return;
    }
    const ClashSeverity severity = shown(bar.severity);
    const ui::Box minutes{left, top, std::max(right, left + 2), bottom};
    canvas.hatch(minutes, severity);
    canvas.frame(minutes, {canvas.roleOf(severity).colour, 1});
    const double tag = bar.clash > 9 ? 26 : 16; // px
    const double room = plot().width();
    const QString label = canvas.elided(bar.label, TypeRole::SecondaryBold, room - tag - 2 * gap);
    const double wide = tag + gap + canvas.widthOf(label, TypeRole::SecondaryBold);
    // Beside a short bar, within a long one; at the edge wherever it has room.
    const double beside = minutes.right + gap;
    const bool isBeside = minutes.width() < wide + gap && beside + wide <= plot().right();
    const double at =
        isBeside ? beside
                 : std::clamp(left, plot().left(), std::max(plot().left(), plot().right() - wide));
    canvas.fill({at, top + 1, at + wide + gap, bottom - 1}, theme_.neutral().paper);
    paintTag(canvas, at + tag / 2, (top + bottom) / 2, bar.clash, severity);
    canvas.haloText(at + tag + gap, baseline, label, TypeRole::SecondaryBold, theme_.neutral().ink,
                    theme_.neutral().paper);
}

void TemperatureChart::paintLimits(Canvas& canvas) const
{
    struct Words
    {
        QString text;
        double at = 0;
        bool isZone = false;
    };
    std::vector<Words> words;
    for (const LimitLine& limit : view_.limits) {
        const double at = y(limit.celsius);
        for (double dash = plot().left(); dash < plot().right(); dash += 6) {
            canvas.hLine(dash, std::min(dash + 3, plot().right()), at, 1, theme_.neutral().ink2);
        }
        words.push_back({limit.label, at - 7 * theme_.textScale, false});
    }
    for (const LimitBand& band : view_.bands) {
        if (!band.when) {
            words.push_back({band.label, (y(band.low) + y(band.high)) / 2, true});
        }
    }
    std::vector<double> wanted;
    wanted.reserve(words.size());
    for (const Words& each : words) {
        wanted.push_back(each.at);
    }
    const std::vector<double> placed =
        spreadLabels(wanted, 14 * theme_.textScale, plot().top(), plot().bottom());
    for (std::size_t i = 0; i < words.size(); ++i) {
        const QString text =
            canvas.elided(words[i].text, TypeRole::Secondary, plot().width() - 2 * gap);
        const QColor ground = words[i].isZone ? theme_.neutral().pleatA : theme_.neutral().paper;
        canvas.haloText(plot().right() - gap, placed[i] + 4 * theme_.textScale, text,
                        TypeRole::Secondary, theme_.neutral().ink, ground, TextSide::LeftOf);
    }
}

void TemperatureChart::paintTimes(Canvas& canvas) const
{
    const double wide = canvas.widthOf(u"00:00"_s, TypeRole::Secondary) + 3 * gap;
    const auto ticks = timeTicks(view_.calendar, window_, wide / plot().width() * window_.length());
    const double hours = plot().bottom() + rowHeight() - 4;
    const bool isDaysOnly = std::ranges::all_of(ticks, &TimeTick::isDay) && ticks.size() > 1;
    for (const TimeTick& tick : ticks) {
        const double at = x(static_cast<double>(minuteOf(tick.time)));
        canvas.vLine(at, plot().bottom(), plot().bottom() + (tick.isDay ? 7 : 4), 1,
                     theme_.neutral().line);
        if (!isDaysOnly && at + wide / 2 <= width() + gap) {
            canvas.text(at, hours, QString::fromStdString(toIso(tick.civil.clock)),
                        TypeRole::Secondary, theme_.neutral().ink, TextSide::Around);
        }
    }
    paintDays(canvas, ticks, isDaysOnly ? hours + 2 : hours + rowHeight() - 4);
}

/// Each day at its first tick, in full where all have room for it, else as short as they must be.
void TemperatureChart::paintDays(Canvas& canvas, const std::vector<TimeTick>& ticks,
                                 double baseline) const
{
    struct Day
    {
        double at = 0;
        CivilDate date;
    };
    std::vector<Day> days;
    for (const TimeTick& tick : ticks) {
        if (tick.isDay) {
            days.push_back({x(static_cast<double>(minuteOf(tick.time))), tick.civil.date});
        }
    }
    const auto ends = [&](std::size_t i) {
        return i + 1 < days.size() ? days[i + 1].at : static_cast<double>(width());
    };
    for (const DayForm form : {DayForm::Full, DayForm::Short}) {
        bool hasRoom = true;
        for (std::size_t i = 0; i < days.size(); ++i) {
            const double wide = canvas.widthOf(dayName(days[i].date, form), TypeRole::Day);
            // The last one may begin left of its tick.
            hasRoom = hasRoom && (wide + 2 * gap <= ends(i) - days[i].at || days.size() == 1);
        }
        if (!hasRoom && form != DayForm::Short) {
            continue;
        }
        double free = 0;
        for (const Day& day : days) {
            const QString name = dayName(day.date, form);
            const double wide = canvas.widthOf(name, TypeRole::Day);
            const double at = std::min(day.at - gap, width() - wide - gap);
            if (at >= free) { // one that has no room goes
                canvas.text(at, baseline, name, TypeRole::Day, theme_.neutral().ink);
                free = at + wide + gap;
            }
        }
        return;
    }
}

/// A piece of each line beside its name: told apart by its dashes, not by its colour alone.
void TemperatureChart::paintLegend(Canvas& canvas) const
{
    constexpr double sample = 22; // px
    double at = plot().left();
    const double middle = height() - rowHeight() / 2 - 2;
    for (const TemperatureCurve& curve : view_.curves) {
        if (curve.runs.empty()) {
            continue;
        }
        Stroke stroke{curve.isDashed ? theme_.neutral().heatLine : theme_.neutral().ink,
                      curve.isDashed ? 1.6 : 2.2};
        if (curve.isDashed) {
            stroke.dash = {8, 5};
        }
        canvas.polyline(QPolygonF({QPointF(at, middle), QPointF(at + sample, middle)}), stroke);
        at += sample + gap;
        canvas.text(at, middle + 4 * theme_.textScale, curve.name, TypeRole::Secondary,
                    theme_.neutral().ink);
        at += canvas.widthOf(curve.name, TypeRole::Secondary) + 4 * gap;
    }
}

} // namespace suppertide::ui
