// MenuChart: the compared menus by two figures, a dot each (Qt Charts). Menus that nothing beats in
// both are filled, larger and joined by a line; the menu that is cooked now has a ring, the chosen
// one a cross of lines to both axes. By click and by arrow keys a menu is chosen.
#pragma once

#include <QChartView>

#include <optional>

#include "ui/models/figure_scale.h"
#include "ui/models/menu_comparison.h"
#include "ui/theme/theme.h"
#include "ui/timeline/text_cache.h"

class QScatterSeries;
class QLineSeries;
class QValueAxis;

namespace suppertide::ui {

class Canvas;

class MenuChart : public QChartView
{
    Q_OBJECT

public:
    explicit MenuChart(const Theme& theme, QWidget* parent = nullptr);

    /// `now`: the menu that is cooked as the occasion stands.
    void show(std::vector<MenuPoint> points, menus::Figure across, menus::Figure up,
              std::optional<std::size_t> now);
    void choose(std::optional<std::size_t> menu);
    void setTheme(const Theme& theme);
    [[nodiscard]] const std::vector<MenuPoint>& points() const { return points_; }

Q_SIGNALS:
    void chosen(int menu);

protected:
    void drawBackground(QPainter* painter, const QRectF& rect) override;
    void drawForeground(QPainter* painter, const QRectF& rect) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void makeSeries();
    void layOut();
    void paintGrid(Canvas& canvas) const;
    void paintChosen(Canvas& canvas) const;
    [[nodiscard]] QPointF place(const MenuPoint& point) const;
    [[nodiscard]] const MenuPoint* find(std::optional<std::size_t> menu) const;

    Theme theme_;
    std::vector<MenuPoint> points_;
    menus::Figure across_ = menus::Figure::HandsOn;
    menus::Figure up_ = menus::Figure::LastHour;
    std::optional<std::size_t> now_;
    std::optional<std::size_t> chosen_;
    FigureScale xs_;
    FigureScale ys_;
    QValueAxis* xAxis_;
    QValueAxis* yAxis_;
    TextCache texts_;
};

} // namespace suppertide::ui
