#include "ui/pages/places/mix_view.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QMouseEvent>

#include "ui/models/mix_model.h"
#include "ui/pages/places/mix_delegate.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

MixView::MixView(Document& document, const Theme& theme, QWidget* parent)
    : QTableView(parent), document_(document), model_(new MixModel(this)),
      delegate_(new MixDelegate(theme, this))
{
    setObjectName(u"mixTable"_s);
    setAccessibleName(tr("Variants by guest"));
    setAccessibleDescription(tr("Space gives the guest of the column what the row is; Ctrl with Up "
                                "or Down moves the guest's portion to the next variant."));
    setModel(model_);
    setItemDelegate(delegate_);
    setSelectionMode(QAbstractItemView::NoSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setTabKeyNavigation(false);
    setShowGrid(false);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    verticalHeader()->setSectionsClickable(false);
    verticalHeader()->setTextElideMode(Qt::ElideMiddle);
    horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    horizontalHeader()->setSectionsClickable(false);
    setTheme(theme);
}

void MixView::refresh()
{
    show(std::nullopt); // what was dragged may be gone
    model_->show(document_.library());
}

void MixView::setTheme(const Theme& theme)
{
    delegate_->setTheme(theme);
    setFont(theme.font(TypeRole::Label));
    horizontalHeader()->setFont(theme.font(TypeRole::SecondaryBold));
    verticalHeader()->setFont(theme.font(TypeRole::Secondary));
    viewport()->update();
}

void MixView::show(std::optional<PortionDrag> drag)
{
    if (drag == drag_) {
        return;
    }
    drag_ = drag;
    delegate_->setDrag(drag_);
    if (drag_) {
        viewport()->setCursor(drag_->isAllowed ? Qt::ClosedHandCursor : Qt::ForbiddenCursor);
        Q_EMIT said(model_->moveWords(drag_->guest, drag_->from, drag_->over));
    } else {
        viewport()->unsetCursor();
    }
    viewport()->update();
}

void MixView::move(int guest, int from, int to)
{
    const QString words = model_->moveWords(guest, from, to);
    auto edit = model_->move(document_.library(), guest, from, to);
    if (edit) {
        document_.apply(std::move(edit->next), edit->text);
    }
    if (edit || from != to) {
        Q_EMIT said(words);
    }
}

void MixView::mousePressEvent(QMouseEvent* event)
{
    const QModelIndex cell = indexAt(event->position().toPoint());
    if (event->button() != Qt::LeftButton || !cell.isValid()) {
        QTableView::mousePressEvent(event);
        return;
    }
    setCurrentIndex(cell);
    if (model_->isTheirs(cell)) {
        show(PortionDrag{cell.column(), cell.row(), cell.row()});
    } else {
        Q_EMIT said(cell.data(Qt::ToolTipRole).toString());
    }
}

/// Only the row counts: nobody else's column takes the portion.
void MixView::mouseMoveEvent(QMouseEvent* event)
{
    if (!drag_) {
        QTableView::mouseMoveEvent(event);
        return;
    }
    PortionDrag next = *drag_;
    const QPoint at = event->position().toPoint();
    const bool isInside = viewport()->rect().contains(at);
    next.over = isInside ? rowAt(at.y()) : -1;
    next.isAllowed = model_->canMove(next.guest, next.from, next.over);
    show(next);
    if (next.over >= 0) {
        scrollTo(model_->index(next.over, next.guest));
    }
}

void MixView::mouseReleaseEvent(QMouseEvent* event)
{
    if (!drag_ || event->button() != Qt::LeftButton) {
        QTableView::mouseReleaseEvent(event);
        return;
    }
    const PortionDrag dropped = *drag_;
    show(std::nullopt);
    move(dropped.guest, dropped.from, dropped.over);
    if (dropped.over >= 0) {
        setCurrentIndex(
            model_->index(model_->rowOfPortion(dropped.guest, dropped.from), dropped.guest));
    }
}

void MixView::keyPressEvent(QKeyEvent* event)
{
    const QModelIndex cell = currentIndex();
    if (event->key() == Qt::Key_Escape && drag_) {
        show(std::nullopt);
        Q_EMIT said(tr("Nothing is changed."));
        return;
    }
    const int row = cell.isValid() ? model_->rowOfPortion(cell.column(), cell.row()) : -1;
    if (row < 0) {
        QTableView::keyPressEvent(event);
        return;
    }
    const bool isMove = event->modifiers().testFlag(Qt::ControlModifier) &&
                        (event->key() == Qt::Key_Up || event->key() == Qt::Key_Down);
    const bool isGiven = event->key() == Qt::Key_Space || event->key() == Qt::Key_Return ||
                         event->key() == Qt::Key_Enter;
    if (isMove) {
        const int to = model_->rowAway(row, event->key() == Qt::Key_Up ? -1 : 1);
        const int guest = cell.column();
        move(guest, row, to);
        setCurrentIndex(model_->index(to, guest));
    } else if (isGiven) {
        move(cell.column(), row, cell.row());
    } else {
        QTableView::keyPressEvent(event);
    }
}

/// Names of variants leave half of the room to the guests; what is cut off stands in their tips.
void MixView::resizeEvent(QResizeEvent* event)
{
    verticalHeader()->setMaximumWidth(width() / 2);
    QTableView::resizeEvent(event);
}

void MixView::focusOutEvent(QFocusEvent* event)
{
    show(std::nullopt);
    QTableView::focusOutEvent(event);
}

} // namespace suppertide::ui
