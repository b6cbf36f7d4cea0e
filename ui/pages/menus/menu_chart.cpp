#include "ui/pages/menus/menu_chart.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPaintEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

#include "core/wording/menu_words.h"
#include "ui/timeline/canvas.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr QSize least{220, 200};  // px
constexpr double lineWidth = 1.4; // px
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

/// A dot as a picture, painted once for all that look alike.
QPixmap stamp(double size, const QColor& ground, const QColor& edge, double ratio)
{
    const double side = std::ceil(size + 2 * lineWidth);
    QPixmap dot((QSizeF(side, side) * ratio).toSize());
    dot.setDevicePixelRatio(ratio);
    dot.fill(Qt::transparent);
    QPainter painter(&dot);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(ground);
    painter.setPen(QPen(edge, lineWidth));
    painter.drawEllipse(QPointF(side / 2, side / 2), size / 2, size / 2);
    return dot;
}

} // namespace

MenuChart::MenuChart(const Theme& theme, QWidget* parent) : QWidget(parent), theme_(theme)
{
    setFocusPolicy(Qt::StrongFocus);
    setMinimumSize(least);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void MenuChart::show(std::vector<MenuPoint> points, menus::Figure across, menus::Figure up,
                     std::optional<std::size_t> now)
{
    if (points != points_ || across != across_ || up != up_) {
        points_ = std::move(points);
        across_ = across;
        up_ = up;
        scaleAxes();
        field_ = {};
    }
    now_ = now;
    update();
}

void MenuChart::choose(std::optional<std::size_t> menu)
{
    chosen_ = menu;
    update();
}

void MenuChart::setTheme(const Theme& theme)
{
    theme_ = theme;
    field_ = {};
    update();
}

void MenuChart::scaleAxes()
{
    xs_ = {};
    ys_ = {};
    if (points_.empty()) {
        return;
    }
    const auto [left, right] = std::ranges::minmax(points_, {}, &MenuPoint::x);
    const auto [low, high] = std::ranges::minmax(points_, {}, &MenuPoint::y);
    xs_ = figureScale(across_, left.x, right.x, mostSteps);
    ys_ = figureScale(up_, low.y, high.y, mostSteps);
}

QRectF MenuChart::plot() const
{
    const double left = 62 * theme_.textScale;
    const double top = 22 * theme_.textScale;
    const double foot = 40 * theme_.textScale; // figures, and what they are of
    return {left, top, std::max(1.0, width() - left - 20), std::max(1.0, height() - top - foot)};
}

void MenuChart::paintField()
{
    const double ratio = devicePixelRatioF();
    field_ = QPixmap((QSizeF(size()) * ratio).toSize());
    field_.setDevicePixelRatio(ratio);
    field_.fill(theme_.neutral().paper);
    if (points_.empty()) {
        return;
    }
    QPainter painter(&field_);
    painter.setRenderHint(QPainter::Antialiasing);
    Canvas canvas(painter, theme_, texts_, rect());
    paintGrid(canvas);
    paintFront(painter);
    paintDots(painter);
}

/// What joins the menus that nothing beats.
void MenuChart::paintFront(QPainter& painter) const
{
    QPolygonF front;
    for (const MenuPoint& point : points_) {
        if (point.isUnbeaten) {
            front.push_back(place(point));
        }
    }
    painter.setPen(QPen(theme_.neutral().ink, lineWidth));
    painter.drawPolyline(front);
}

/// Those that nothing beats last, so that no other dot hides one.
void MenuChart::paintDots(QPainter& painter) const
{
    const double ratio = devicePixelRatioF();
    const Neutrals& neutral = theme_.neutral();
    const QPixmap plain = stamp(plainSize, neutral.paper, neutral.ink2, ratio);
    const QPixmap front = stamp(frontSize, neutral.ink, neutral.paper, ratio);
    for (const bool isFront : {false, true}) {
        const QPixmap& dot = isFront ? front : plain;
        const QPointF middle(dot.width() / ratio / 2, dot.height() / ratio / 2);
        for (const MenuPoint& point : points_) {
            if (point.isUnbeaten == isFront) {
                painter.drawPixmap(place(point) - middle, dot);
            }
        }
    }
}

QPointF MenuChart::place(const MenuPoint& point) const
{
    const QRectF area = plot();
    return {area.left() + (point.x - xs_.low) / (xs_.high - xs_.low) * area.width(),
            area.bottom() - (point.y - ys_.low) / (ys_.high - ys_.low) * area.height()};
}

const MenuPoint* MenuChart::find(std::optional<std::size_t> menu) const
{
    const auto found = std::ranges::find_if(
        points_, [&menu](const MenuPoint& point) { return menu && point.menu == *menu; });
    return found == points_.end() ? nullptr : &*found;
}

void MenuChart::paintGrid(Canvas& canvas) const
{
    const QRectF area = plot();
    const double baseline = 4 * theme_.textScale; // from the middle of a figure
    double free = 0;
    for (double value = xs_.low; value <= xs_.high + xs_.step / 2; value += xs_.step) {
        const double x = place({0, value, 0, false}).x();
        canvas.vLine(x, area.top(), area.bottom() + 4, 1, theme_.neutral().rule);
        const QString words = label(across_, value);
        const double wide = canvas.widthOf(words, TypeRole::Secondary);
        if (x - wide / 2 >= free) {
            canvas.text(x, area.bottom() + 15 * theme_.textScale, words, TypeRole::Secondary,
                        theme_.neutral().ink2, TextSide::Around);
            free = x + wide / 2 + gap;
        }
    }
    for (double value = ys_.low; value <= ys_.high + ys_.step / 2; value += ys_.step) {
        const double y = place({0, 0, value, false}).y();
        canvas.hLine(area.left(), area.right(), y, 1, theme_.neutral().rule);
        canvas.text(area.left() - gap, y + baseline, label(up_, value), TypeRole::Secondary,
                    theme_.neutral().ink2, TextSide::LeftOf);
    }
    canvas.hLine(area.left(), area.right(), area.bottom(), 1, theme_.neutral().line);
    canvas.vLine(area.left(), area.top(), area.bottom(), 1, theme_.neutral().line);
    canvas.text(area.right(), area.bottom() + 32 * theme_.textScale, figureName(across_) + u" →"_s,
                TypeRole::SecondaryBold, theme_.neutral().ink, TextSide::LeftOf);
    canvas.text(gap, 13 * theme_.textScale, u"↑ "_s + figureName(up_), TypeRole::SecondaryBold,
                theme_.neutral().ink);
}

void MenuChart::paintEvent(QPaintEvent* event)
{
    if (field_.isNull() || field_.devicePixelRatio() != devicePixelRatioF()) {
        paintField();
    }
    QPainter painter(this);
    painter.drawPixmap(0, 0, field_);
    painter.setRenderHint(QPainter::Antialiasing);
    Canvas canvas(painter, theme_, texts_, event->rect());
    if (const MenuPoint* now = find(now_)) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(theme_.neutral().ink, 1.6));
        painter.drawEllipse(place(*now), ringRadius, ringRadius);
    }
    paintChosen(canvas);
    if (hasFocus()) {
        painter.setPen(QPen(theme_.neutral().ink, 2, Qt::DotLine));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    }
}

/// Lines to both axes, with the two figures at their ends.
void MenuChart::paintChosen(Canvas& canvas) const
{
    const MenuPoint* point = find(chosen_);
    if (point == nullptr) {
        return;
    }
    const QRectF area = plot();
    const QPointF at = place(*point);
    const QColor colour = theme_.role().selected.colour;
    canvas.vLine(at.x(), at.y() + frontSize / 2, area.bottom(), 2, colour);
    canvas.hLine(area.left(), at.x() - frontSize / 2, at.y(), 2, colour);
    canvas.ring(at.x(), at.y(), frontSize / 2 + 1,
                point->isUnbeaten ? theme_.neutral().ink : theme_.neutral().paper, {colour, 2.2});
    const QString words = label(across_, point->x) + u" · "_s + label(up_, point->y);
    const double wide = canvas.widthOf(words, TypeRole::SecondaryBold);
    const double x = std::min(at.x() + frontSize, area.right() - wide);
    canvas.haloText(x, std::max(at.y() - frontSize, area.top() + 10), words,
                    TypeRole::SecondaryBold, theme_.neutral().ink, theme_.neutral().paper);
}

void MenuChart::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    field_ = {};
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
        QWidget::keyPressEvent(event);
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

} // namespace suppertide::ui
