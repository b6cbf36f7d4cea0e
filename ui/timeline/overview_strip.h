// OverviewStrip: all days as boxes under the timeline: hands of all cooks as bars, serving lines,
// square marks for clashes, and the view as a frame that can be dragged or moved by arrow keys.
#pragma once

#include <QWidget>

#include "ui/theme/theme.h"
#include "ui/timeline/scene.h"

namespace suppertide::ui {

class Canvas;
class TextCache;

class OverviewStrip : public QWidget
{
    Q_OBJECT

public:
    OverviewStrip(const Theme& theme, TextCache& texts, QWidget* parent);

    void setTheme(const Theme& theme);
    void setScene(const Scene& scene);
    void setView(const Interval& view, double headerWidth);

Q_SIGNALS:
    /// The view is to begin at `start`.
    void viewMoved(suppertide::PlanTime start);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    [[nodiscard]] double xOf(PlanTime time) const;
    [[nodiscard]] PlanTime timeAt(double x) const;
    [[nodiscard]] double foot() const; // y of the bars' bed
    void paintDays(Canvas& canvas) const;
    void paintHands(Canvas& canvas) const;
    void paintClashes(Canvas& canvas) const;

    Theme theme_;
    TextCache& texts_;
    Scene scene_;
    std::vector<int> hands_; // percent of all cooks, each quarter hour of the horizon
    Interval view_;
    double headerWidth_ = 122;
    Minutes grabbed_{0}; // pointer's time after the view's start
};

} // namespace suppertide::ui
