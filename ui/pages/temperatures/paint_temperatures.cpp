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

QString dayName(const CivilDate& date)
{
    return QString::fromStdString(dayText(date));
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
        const QString figure = (degrees < 0 ? u"−"_s : QString()) +
                               QString::number(std::abs(degrees)) +
                               (i == steps ? u" °C"_s : u"°"_s);
        canvas.text(plot().left() - gap, y(degrees) + 4 * theme_.textScale, figure,
                    TypeRole::Secondary, theme_.neutral().ink2, TextSide::LeftOf);
    }
    canvas.hLine(plot().left(), plot().right(), plot().bottom(), 1, theme_.neutral().line);
    canvas.vLine(plot().left(), plot().top(), plot().bottom(), 1, theme_.neutral().line);
}

void TemperatureChart::paintCounted(Canvas& canvas) const
{
    for (const TemperatureBar& bar : view_.bars) {
        const double left = std::max(x(bar.from), plot().left());
        const double right = std::min(std::max(x(bar.to), x(bar.from) + 2), plot().right());
        if (bar.kind == BarKind::Finding && left < right) {
            canvas.hatch({left, plot().top(), right, plot().bottom()}, shown(bar.severity));
        }
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
    const QColor colour = canvas.roleOf(severity).colour;
    canvas.hLine(left, std::max(right, left + 2), bottom - 1, 2, colour);
    canvas.vLine(left, bottom - 5, bottom, 1.6, colour);
    canvas.vLine(std::max(right, left + 2), bottom - 5, bottom, 1.6, colour);
    constexpr double tag = 16; // px
    const double room = plot().width();
    const QString label = canvas.elided(bar.label, TypeRole::SecondaryBold, room - tag - 2 * gap);
    const double wide = tag + gap + canvas.widthOf(label, TypeRole::SecondaryBold);
    const double at =
        std::clamp(left, plot().left(), std::max(plot().left(), plot().right() - wide));
    paintTag(canvas, at + tag / 2, (top + bottom) / 2 - 1, bar.clash, severity);
    canvas.haloText(at + tag + gap, baseline - 1, label, TypeRole::SecondaryBold,
                    theme_.neutral().ink, theme_.neutral().paper);
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
    double free = plot().left() - wide / 2;
    double dayFree = 0;
    for (const TimeTick& tick : ticks) {
        const double at = x(static_cast<double>(minuteOf(tick.time)));
        canvas.vLine(at, plot().bottom(), plot().bottom() + (tick.isDay ? 7 : 4), 1,
                     theme_.neutral().line);
        if (at - wide / 2 >= free && at + wide / 2 <= width() + gap) {
            canvas.text(at, hours, QString::fromStdString(toIso(tick.civil.clock)),
                        TypeRole::Secondary, theme_.neutral().ink, TextSide::Around);
            free = at + wide / 2 - gap;
        }
        if (!tick.isDay) {
            continue;
        }
        const QString name = dayName(tick.civil.date);
        const double nameWidth = canvas.widthOf(name, TypeRole::Day);
        const double nameAt = std::min(at - wide / 2 + gap, width() - nameWidth - gap);
        if (nameAt >= dayFree) {
            canvas.text(nameAt, hours + rowHeight() - 2, name, TypeRole::Day, theme_.neutral().ink);
            dayFree = nameAt + nameWidth + 2 * gap;
        }
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
