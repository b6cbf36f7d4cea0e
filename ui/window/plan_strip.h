// PlanStrip: the row under the timeline that is always there: how the plan stands, its figures, and
// beside them those of a plan that is offered, with the buttons to take or to leave it. It has room
// for all of that from the start, so that nothing moves when an offer comes.
#pragma once

#include <QWidget>

#include <vector>

#include "ui/models/plan_words.h"
#include "ui/theme/theme.h"

class QHBoxLayout;
class QPushButton;

namespace suppertide::ui {

class TwoLineLabel;

enum class StripState
{
    Plain,
    Searching,
    Offer,
    Stale // the evening has changed since it was planned
};

struct StripContent
{
    StripState state = StripState::Plain;
    QString sentence;
    std::vector<FigureCell> cells;
};

class PlanStrip : public QWidget
{
    Q_OBJECT

public:
    explicit PlanStrip(const Theme& theme, QWidget* parent = nullptr);

    void show(StripContent next);
    void setTheme(const Theme& theme);
    [[nodiscard]] QString sentence() const { return content_.sentence; }
    /// Whether the offered plan is shown on the timeline.
    [[nodiscard]] bool isLooking() const;
    [[nodiscard]] const StripContent& content() const { return content_; }

Q_SIGNALS:
    void taken();
    void left();
    void lookedAt(bool isLooking); // at the offered plan, on the timeline
    void planRequested();
    void stopRequested();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void makeButtons(QHBoxLayout& row);
    void showCells();
    void giveWay();
    [[nodiscard]] static int widthOf(const QWidget& cell);

    Theme theme_;
    StripContent content_;
    TwoLineLabel* sentence_;
    QWidget* figures_;
    std::vector<QWidget*> cells_; // a label over a value each
    QPushButton* look_;
    QPushButton* take_;
    QPushButton* leave_;
    QPushButton* plan_;
    QPushButton* stop_;
};

} // namespace suppertide::ui
