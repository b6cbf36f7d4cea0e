#include "ui/pages/temperatures/temperature_chart.h"

#include <QChart>
#include <QGraphicsLayout>
#include <QKeyEvent>
#include <QLegend>
#include <QLineSeries>
#include <QValueAxis>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr QSize least{240, 240}; // px: less has no room for curves beside their words
constexpr double side = 8;       // px, free at the right

} // namespace

TemperatureChart::TemperatureChart(const Theme& theme, QWidget* parent)
    : QChartView(parent), theme_(theme), time_(new QValueAxis(this)), celsius_(new QValueAxis(this))
{
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::StrongFocus);
    setMinimumSize(least);
    setRenderHint(QPainter::Antialiasing);
    // What is painted under and over the curves reaches beyond them.
    setViewportUpdateMode(QGraphicsView::FullViewportUpdate);
    chart()->legend()->hide();
    chart()->setBackgroundVisible(false);
    chart()->setMargins({});
    chart()->layout()->setContentsMargins(0, 0, 0, 0);
    chart()->addAxis(time_, Qt::AlignBottom);
    chart()->addAxis(celsius_, Qt::AlignLeft);
    // Ticks are painted by the clock of the occasion, which Qt's time axis does not know.
    for (QValueAxis* axis : {time_, celsius_}) {
        axis->setLabelsVisible(false);
        axis->setGridLineVisible(false);
        axis->setLineVisible(false);
    }
}

void TemperatureChart::show(const TemperatureView& view)
{
    if (view == view_) {
        return;
    }
    const bool isSame = view.key == view_.key;
    view_ = view;
    if (isSame) {
        window_.setWhole(view.from, view.to);
    } else {
        window_ = TimeWindow(view.from, view.to);
    }
    makeSeries();
    layOut();
}

void TemperatureChart::setTheme(const Theme& theme)
{
    theme_ = theme;
    makeSeries();
    layOut();
}

void TemperatureChart::makeSeries()
{
    chart()->removeAllSeries();
    double lowest = 0;
    double highest = 30;
    for (const TemperatureCurve& curve : view_.curves) {
        QPen pen(curve.isDashed ? theme_.neutral().heatLine : theme_.neutral().ink);
        pen.setWidthF(curve.isDashed ? 1.6 : 2.2);
        if (curve.isDashed) {
            pen.setDashPattern({5, 3});
            pen.setCapStyle(Qt::FlatCap);
        }
        for (const auto& run : curve.runs) {
            auto* series = new QLineSeries;
            series->setName(curve.name);
            series->setPen(pen);
            QList<QPointF> points;
            points.reserve(static_cast<qsizetype>(run.size()));
            for (const CurvePoint& point : run) {
                points.push_back({point.minute, point.celsius});
                lowest = std::min(lowest, point.celsius);
                highest = std::max(highest, point.celsius);
            }
            series->replace(points);
            chart()->addSeries(series);
            series->attachAxis(time_);
            series->attachAxis(celsius_);
        }
    }
    for (const LimitLine& limit : view_.limits) {
        lowest = std::min(lowest, limit.celsius);
        highest = std::max(highest, limit.celsius);
    }
    for (const LimitBand& band : view_.bands) {
        highest = std::max(highest, band.high);
    }
    constexpr int mostSteps = 7;
    degrees_ = view_.isFahrenheit ? fahrenheitScale(lowest, highest, mostSteps)
                                  : degreeScale(lowest, highest, mostSteps);
    celsius_->setRange(degrees_.low, degrees_.high);
}

double TemperatureChart::rowHeight() const
{
    return std::ceil(20 * theme_.textScale); // px: a tag of 16 px, and its triangle stands out by 2
}

int TemperatureChart::rows() const
{
    int rows = 0;
    for (const TemperatureBar& bar : view_.bars) {
        rows = std::max(rows, bar.row + 1);
    }
    return rows;
}

void TemperatureChart::layOut()
{
    const double left = 38 * theme_.textScale;
    const double top = rows() * rowHeight() + 8;
    const double foot = 3 * rowHeight(); // hours, days, legend
    const QRectF area(left, top, std::max(1.0, width() - left - side),
                      std::max(1.0, height() - top - foot));
    chart()->setPlotArea(area);
    showWindow();
}

void TemperatureChart::showWindow()
{
    time_->setRange(window_.from(), window_.to());
    viewport()->update();
}

QRectF TemperatureChart::plot() const
{
    return chart()->plotArea();
}

double TemperatureChart::x(double minute) const
{
    return plot().left() + (minute - window_.from()) / window_.length() * plot().width();
}

double TemperatureChart::y(double celsius) const
{
    return plot().bottom() -
           (celsius - degrees_.low) / (degrees_.high - degrees_.low) * plot().height();
}

double TemperatureChart::minuteAt(double x) const
{
    return window_.from() + (x - plot().left()) / plot().width() * window_.length();
}

void TemperatureChart::resizeEvent(QResizeEvent* event)
{
    QChartView::resizeEvent(event);
    layOut();
}

void TemperatureChart::wheelEvent(QWheelEvent* event)
{
    constexpr double notch = 120; // of angleDelta
    constexpr double perNotch = 0.8;
    const QPoint turned = event->angleDelta();
    if (event->modifiers().testFlag(Qt::ShiftModifier) || turned.y() == 0) {
        constexpr double part = 0.1;
        window_.move(-(turned.x() + turned.y()) / notch * part * window_.length());
    } else {
        window_.zoom(std::pow(perNotch, turned.y() / notch), minuteAt(event->position().x()));
    }
    showWindow();
    event->accept();
}

void TemperatureChart::mousePressEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton) {
        setFocus(Qt::MouseFocusReason);
        draggedFrom_ = event->position().x();
        viewport()->setCursor(Qt::ClosedHandCursor);
    }
}

void TemperatureChart::mouseMoveEvent(QMouseEvent* event)
{
    if (draggedFrom_) {
        window_.move((*draggedFrom_ - event->position().x()) / plot().width() * window_.length());
        draggedFrom_ = event->position().x();
        showWindow();
    }
}

void TemperatureChart::mouseReleaseEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton) {
        draggedFrom_.reset();
        viewport()->unsetCursor();
    }
}

void TemperatureChart::zoom(double factor)
{
    window_.zoom(factor, (window_.from() + window_.to()) / 2);
    showWindow();
}

void TemperatureChart::showAll()
{
    window_.showAll();
    showWindow();
}

void TemperatureChart::keyPressEvent(QKeyEvent* event)
{
    constexpr double closer = 0.7;
    constexpr double part = 0.15;
    switch (event->key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        zoom(closer);
        break;
    case Qt::Key_Minus:
        zoom(1 / closer);
        break;
    case Qt::Key_Left:
        window_.move(-part * window_.length());
        break;
    case Qt::Key_Right:
        window_.move(part * window_.length());
        break;
    case Qt::Key_Home:
        window_.showAll();
        break;
    default:
        QChartView::keyPressEvent(event);
        return;
    }
    showWindow();
    event->accept();
}

void TemperatureChart::focusInEvent(QFocusEvent* event)
{
    QChartView::focusInEvent(event);
    viewport()->update();
}

void TemperatureChart::focusOutEvent(QFocusEvent* event)
{
    QChartView::focusOutEvent(event);
    viewport()->update();
}

} // namespace suppertide::ui
