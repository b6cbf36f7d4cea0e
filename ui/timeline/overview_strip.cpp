#include "ui/timeline/overview_strip.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPaintEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

#include "ui/timeline/canvas.h"
#include "ui/timeline/hands_load.h"

namespace suppertide::ui {

namespace {

constexpr Minutes barStep{15};
constexpr double barWidth = 2;
constexpr Minutes keyStep{60};

} // namespace

OverviewStrip::OverviewStrip(const Theme& theme, TextCache& texts, QWidget* parent)
    : QWidget(parent), theme_(theme), texts_(texts)
{
    setObjectName(QStringLiteral("timelineOverview"));
    setAccessibleName(tr("Overview of all days"));
    setToolTip(tr("All days. Drag the frame, or use the arrow keys, to move the view."));
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
}

void OverviewStrip::setTheme(const Theme& theme)
{
    theme_ = theme;
    update();
}

void OverviewStrip::setScene(const Scene& scene)
{
    scene_ = scene;
    hands_ = handsLoad(scene_, barStep);
    update();
}

void OverviewStrip::setView(const Interval& view, double headerWidth)
{
    view_ = view;
    headerWidth_ = headerWidth;
    update();
}

double OverviewStrip::xOf(PlanTime time) const
{
    const double length =
        static_cast<double>(std::max<std::int64_t>(1, scene_.horizon.length().count()));
    const double share = static_cast<double>((time - scene_.horizon.start).count()) / length;
    return headerWidth_ + share * (width() - headerWidth_);
}

PlanTime OverviewStrip::timeAt(double x) const
{
    const double share = (x - headerWidth_) / std::max(1.0, width() - headerWidth_);
    const auto length = static_cast<double>(scene_.horizon.length().count());
    return scene_.horizon.start + Minutes{std::llround(share * length)};
}

void OverviewStrip::paintEvent(QPaintEvent* event)
{
    QPainter painter{this};
    Canvas canvas{painter, theme_, texts_, event->rect()};
    const Neutrals& n = theme_.neutral();
    canvas.fill({0, 0, width() + 0.0, height() + 0.0}, n.paper);
    canvas.hLine(0, width(), 0.5, 1, n.line);
    paintDays(canvas);
    paintHands(canvas);
    for (const SceneServing& serving : scene_.servings) {
        canvas.vLine(xOf(serving.time), 3, foot(), 1.2, n.ink);
    }
    paintClashes(canvas);
    const Box frame{xOf(view_.start), 2, std::min(xOf(view_.end), width() - 1.0), foot()};
    canvas.frame(frame, {theme_.role().selected.colour, 1.8});
    if (hasFocus()) {
        canvas.outline(QPolygonF{toRect(frame.grown(-3))}, {n.ink, 2, {2, 2}});
    }
}

double OverviewStrip::foot() const
{
    return height() - 4.0;
}

void OverviewStrip::paintDays(Canvas& canvas) const
{
    const Neutrals& n = theme_.neutral();
    const double scale = theme_.textScale;
    if (height() >= 28 * scale && !scene_.days.empty()) {
        const QString first = toText(scene_.days.front().shortName).section(QLatin1Char(' '), 0, 0);
        const QString last = toText(scene_.days.back().shortName).section(QLatin1Char(' '), 0, 0);
        constexpr double margin = 10;
        const double room = headerWidth_ - margin - 2;
        const auto line = [&](double baseline, const QString& words, TypeRole role,
                              const QColor& ink) {
            canvas.text(margin, baseline, canvas.elided(words, role, room), role, ink);
        };
        line(12 * scale, first == last ? first : tr("%1 to %2").arg(first, last),
             TypeRole::ControlBold, n.ink);
        line(24 * scale, tr("hands, all cooks"), TypeRole::Secondary, n.ink2);
    }
    for (const DayHeading& day : scene_.days) {
        const double x = std::max(xOf(day.from), headerWidth_);
        canvas.vLine(x, 2, height() - 2, 1, n.line);
        canvas.text(x + 4, 12 * scale, toText(day.shortName), TypeRole::Secondary, n.ink2);
    }
}

void OverviewStrip::paintHands(Canvas& canvas) const
{
    const Neutrals& n = theme_.neutral();
    const int most =
        std::max(100, hands_.empty() ? 0 : *std::max_element(hands_.begin(), hands_.end()));
    for (std::size_t i = 0; i < hands_.size(); ++i) {
        const double x = xOf(scene_.horizon.start + barStep * static_cast<std::int64_t>(i));
        const double bar = std::round((foot() - 10) * hands_[i] / most);
        canvas.fill({x, foot() - bar, x + barWidth, foot()}, n.ink2);
    }
    canvas.hLine(headerWidth_, width(), foot(), 1, n.line);
}

/// The gravest last, so that no other mark hides it.
void OverviewStrip::paintClashes(Canvas& canvas) const
{
    for (const ClashSeverity severity :
         {ClashSeverity::Undesirable, ClashSeverity::Unsafe, ClashSeverity::Impossible}) {
        for (const SceneClash& clash : scene_.clashes) {
            for (const ClashPlace& place : clash.places) {
                if (clash.severity == severity) {
                    const double x = xOf(place.when.start);
                    canvas.fill({x - 3, 3, x + 3, 9}, canvas.roleOf(severity).colour);
                }
            }
        }
    }
}

void OverviewStrip::mousePressEvent(QMouseEvent* event)
{
    const PlanTime at = timeAt(event->position().x());
    // Outside of the frame the view jumps so that its middle is there.
    grabbed_ = view_.contains(at) ? at - view_.start : view_.length() / 2;
    Q_EMIT viewMoved(at - grabbed_);
}

void OverviewStrip::mouseMoveEvent(QMouseEvent* event)
{
    if ((event->buttons() & Qt::LeftButton) != 0) {
        Q_EMIT viewMoved(timeAt(event->position().x()) - grabbed_);
    }
}

void OverviewStrip::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Left:
        Q_EMIT viewMoved(view_.start - keyStep);
        break;
    case Qt::Key_Right:
        Q_EMIT viewMoved(view_.start + keyStep);
        break;
    case Qt::Key_Home:
        Q_EMIT viewMoved(scene_.horizon.start);
        break;
    case Qt::Key_End:
        Q_EMIT viewMoved(scene_.horizon.end - view_.length());
        break;
    default:
        QWidget::keyPressEvent(event);
    }
}

void OverviewStrip::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    update();
}

void OverviewStrip::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    update();
}

} // namespace suppertide::ui
