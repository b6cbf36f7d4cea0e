#include "ui/repertoire/repertoire_delegate.h"

#include <QPainter>

#include "ui/models/repertoire_items.h"

namespace suppertide::ui {

namespace {

// In px of the design at a text scale of 1.
constexpr double stemWidth = 9;
constexpr double gap = 6; // between cards
constexpr double headHeight = 34;
constexpr double variantHeight = 24;
constexpr double textLeft = 16;

bool isCard(const QModelIndex& index)
{
    return !index.parent().isValid();
}

bool isLastOfCard(const QModelIndex& index)
{
    return isCard(index) ? index.model()->rowCount(index) == 0
                         : index.row() + 1 == index.model()->rowCount(index.parent());
}

} // namespace

RepertoireDelegate::RepertoireDelegate(const Theme& theme, QObject* parent)
    : QStyledItemDelegate(parent), theme_(theme)
{}

QSize RepertoireDelegate::sizeHint(const QStyleOptionViewItem& /*option*/,
                                   const QModelIndex& index) const
{
    const double height = (isCard(index) ? headHeight : variantHeight) * theme_.textScale +
                          (isLastOfCard(index) ? gap : 0);
    return {100, static_cast<int>(height)};
}

void RepertoireDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                               const QModelIndex& index) const
{
    painter->save();
    const QRectF row = QRectF(option.rect).adjusted(0, 0, -1, isLastOfCard(index) ? -gap : 0);
    const Neutrals& neutral = theme_.neutral();
    painter->fillRect(row, neutral.card);
    if (option.state.testFlag(QStyle::State_MouseOver)) {
        painter->fillRect(row, neutral.lane);
    }
    paintStem(*painter, QRectF(row.left(), row.top(), stemWidth, row.height()), index);
    // The card's edge: rows of one card share it, so that they read as one thing.
    painter->setPen(QPen(neutral.rule, 1));
    painter->drawLine(row.topRight(), row.bottomRight());
    if (isCard(index)) {
        painter->drawLine(row.topLeft(), row.topRight());
        paintCard(*painter, row, index);
    } else {
        paintVariant(*painter, row, index);
    }
    painter->setPen(QPen(neutral.rule, 1));
    if (isLastOfCard(index)) {
        painter->drawLine(row.bottomLeft(), row.bottomRight());
    }
    if (option.state.testFlag(QStyle::State_Selected)) {
        painter->setPen(QPen(theme_.role().selected.colour, 2));
        painter->drawRect(row.adjusted(1, 1, -1, -1));
    }
    if (option.state.testFlag(QStyle::State_HasFocus)) {
        QPen focus(neutral.ink, 1, Qt::DotLine);
        painter->setPen(focus);
        painter->drawRect(row.adjusted(3, 3, -3, -3));
    }
    painter->restore();
}

void RepertoireDelegate::paintStem(QPainter& painter, const QRectF& area,
                                   const QModelIndex& index) const
{
    const QVariant look = index.data(RepertoireItems::LookRole);
    if (!look.isValid()) {
        painter.fillRect(area.adjusted(0, 0, -5, 0), theme_.neutral().line);
        return;
    }
    const DishFill dish = theme_.palette->dish(look.toInt());
    fillPatterned(painter, area, dish.pattern, dish.fill.colour, theme_.neutral().paper);
}

void RepertoireDelegate::paintText(QPainter& painter, const QRectF& area, TypeRole role,
                                   const QColor& colour, const QString& text,
                                   Qt::Alignment alignment) const
{
    painter.setFont(theme_.font(role));
    painter.setPen(colour);
    const QString shown =
        painter.fontMetrics().elidedText(text, Qt::ElideRight, static_cast<int>(area.width()));
    painter.drawText(area, static_cast<int>(alignment | Qt::AlignVCenter), shown);
}

void RepertoireDelegate::paintCard(QPainter& painter, const QRectF& area,
                                   const QModelIndex& index) const
{
    const double left = area.left() + textLeft;
    const double scale = theme_.textScale;
    const QVariant look = index.data(RepertoireItems::LookRole);
    const QString letter = look.isValid() ? dishLetter(look.toInt()) + QLatin1Char(' ') : QString();
    paintText(painter, {left, area.top() + 3, area.right() - left - 4, 16 * scale},
              TypeRole::LaneName, theme_.neutral().ink,
              letter + index.data(Qt::DisplayRole).toString());
    paintText(painter, {left, area.top() + 3 + 15 * scale, area.right() - left - 4, 14 * scale},
              TypeRole::Secondary, theme_.neutral().ink2,
              index.data(RepertoireItems::MetaRole).toString());
}

void RepertoireDelegate::paintVariant(QPainter& painter, const QRectF& area,
                                      const QModelIndex& index) const
{
    const double left = area.left() + textLeft;
    paintGrip(painter, {left, area.center().y()});
    const QString portions = index.data(RepertoireItems::PortionsRole).toString();
    const double portionsWidth = 30 * theme_.textScale;
    paintText(painter,
              {left + 14, area.top(), area.right() - left - 18 - portionsWidth, area.height()},
              TypeRole::Control, theme_.neutral().ink, index.data(Qt::DisplayRole).toString());
    paintText(painter, {area.right() - portionsWidth - 6, area.top(), portionsWidth, area.height()},
              TypeRole::ControlBold, theme_.neutral().ink, portions, Qt::AlignRight);
}

/// Six dots: this can be dragged.
void RepertoireDelegate::paintGrip(QPainter& painter, const QPointF& at) const
{
    for (int column = 0; column < 2; ++column) {
        for (int row = -1; row <= 1; ++row) {
            painter.fillRect(QRectF(at.x() + column * 4, at.y() + row * 4 - 0.75, 1.5, 1.5),
                             theme_.neutral().line);
        }
    }
}

} // namespace suppertide::ui
