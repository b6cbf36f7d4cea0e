// TimelineView: the painted timeline with its scroll bars and the overview under it. It shows a
// Scene and turns what the user does into signals; it changes nothing of the plan itself. Each
// event is translated into a call of TimelineState or of a drag value; see there for what happens.
//
// A drag: dragStarted, then dragMoved at every move, answered at once (or not) by setScene with a
// preview; then dropped, or dragCancelled, after which the owner sets the scene that then holds.
// An arrow key with Alt moves the step with the focus: dropped, without the others.
#pragma once

#include <QWidget>

#include <memory>
#include <optional>
#include <variant>

#include "ui/theme/theme.h"
#include "ui/timeline/timeline_state.h"
#include "ui/timeline/variant_mime.h"

class QPushButton;
class QScrollBar;
class QTimer;

namespace suppertide::ui {

class EmptyNote;
class OverviewStrip;
class TextCache;

class TimelineView : public QWidget
{
    Q_OBJECT

public:
    explicit TimelineView(const Theme& theme, QWidget* parent = nullptr);
    ~TimelineView() override;

    void setScene(Scene scene);
    void setTheme(const Theme& theme);
    [[nodiscard]] const TimelineState& state() const { return state_; }

    /// Empty: nothing is selected. Does not signal.
    void select(const QString& taskId);
    [[nodiscard]] QString selected() const;
    /// A clash pointed at in the list: a line between its tags.
    void pointAtClash(std::optional<int> number);

    void zoomTo(ZoomStop stop);
    void zoomBy(int notches);
    void showTime(const Interval& when);
    /// As TimelineState::showEvening.
    void showEvening();
    /// Scrolls to a step and gives it the focus.
    void showTask(const QString& taskId);
    void focusTarget(const Target& target);
    void moveFocusedBy(int steps);
    /// Under a step's block, for what is said of it; on the screen.
    [[nodiscard]] QPoint besideTask(const QString& taskId) const;

    /// What is said while the scene has no blocks, and the one button under it.
    void setEmptyNote(const QString& sentence, const QString& button);

    /// Where the lanes are painted: all but scroll bars and overview.
    [[nodiscard]] QRect paintedArea() const;

Q_SIGNALS:
    void selectionChanged(const QString& taskId);
    void activated(const QString& taskId);

    void dragStarted(const QString& taskId);
    void dragMoved(const QString& taskId, suppertide::PlanTime start);
    void dropped(const QString& taskId, suppertide::PlanTime start);
    void dragCancelled(const QString& taskId);

    void servingDragStarted(int course);
    void servingDragMoved(int course, suppertide::PlanTime time);
    void servingDropped(int course, suppertide::PlanTime time);
    void servingDragCancelled(int course);

    /// `course`: the one whose line is nearest to the pointer.
    void variantEntered(const suppertide::ui::DraggedVariant& variant, int course);
    void variantMoved(const suppertide::ui::DraggedVariant& variant, int course);
    void variantDropped(const suppertide::ui::DraggedVariant& variant, int course);
    void variantLeft();

    void pinRequested(const QString& taskId);
    void whyRequested(const QString& taskId);
    void removeRequested(const QString& taskId);
    void clashActivated(int number);
    void menuRequested(const suppertide::ui::Target& target, suppertide::PlanTime time,
                       const QPoint& globalPosition);
    void zoomChanged(double pixelsPerHour);
    void emptyNoteTriggered();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dragMoveEvent(QDragMoveEvent* event) override;
    void dragLeaveEvent(QDragLeaveEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    struct Parts;   // child widgets and timers
    struct Gesture; // what the pressed mouse button is doing

    void apply(const Damage& damage);
    void followScroll();
    void placeParts();
    void retext();
    void setMarks(const Marks& marks);
    [[nodiscard]] QPoint placeBeside(const Target& target) const;
    [[nodiscard]] Target targetUnder(const QPointF& position);
    void hoverAt(const QPointF& position);
    void showHoverCard();
    void clickAt(const QPointF& position);

    void beginDrag(const QPointF& position);
    void moveDrag(const QPointF& position, Fineness fineness);
    void endDrag();
    void cancelDrag();
    void scrollAtEdge();
    void openPleatUnderDrag();

    [[nodiscard]] bool zoomWithKey(const QKeyEvent& event);
    [[nodiscard]] bool moveWithKey(const QKeyEvent& event);
    [[nodiscard]] bool actWithKey(const QKeyEvent& event);
    void activateFocused();

    TimelineState state_;
    Theme theme_;
    std::unique_ptr<TextCache> texts_;
    std::unique_ptr<Parts> parts_;
    std::unique_ptr<Gesture> gesture_;
    std::optional<DraggedVariant> variant_; // over the timeline
    Marks marks_;
    bool isAnswered_ = false; // the owner set a scene while a signal of a drag was out
};

} // namespace suppertide::ui
