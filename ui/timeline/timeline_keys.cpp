// TimelineView's keyboard: focus among blocks, selecting, moving, zooming.
#include <QAccessible>
#include <QFocusEvent>
#include <QKeyEvent>

#include <algorithm>

#include "ui/timeline/target_box.h"
#include "ui/timeline/timeline_accessible.h"
#include "ui/timeline/timeline_parts.h"

namespace suppertide::ui {

namespace {

std::optional<FocusMove> focusMoveOf(int key)
{
    switch (key) {
    case Qt::Key_Left:
        return FocusMove::Earlier;
    case Qt::Key_Right:
        return FocusMove::Later;
    case Qt::Key_Up:
        return FocusMove::Up;
    case Qt::Key_Down:
        return FocusMove::Down;
    case Qt::Key_Home:
        return FocusMove::First;
    case Qt::Key_End:
        return FocusMove::Last;
    default:
        return std::nullopt;
    }
}

} // namespace

void TimelineView::focusTarget(const Target& target)
{
    Marks marks = marks_;
    marks.focused = target;
    setMarks(marks);
    if (const auto* block = std::get_if<BlockTarget>(&target)) {
        if (const SceneBlock* found = findBlock(state_.scene(), block->id)) {
            apply(state_.show(found->when()));
        }
        notifyFocusMoved(*this);
    } else if (const auto* flag = std::get_if<FlagTarget>(&target)) {
        if (const SceneServing* serving = findServing(state_.scene(), flag->course)) {
            apply(state_.show({serving->time, serving->time}));
        }
    }
}

QPoint TimelineView::placeBeside(const Target& target) const
{
    const auto box = boxOfTarget(state_.scene(), state_.geometry(), target);
    return box ? QPointF{box->left, box->bottom}.toPoint() : paintedArea().center();
}

QPoint TimelineView::besideTask(const QString& taskId) const
{
    const std::string id = taskId.toStdString();
    const auto* focused = std::get_if<BlockTarget>(&marks_.focused);
    if (focused != nullptr && focused->id == id) {
        return mapToGlobal(placeBeside(*focused));
    }
    const SceneBlock* block = findBlock(state_.scene(), id);
    const bool isDrawn = block != nullptr && !block->places.empty();
    return mapToGlobal(isDrawn ? placeBeside(BlockTarget{id, block->places.front().lane})
                               : paintedArea().center());
}

void TimelineView::moveFocusedBy(int steps)
{
    const auto* block = std::get_if<BlockTarget>(&marks_.focused);
    const auto* flag = std::get_if<FlagTarget>(&marks_.focused);
    const std::optional<DragPick> pick = block  ? state_.pickBlock(block->id, {})
                                         : flag ? state_.pickServing(flag->course, {})
                                                : std::nullopt;
    if (!pick) {
        return;
    }
    const PlanTime start = nudged(*pick, state_.scene().calendar, steps);
    if (start == pick->start) {
        return;
    }
    if (flag != nullptr) {
        Q_EMIT servingDropped(flag->course, start);
    } else {
        Q_EMIT dropped(QString::fromStdString(pick->id), start);
    }
}

bool TimelineView::zoomWithKey(const QKeyEvent& event)
{
    if ((event.modifiers() & Qt::ControlModifier) == 0) {
        return false;
    }
    switch (event.key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        zoomBy(1);
        return true;
    case Qt::Key_Minus:
        zoomBy(-1);
        return true;
    case Qt::Key_0:
        zoomTo(ZoomStop::Hours);
        return true;
    default:
        return false;
    }
}

bool TimelineView::moveWithKey(const QKeyEvent& event)
{
    const auto move = focusMoveOf(event.key());
    if (!move) {
        return false;
    }
    if ((event.modifiers() & Qt::AltModifier) != 0) {
        const bool isAlongTime = *move == FocusMove::Earlier || *move == FocusMove::Later;
        if (isAlongTime) {
            moveFocusedBy(*move == FocusMove::Later ? 1 : -1);
        }
        return isAlongTime;
    }
    focusTarget(moveFocus(state_.scene(), state_.geometry(), marks_.focused, *move));
    return true;
}

void TimelineView::activateFocused()
{
    if (const auto* block = std::get_if<BlockTarget>(&marks_.focused)) {
        const QString id = QString::fromStdString(block->id);
        const bool isAlreadySelected = selected() == id;
        select(id);
        if (isAlreadySelected) {
            Q_EMIT activated(id);
        } else {
            Q_EMIT selectionChanged(id);
        }
    } else if (const auto* pleat = std::get_if<PleatTarget>(&marks_.focused)) {
        apply(state_.togglePleat(pleat->start));
    } else if (const auto* tag = std::get_if<TagTarget>(&marks_.focused)) {
        Q_EMIT clashActivated(tag->clash);
    }
}

bool TimelineView::actWithKey(const QKeyEvent& event)
{
    const auto* block = std::get_if<BlockTarget>(&marks_.focused);
    const QString id = block != nullptr ? QString::fromStdString(block->id) : QString{};
    switch (event.key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        activateFocused();
        return true;
    case Qt::Key_P:
        if (block != nullptr && event.modifiers() == Qt::NoModifier) {
            Q_EMIT pinRequested(id);
            return true;
        }
        return false;
    case Qt::Key_W:
        if (block != nullptr && event.modifiers() == Qt::NoModifier) {
            Q_EMIT whyRequested(id);
            return true;
        }
        return false;
    case Qt::Key_Delete:
        if (block != nullptr) {
            Q_EMIT removeRequested(id);
            return true;
        }
        return false;
    case Qt::Key_PageUp:
    case Qt::Key_PageDown: {
        const double page =
            state_.geometry().timeWidth() * (event.key() == Qt::Key_PageUp ? -1 : 1);
        apply(state_.scrollTo(state_.viewport().scrollX + page, state_.viewport().scrollY));
        return true;
    }
    default:
        return false;
    }
}

void TimelineView::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape) {
        if (std::holds_alternative<Gesture::Drag>(gesture_->now)) {
            cancelDrag();
        } else if (!selected().isEmpty()) {
            select({});
            Q_EMIT selectionChanged({});
        } else {
            QWidget::keyPressEvent(event);
        }
        return;
    }
    if (event->key() == Qt::Key_Space) {
        gesture_->isSpaceHeld = true;
        return;
    }
    if (!zoomWithKey(*event) && !moveWithKey(*event) && !actWithKey(*event)) {
        QWidget::keyPressEvent(event);
    }
}

void TimelineView::keyReleaseEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        gesture_->isSpaceHeld = false;
    }
    QWidget::keyReleaseEvent(event);
}

void TimelineView::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    Marks marks = marks_;
    // A click says where the focus is; Tab leads to where it was, or to the first block in view.
    marks.hasKeyboard = true;
    const bool isByKey = event->reason() != Qt::MouseFocusReason;
    if (isByKey && std::holds_alternative<std::monostate>(marks.focused)) {
        marks.focused = moveFocus(state_.scene(), state_.geometry(), {}, FocusMove::Later);
    }
    setMarks(marks);
    notifyFocusMoved(*this);
}

void TimelineView::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    gesture_->isSpaceHeld = false;
    Marks marks = marks_;
    marks.hasKeyboard = false;
    setMarks(marks);
}

} // namespace suppertide::ui
