// TimelineView's mouse: pointing, dragging blocks and flags, panning, zooming, menus.
#include <QApplication>
#include <QContextMenuEvent>
#include <QMouseEvent>
#include <QToolTip>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

#include "ui/timeline/block_words.h"
#include "ui/timeline/target_box.h"
#include "ui/timeline/timeline_parts.h"

namespace suppertide::ui {

namespace {

constexpr double edge = 24; // px from the sides within which a drag scrolls
constexpr double wheelNotch = 120;

Fineness finenessOf(Qt::KeyboardModifiers modifiers)
{
    return (modifiers & Qt::AltModifier) != 0 ? Fineness::Fine : Fineness::Coarse;
}

} // namespace

Target TimelineView::targetUnder(const QPointF& position)
{
    return targetAt(state_.scene(), state_.geometry(), parts_->flags, position.x(), position.y());
}

void TimelineView::hoverAt(const QPointF& position)
{
    Marks marks = marks_;
    marks.hovered = targetUnder(position);
    if (marks.hovered == marks_.hovered) {
        return;
    }
    const bool canBeTaken = std::holds_alternative<BlockTarget>(marks.hovered) ||
                            std::holds_alternative<FlagTarget>(marks.hovered);
    const bool canBeClicked = std::holds_alternative<PleatTarget>(marks.hovered) ||
                              std::holds_alternative<TagTarget>(marks.hovered);
    setCursor(canBeTaken     ? Qt::OpenHandCursor
              : canBeClicked ? Qt::PointingHandCursor
                             : Qt::ArrowCursor);
    QToolTip::hideText();
    parts_->hoverCard->start();
    setMarks(marks);
}

void TimelineView::showHoverCard()
{
    const QString words =
        describe(state_.scene(), marks_.hovered, gesture_->pointer.x(), state_.geometry());
    if (!words.isEmpty()) {
        const QPoint below = gesture_->pointer.toPoint() + QPoint{8, 16};
        QToolTip::showText(mapToGlobal(below), words, this);
    }
}

void TimelineView::mousePressEvent(QMouseEvent* event)
{
    gesture_->pointer = event->position();
    QToolTip::hideText();
    parts_->hoverCard->stop();
    const bool wantsPan = event->button() == Qt::MiddleButton ||
                          (event->button() == Qt::LeftButton && gesture_->isSpaceHeld);
    if (wantsPan) {
        gesture_->now =
            Gesture::Pan{event->position(), state_.viewport().scrollX, state_.viewport().scrollY};
        setCursor(Qt::ClosedHandCursor);
    } else if (event->button() == Qt::LeftButton && paintedArea().contains(event->pos())) {
        gesture_->now = Gesture::Pressed{event->position(), targetUnder(event->position())};
    } else {
        QWidget::mousePressEvent(event);
    }
}

void TimelineView::mouseMoveEvent(QMouseEvent* event)
{
    gesture_->pointer = event->position();
    gesture_->fineness = finenessOf(event->modifiers());
    if (const auto* pan = std::get_if<Gesture::Pan>(&gesture_->now)) {
        const QPointF moved = event->position() - pan->from;
        apply(state_.scrollTo(pan->scrollX - moved.x(), pan->scrollY - moved.y()));
        return;
    }
    if (const auto* pressed = std::get_if<Gesture::Pressed>(&gesture_->now)) {
        const QPointF moved = event->position() - pressed->from;
        if (moved.manhattanLength() >= QApplication::startDragDistance()) {
            beginDrag(pressed->from);
        }
    }
    if (std::holds_alternative<Gesture::Drag>(gesture_->now)) {
        moveDrag(event->position(), gesture_->fineness);
    } else if (std::holds_alternative<Gesture::Idle>(gesture_->now)) {
        hoverAt(event->position());
    }
}

void TimelineView::mouseReleaseEvent(QMouseEvent* event)
{
    if (std::holds_alternative<Gesture::Drag>(gesture_->now)) {
        endDrag();
    } else if (std::holds_alternative<Gesture::Pressed>(gesture_->now)) {
        gesture_->now = Gesture::Idle{};
        clickAt(event->position());
    }
    gesture_->now = Gesture::Idle{};
    setCursor(Qt::ArrowCursor);
    marks_.hovered = {};
    hoverAt(event->position());
}

void TimelineView::clickAt(const QPointF& position)
{
    const Target target = targetUnder(position);
    focusTarget(target);
    if (const auto* block = std::get_if<BlockTarget>(&target)) {
        select(QString::fromStdString(block->id));
        Q_EMIT selectionChanged(selected());
    } else if (const auto* pleat = std::get_if<PleatTarget>(&target)) {
        apply(state_.togglePleat(pleat->start));
    } else if (const auto* tag = std::get_if<TagTarget>(&target)) {
        Q_EMIT clashActivated(tag->clash);
    } else if (!selected().isEmpty()) {
        select({});
        Q_EMIT selectionChanged({});
    }
}

void TimelineView::mouseDoubleClickEvent(QMouseEvent* event)
{
    if (const Target target = targetUnder(event->position());
        std::holds_alternative<BlockTarget>(target)) {
        Q_EMIT activated(QString::fromStdString(std::get<BlockTarget>(target).id));
    }
}

void TimelineView::leaveEvent(QEvent* event)
{
    QWidget::leaveEvent(event);
    parts_->hoverCard->stop();
    Marks marks = marks_;
    marks.hovered = {};
    setMarks(marks);
}

void TimelineView::beginDrag(const QPointF& position)
{
    const auto pressed = std::get<Gesture::Pressed>(gesture_->now);
    const PlanTime at = state_.geometry().timeAt(position.x());
    std::optional<DragPick> pick;
    std::optional<int> course;
    if (const auto* block = std::get_if<BlockTarget>(&pressed.target)) {
        pick = state_.pickBlock(block->id, at);
    } else if (const auto* flag = std::get_if<FlagTarget>(&pressed.target)) {
        course = flag->course;
        pick = state_.pickServing(flag->course, at);
    }
    if (!pick) {
        gesture_->now = Gesture::Idle{};
        return;
    }
    const TaskDrag task{*pick, state_.scene().calendar};
    gesture_->now = Gesture::Drag{task, course, state_.scene()};
    state_.holdPleats(true);
    setCursor(Qt::ClosedHandCursor);
    Marks marks = marks_;
    marks.hovered = {};
    marks.dragged = course ? std::string{} : pick->id;
    setMarks(marks);
    parts_->edgeScroll->start();
    if (course) {
        Q_EMIT servingDragStarted(*course);
    } else {
        Q_EMIT dragStarted(QString::fromStdString(pick->id));
    }
}

void TimelineView::moveDrag(const QPointF& position, Fineness fineness)
{
    auto* drag = std::get_if<Gesture::Drag>(&gesture_->now);
    if (drag == nullptr) {
        return;
    }
    if (std::holds_alternative<PleatTarget>(targetUnder(position))) {
        if (!parts_->pleatOpen->isActive()) {
            parts_->pleatOpen->start();
        }
    } else {
        parts_->pleatOpen->stop();
    }
    const PlanTime before = drag->task.start();
    drag->task.moveTo(state_.geometry().timeAt(position.x()), fineness);
    const PlanTime start = drag->task.start();
    if (start == before) {
        return;
    }
    const std::optional<int> course = drag->course;
    const std::string id = drag->task.pick().id;
    isAnswered_ = false;
    if (course) {
        Q_EMIT servingDragMoved(*course, start);
    } else {
        Q_EMIT dragMoved(QString::fromStdString(id), start);
    }
    if (!isAnswered_) {
        // Nobody knows what follows from the move; at least what is dragged moves.
        apply(state_.setScene(course ? state_.withServingAt(*course, start)
                                     : state_.withBlockAt(id, start)));
    }
}

void TimelineView::endDrag()
{
    const auto drag = std::get<Gesture::Drag>(gesture_->now);
    gesture_->now = Gesture::Idle{};
    parts_->edgeScroll->stop();
    parts_->pleatOpen->stop();
    Marks marks = marks_;
    marks.dragged.clear();
    setMarks(marks);
    const auto move = drag.task.drop();
    isAnswered_ = false;
    if (drag.course) {
        move ? Q_EMIT servingDropped(*drag.course, move->start)
             : Q_EMIT servingDragCancelled(*drag.course);
    } else {
        const QString id = QString::fromStdString(drag.task.pick().id);
        move ? Q_EMIT dropped(id, move->start) : Q_EMIT dragCancelled(id);
    }
    if (!isAnswered_ && !move) {
        apply(state_.setScene(drag.before));
    }
    state_.holdPleats(false);
    apply({true, {}});
}

void TimelineView::cancelDrag()
{
    if (!std::holds_alternative<Gesture::Drag>(gesture_->now)) {
        return;
    }
    const auto drag = std::get<Gesture::Drag>(gesture_->now);
    gesture_->now = Gesture::Idle{};
    parts_->edgeScroll->stop();
    parts_->pleatOpen->stop();
    Marks marks = marks_;
    marks.dragged.clear();
    setMarks(marks);
    apply(state_.setScene(drag.before));
    if (drag.course) {
        Q_EMIT servingDragCancelled(*drag.course);
    } else {
        Q_EMIT dragCancelled(QString::fromStdString(drag.task.pick().id));
    }
    state_.holdPleats(false);
    apply({true, {}});
}

/// In a drag near a side the view steps by the hour.
void TimelineView::scrollAtEdge()
{
    const Geometry& geometry = state_.geometry();
    const double x = gesture_->pointer.x();
    const double hour = geometry.axis().pixelsPerHour();
    double step = 0;
    if (x > geometry.timeRight() - edge) {
        step = hour;
    } else if (x < geometry.timeLeft() + edge) {
        step = -hour;
    }
    if (step != 0) {
        apply(state_.scrollTo(state_.viewport().scrollX + step, state_.viewport().scrollY));
        moveDrag(gesture_->pointer, gesture_->fineness);
    }
}

void TimelineView::openPleatUnderDrag()
{
    if (const auto target = targetUnder(gesture_->pointer);
        std::holds_alternative<PleatTarget>(target)) {
        apply(state_.togglePleat(std::get<PleatTarget>(target).start));
    }
}

void TimelineView::wheelEvent(QWheelEvent* event)
{
    const QPointF notches = QPointF{event->angleDelta()} / wheelNotch;
    const Viewport& view = state_.viewport();
    if ((event->modifiers() & Qt::ControlModifier) != 0) {
        apply(state_.zoomTo(zoomedBy(view.pixelsPerHour, notches.y()), event->position().x()));
    } else {
        // Lanes scroll only if they have to; else the wheel moves through time.
        const bool isAlongTime = (event->modifiers() & Qt::ShiftModifier) != 0 ||
                                 state_.geometry().lanes().scrollRange <= 0;
        const double hour = state_.geometry().axis().pixelsPerHour();
        const double along = isAlongTime ? notches.y() + notches.x() : notches.x();
        const double down = isAlongTime ? 0 : notches.y();
        apply(state_.scrollTo(view.scrollX - along * hour, view.scrollY - down * 52));
    }
    event->accept();
}

void TimelineView::contextMenuEvent(QContextMenuEvent* event)
{
    const bool isByKey = event->reason() == QContextMenuEvent::Keyboard;
    const Target target = isByKey ? marks_.focused : targetUnder(event->pos());
    focusTarget(target);
    QPoint at = event->pos();
    if (isByKey) {
        // The event knows but the widget: the menu belongs beside what has the focus.
        at = placeBeside(target);
    }
    Q_EMIT menuRequested(target, state_.geometry().timeAt(at.x()), mapToGlobal(at));
}

} // namespace suppertide::ui
