// TimelineView's drops: a variant dragged in from the repertoire.
#include <QDragEnterEvent>
#include <QMimeData>

#include "ui/timeline/timeline_parts.h"

namespace suppertide::ui {

void TimelineView::dragEnterEvent(QDragEnterEvent* event)
{
    const auto variant = variantIn(*event->mimeData());
    const auto course = state_.nearestCourse(state_.geometry().timeAt(event->position().x()));
    if (!variant || !course) {
        event->ignore();
        return;
    }
    variant_ = variant;
    state_.holdPleats(true);
    event->acceptProposedAction();
    Q_EMIT variantEntered(*variant, *course);
}

void TimelineView::dragMoveEvent(QDragMoveEvent* event)
{
    const auto course = state_.nearestCourse(state_.geometry().timeAt(event->position().x()));
    if (!variant_ || !course) {
        event->ignore();
        return;
    }
    event->acceptProposedAction();
    Q_EMIT variantMoved(*variant_, *course);
}

void TimelineView::dragLeaveEvent(QDragLeaveEvent* event)
{
    QWidget::dragLeaveEvent(event);
    if (variant_) {
        variant_.reset();
        Q_EMIT variantLeft();
        state_.holdPleats(false);
        apply({true, {}});
    }
}

void TimelineView::dropEvent(QDropEvent* event)
{
    const auto course = state_.nearestCourse(state_.geometry().timeAt(event->position().x()));
    if (!variant_ || !course) {
        event->ignore();
        return;
    }
    event->acceptProposedAction();
    const DraggedVariant variant = *variant_;
    variant_.reset();
    Q_EMIT variantDropped(variant, *course);
    state_.holdPleats(false);
    apply({true, {}});
}

} // namespace suppertide::ui
