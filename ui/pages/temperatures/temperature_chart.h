// TemperatureChart: draws a TemperatureView: curves by Qt Charts, and over and under them limits,
// zones, stays, the minutes that count, and the time of the occasion's clock. Zoomed and moved by
// wheel, drag and keys; everything is written on the thing that it is about.
#pragma once

#include <QChartView>

#include "ui/models/chart_scale.h"
#include "ui/models/temperature_view.h"
#include "ui/theme/theme.h"
#include "ui/timeline/text_cache.h"

class QValueAxis;

namespace suppertide::ui {

class Canvas;

class TemperatureChart : public QChartView
{
    Q_OBJECT

public:
    explicit TemperatureChart(const Theme& theme, QWidget* parent = nullptr);

    /// Of the subject that is shown already the same minutes stay in view.
    void show(const TemperatureView& view);
    void setTheme(const Theme& theme);
    /// More minutes in the same width if `factor` is above 1, around the middle.
    void zoom(double factor);
    void showAll();
    [[nodiscard]] const TimeWindow& timeWindow() const { return window_; }
    [[nodiscard]] const TemperatureView& view() const { return view_; }

protected:
    void drawBackground(QPainter* painter, const QRectF& rect) override;
    void drawForeground(QPainter* painter, const QRectF& rect) override;
    void resizeEvent(QResizeEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void makeSeries();
    void layOut();
    void showWindow();
    [[nodiscard]] double rowHeight() const;
    [[nodiscard]] int rows() const;
    [[nodiscard]] QRectF plot() const;
    [[nodiscard]] double x(double minute) const;
    [[nodiscard]] double y(double celsius) const;
    [[nodiscard]] double minuteAt(double x) const;
    void paintZones(Canvas& canvas) const;
    void paintGrid(Canvas& canvas) const;
    void paintCounted(Canvas& canvas) const;
    void paintBars(Canvas& canvas) const;
    void paintBar(Canvas& canvas, const TemperatureBar& bar) const;
    void paintLimits(Canvas& canvas) const;
    void paintTimes(Canvas& canvas) const;
    void paintDays(Canvas& canvas, const std::vector<TimeTick>& ticks, double baseline) const;
    void paintLegend(Canvas& canvas) const;

    Theme theme_;
    TemperatureView view_;
    TimeWindow window_;
    DegreeScale degrees_;
    QValueAxis* time_;
    QValueAxis* celsius_;
    TextCache texts_;
    std::optional<double> draggedFrom_; // px
};

} // namespace suppertide::ui
