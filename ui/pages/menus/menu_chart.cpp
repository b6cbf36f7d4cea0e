#include "ui/pages/menus/menu_chart.h"

#include <QChart>
#include <QGraphicsLayout>
#include <QKeyEvent>
#include <QLegend>
#include <QLineSeries>
#include <QMouseEvent>
#include <QScatterSeries>
#include <QValueAxis>

#include <algorithm>
#include <cmath>

#include "core/wording/menu_words.h"
#include "ui/timeline/canvas.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr QSize least{220, 200};  // px
constexpr double plainSize = 8;   // px across
constexpr double frontSize = 13;  // px, of a menu that nothing beats
constexpr double ringRadius = 10; // px, of the menu that is cooked now
constexpr double reach = 14;      // px from a dot that a click still takes it
constexpr int mostSteps = 6;
constexpr double gap = 4; // px between words and what they are about

QString label(menus::Figure figure, double value)
{
    return QString::fromStdString(figureText(figure, std::lround(value)));
}

} // namespace

MenuChart::MenuChart(const Theme& theme, QWidget* parent)
    : QChartView(parent), theme_(theme), xAxis_(new QValueAxis(this)), yAxis_(new QValueAxis(this))
{
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::StrongFocus);
    setMinimumSize(least);
    setRenderHint(QPainter::Antialiasing);
    setViewportUpdateMode(QGraphicsView::FullViewportUpdate);
    chart()->legend()->hide();
    chart()->setBackgroundVisible(false);
    chart()->setMargins({});
    chart()->layout()->setContentsMargins(0, 0, 0, 0);
    chart()->addAxis(xAxis_, Qt::AlignBottom);
    chart()->addAxis(yAxis_, Qt::AlignLeft);
    // Painted in the figures' own units.
    for (QValueAxis* axis : {xAxis_, yAxis_}) {
        axis->setLabelsVisible(false);
        axis->setGridLineVisible(false);
        axis->setLineVisible(false);
    }
}

void MenuChart::show(std::vector<MenuPoint> points, menus::Figure across, menus::Figure up,
                     std::optional<std::size_t> now)
{
    points_ = std::move(points);
    across_ = across;
    up_ = up;
    now_ = now;
    makeSeries();
    layOut();
}

void MenuChart::choose(std::optional<std::size_t> menu)
{
    chosen_ = menu;
    viewport()->update();
}

void MenuChart::setTheme(const Theme& theme)
{
    theme_ = theme;
    makeSeries();
    layOut();
}

void MenuChart::makeSeries()
{
    chart()->removeAllSeries();
    xs_ = {};
    ys_ = {};
    if (points_.empty()) {
        viewport()->update();
        return;
    }
    const auto [left, right] = std::ranges::minmax(points_, {}, &MenuPoint::x);
    const auto [low, high] = std::ranges::minmax(points_, {}, &MenuPoint::y);
    xs_ = figureScale(across_, left.x, right.x, mostSteps);
    ys_ = figureScale(up_, low.y, high.y, mostSteps);
    xAxis_->setRange(xs_.low, xs_.high);
    yAxis_->setRange(ys_.low, ys_.high);
    auto* line = new QLineSeries;
    auto* plain = new QScatterSeries;
    auto* front = new QScatterSeries;
    line->setName(tr("joins the menus that nothing beats"));
    plain->setName(tr("other menus"));
    front->setName(tr("menus that nothing beats"));
    for (const MenuPoint& point : points_) {
        (point.isUnbeaten ? front : plain)->append(point.x, point.y);
        if (point.isUnbeaten) {
            line->append(point.x, point.y);
        }
    }
    line->setPen(QPen(theme_.neutral().ink, 1.4));
    plain->setMarkerSize(plainSize);
    plain->setBrush(theme_.neutral().paper);
    plain->setPen(QPen(theme_.neutral().ink2, 1.4));
    front->setMarkerSize(frontSize);
    front->setBrush(theme_.neutral().ink);
    front->setPen(QPen(theme_.neutral().paper, 1.4));
    for (QXYSeries* series : std::initializer_list<QXYSeries*>{line, plain, front}) {
        chart()->addSeries(series);
        series->attachAxis(xAxis_);
        series->attachAxis(yAxis_);
    }
}

void MenuChart::layOut()
{
    const double left = 62 * theme_.textScale;
    const double top = 22 * theme_.textScale;
    const double foot = 40 * theme_.textScale; // figures, and what they are of
    chart()->setPlotArea(QRectF(left, top, std::max(1.0, width() - left - 20),
                                std::max(1.0, height() - top - foot)));
    viewport()->update();
}

QPointF MenuChart::place(const MenuPoint& point) const
{
    const QRectF plot = chart()->plotArea();
    return {plot.left() + (point.x - xs_.low) / (xs_.high - xs_.low) * plot.width(),
            plot.bottom() - (point.y - ys_.low) / (ys_.high - ys_.low) * plot.height()};
}

const MenuPoint* MenuChart::find(std::optional<std::size_t> menu) const
{
    const auto found = std::ranges::find_if(
        points_, [&menu](const MenuPoint& point) { return menu && point.menu == *menu; });
    return found == points_.end() ? nullptr : &*found;
}

void MenuChart::drawBackground(QPainter* painter, const QRectF& rect)
{
    painter->fillRect(rect, theme_.neutral().paper);
    if (points_.empty()) {
        return;
    }
    Canvas canvas(*painter, theme_, texts_, rect);
    paintGrid(canvas);
}

