// MenuChart: the compared menus by two figures, a dot each. Menus that nothing beats in both are
// filled, larger and joined by a line; the menu that is cooked now has a ring, the chosen one a
// cross of lines to both axes. By click and by arrow keys a menu is chosen. Ten thousand dots are
// stamped onto a picture that is kept until they change, so that choosing repaints none of them.
#pragma once

#include <QPixmap>
#include <QWidget>

#include <optional>

#include "ui/models/figure_scale.h"
#include "ui/models/menu_comparison.h"
#include "ui/theme/theme.h"
#include "ui/timeline/text_cache.h"

namespace suppertide::ui {

class Canvas;

class MenuChart : public QWidget
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
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void scaleAxes();
    void paintField();
    void paintGrid(Canvas& canvas) const;
    void paintFront(QPainter& painter) const;
    void paintDots(QPainter& painter) const;
    void paintChosen(Canvas& canvas) const;
    [[nodiscard]] QRectF plot() const;
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
    QPixmap field_; // axes and dots; null: to be painted anew
    TextCache texts_;
};

} // namespace suppertide::ui
