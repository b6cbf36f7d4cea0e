#include "ui/pages/places/mix_delegate.h"

#include <QPainter>

#include "ui/models/mix_model.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr double radius = 7; // px, of a portion

} // namespace

MixDelegate::MixDelegate(const Theme& theme, QObject* parent)
    : QStyledItemDelegate(parent), theme_(theme)
{}

QSize MixDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const
{
    constexpr QSizeF least{52, 26}; // px: room for a portion and a mark
    return (least * theme_.textScale).toSize();
}

void MixDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const
{
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF cell(option.rect);
    const Neutrals& neutral = theme_.neutral();
    const bool isOfDragged = drag_ && drag_->guest == index.column();
    painter->fillRect(cell, isOfDragged ? QBrush(neutral.lane) : option.palette.base());
    painter->fillRect(QRectF(cell.left(), cell.bottom() - 1, cell.width(), 1), neutral.rule);
    if (index.data(MixModel::isFirstRole).toBool()) {
        painter->fillRect(QRectF(cell.left(), cell.top(), cell.width(), 2), neutral.line);
    }
    paintMark(*painter, cell, index, neutral.ink);
    paintPortion(*painter, cell, index);
    if (option.state.testFlag(QStyle::State_HasFocus)) {
        painter->setBrush(Qt::NoBrush);
        painter->setPen(QPen(theme_.role().selected.colour, 2));
        painter->drawRect(cell.adjusted(2, 2, -2, -2));
    }
    painter->restore();
}

void MixDelegate::paintPortion(QPainter& painter, const QRectF& cell,
                               const QModelIndex& index) const
{
    const double size = radius * theme_.textScale;
    const QPointF middle(cell.left() + cell.width() / 3, cell.center().y());
    const bool isOfDragged = drag_ && drag_->guest == index.column();
    const bool isFrom = isOfDragged && drag_->from == index.row();
    const bool isOver = isOfDragged && drag_->isAllowed && drag_->over == index.row();
    const auto* model = qobject_cast<const MixModel*>(index.model());
    const bool isHere = model != nullptr && model->isTheirs(index);
    if (isOver) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(theme_.role().selected.colour);
        painter.drawEllipse(middle, size + 1, size + 1);
    } else if (isFrom || isHere) {
        painter.setPen(QPen(theme_.neutral().ink, 1.6));
        painter.setBrush(isFrom ? QBrush(Qt::NoBrush) : QBrush(theme_.neutral().ink));
        painter.drawEllipse(middle, size, size);
    }
}

void MixDelegate::paintMark(QPainter& painter, const QRectF& cell, const QModelIndex& index,
                            const QColor& ink) const
{
    const int mark = index.data(MixModel::markRole).toInt();
    if (mark == MixModel::Free) {
        return;
    }
    painter.setFont(theme_.font(TypeRole::ControlBold));
    painter.setPen(mark == MixModel::Against ? theme_.role().impossible.colour : ink);
    painter.drawText(cell.adjusted(cell.width() / 2, 0, 0, 0), Qt::AlignCenter,
                     mark == MixModel::Against ? u"✕"_s : u"?"_s);
}

} // namespace suppertide::ui