void MenuChart::paintGrid(Canvas& canvas) const
{
    const QRectF plot = chart()->plotArea();
    const double baseline = 4 * theme_.textScale; // from the middle of a figure
    double free = 0;
    for (double value = xs_.low; value <= xs_.high + xs_.step / 2; value += xs_.step) {
        const double x = place({0, value, 0, false}).x();
        canvas.vLine(x, plot.top(), plot.bottom() + 4, 1, theme_.neutral().rule);
        const QString words = label(across_, value);
        const double wide = canvas.widthOf(words, TypeRole::Secondary);
        if (x - wide / 2 >= free) {
            canvas.text(x, plot.bottom() + 15 * theme_.textScale, words, TypeRole::Secondary,
                        theme_.neutral().ink2, TextSide::Around);
            free = x + wide / 2 + gap;
        }
    }
    for (double value = ys_.low; value <= ys_.high + ys_.step / 2; value += ys_.step) {
        const double y = place({0, 0, value, false}).y();
        canvas.hLine(plot.left(), plot.right(), y, 1, theme_.neutral().rule);
        canvas.text(plot.left() - gap, y + baseline, label(up_, value), TypeRole::Secondary,
                    theme_.neutral().ink2, TextSide::LeftOf);
    }
    canvas.hLine(plot.left(), plot.right(), plot.bottom(), 1, theme_.neutral().line);
    canvas.vLine(plot.left(), plot.top(), plot.bottom(), 1, theme_.neutral().line);
    canvas.text(plot.right(), plot.bottom() + 32 * theme_.textScale, figureName(across_) + u" →"_s,
                TypeRole::SecondaryBold, theme_.neutral().ink, TextSide::LeftOf);
    canvas.text(gap, 13 * theme_.textScale, u"↑ "_s + figureName(up_), TypeRole::SecondaryBold,
                theme_.neutral().ink);
}

void MenuChart::drawForeground(QPainter* painter, const QRectF& rect)
{
    Canvas canvas(*painter, theme_, texts_, rect);
    if (const MenuPoint* now = find(now_)) {
        const QPointF at = place(*now);
        painter->setBrush(Qt::NoBrush);
        painter->setPen(QPen(theme_.neutral().ink, 1.6));
        painter->drawEllipse(at, ringRadius, ringRadius);
    }
    paintChosen(canvas);
    if (hasFocus()) {
        painter->setPen(QPen(theme_.neutral().ink, 2, Qt::DotLine));
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(QRectF(viewport()->rect()).adjusted(1, 1, -1, -1));
    }
}

/// Lines to both axes, with the two figures at their ends.
void MenuChart::paintChosen(Canvas& canvas) const
{
    const MenuPoint* point = find(chosen_);
    if (point == nullptr) {
        return;
    }
    const QRectF plot = chart()->plotArea();
    const QPointF at = place(*point);
    const QColor colour = theme_.role().selected.colour;
    canvas.vLine(at.x(), at.y() + frontSize / 2, plot.bottom(), 2, colour);
    canvas.hLine(plot.left(), at.x() - frontSize / 2, at.y(), 2, colour);
    canvas.ring(at.x(), at.y(), frontSize / 2 + 1,
                point->isUnbeaten ? theme_.neutral().ink : theme_.neutral().paper, {colour, 2.2});
    const QString words = label(across_, point->x) + u" · "_s + label(up_, point->y);
    const double wide = canvas.widthOf(words, TypeRole::SecondaryBold);
    const double x = std::min(at.x() + frontSize, plot.right() - wide);
    canvas.haloText(x, std::max(at.y() - frontSize, plot.top() + 10), words,
                    TypeRole::SecondaryBold, theme_.neutral().ink, theme_.neutral().paper);
}

void MenuChart::resizeEvent(QResizeEvent* event)
{
    QChartView::resizeEvent(event);
    layOut();
}

void MenuChart::mousePressEvent(QMouseEvent* event)
{
    if (event->button() != Qt::LeftButton) {
        return;
    }
    setFocus(Qt::MouseFocusReason);
    const MenuPoint* nearest = nullptr;
    double nearestBy = reach;
    for (const MenuPoint& point : points_) {
        const QPointF away = place(point) - event->position();
        const double by = std::hypot(away.x(), away.y());
        if (by < nearestBy) {
            nearest = &point;
            nearestBy = by;
        }
    }
    if (nearest != nullptr) {
        Q_EMIT chosen(static_cast<int>(nearest->menu));
    }
}

/// Left and right go from menu to menu along the figure across; up and down along those that
/// nothing beats.
void MenuChart::keyPressEvent(QKeyEvent* event)
{
    std::vector<const MenuPoint*> ways;
    const bool isFront = event->key() == Qt::Key_Up || event->key() == Qt::Key_Down;
    const bool isOn = event->key() == Qt::Key_Right || event->key() == Qt::Key_Down;
    if (!isFront && event->key() != Qt::Key_Left && event->key() != Qt::Key_Right) {
        QChartView::keyPressEvent(event);
        return;
    }
    for (const MenuPoint& point : points_) {
        if (!isFront || point.isUnbeaten) {
            ways.push_back(&point);
        }
    }
    event->accept();
    if (ways.empty()) {
        return;
    }
    const auto here = std::ranges::find(ways, find(chosen_));
    const auto count = static_cast<std::ptrdiff_t>(ways.size());
    const std::ptrdiff_t from = here == ways.end() ? (isOn ? -1 : count) : here - ways.begin();
    const auto to = std::clamp<std::ptrdiff_t>(from + (isOn ? 1 : -1), 0, count - 1);
    Q_EMIT chosen(static_cast<int>(ways[static_cast<std::size_t>(to)]->menu));
}

void MenuChart::focusInEvent(QFocusEvent* event)
{
    QChartView::focusInEvent(event);
    viewport()->update();
}

void MenuChart::focusOutEvent(QFocusEvent* event)
{
    QChartView::focusOutEvent(event);
    viewport()->update();
}

} // namespace suppertide::ui
