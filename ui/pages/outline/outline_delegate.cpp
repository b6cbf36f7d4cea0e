#include "ui/pages/outline/outline_delegate.h"

#include <QPainter>

#include "ui/models/outline_items.h"

namespace suppertide::ui {

namespace {

constexpr double rowHeight = 24;
constexpr int pad = 4;
constexpr int swatch = 10;

} // namespace

OutlineDelegate::OutlineDelegate(const Theme& theme, QObject* parent)
    : QStyledItemDelegate(parent), theme_(theme)
{}

QSize OutlineDelegate::sizeHint(const QStyleOptionViewItem& /*option*/,
                                const QModelIndex& index) const
{
    const bool isHeading = index.data(OutlineItems::IsHeadingRole).toBool();
    return {100, static_cast<int>((rowHeight + (isHeading ? 4 : 0)) * theme_.textScale)};
}

void OutlineDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                            const QModelIndex& index) const
{
    painter->save();
    const bool isSelected = option.state.testFlag(QStyle::State_Selected);
    const bool isHeading = index.data(OutlineItems::IsHeadingRole).toBool();
    const bool isFaulty = !index.data(OutlineItems::FaultRole).toString().isEmpty();
    const Neutrals& neutral = theme_.neutral();
    QRect row = option.rect;
    if (isSelected) {
        painter->fillRect(row, theme_.role().selected.colour);
    } else if (option.state.testFlag(QStyle::State_MouseOver)) {
        painter->fillRect(row, neutral.lane);
    }
    const QColor ink = isSelected ? theme_.role().selected.textOn : neutral.ink;
    const QColor second = isSelected ? theme_.role().selected.textOn : neutral.ink2;
    row.adjust(pad, 0, -pad, 0);
    QString title = index.data(Qt::DisplayRole).toString();
    const QVariant look = index.data(OutlineItems::LookRole);
    if (look.isValid()) {
        const DishFill dish = theme_.palette->dish(look.toInt());
        fillPatterned(*painter,
                      QRectF(row.left(), row.center().y() - swatch / 2.0, swatch, swatch + 1),
                      dish.pattern, dish.fill.colour, neutral.paper);
        row.setLeft(row.left() + swatch + 5);
        title = dishLetter(look.toInt()) + QLatin1Char(' ') + title;
    }
    if (isFaulty) {
        painter->setFont(theme_.font(TypeRole::ControlBold));
        painter->setPen(isSelected ? ink : theme_.role().impossible.colour);
        painter->drawText(row, Qt::AlignRight | Qt::AlignVCenter, QStringLiteral("!"));
        row.setRight(row.right() - 12);
    }
    const QString detail = index.data(OutlineItems::DetailRole).toString();
    painter->setFont(theme_.font(TypeRole::Secondary));
    const int detailWidth =
        std::min(painter->fontMetrics().horizontalAdvance(detail) + 1, row.width() / 2);
    painter->setPen(second);
    painter->drawText(row, Qt::AlignRight | Qt::AlignVCenter,
                      painter->fontMetrics().elidedText(detail, Qt::ElideRight, detailWidth));
    row.setRight(row.right() - (detail.isEmpty() ? 0 : detailWidth + 8));
    painter->setFont(theme_.font(isHeading ? TypeRole::LaneName : TypeRole::Control));
    painter->setPen(ink);
    painter->drawText(row, Qt::AlignLeft | Qt::AlignVCenter,
                      painter->fontMetrics().elidedText(title, Qt::ElideRight, row.width()));
    if (option.state.testFlag(QStyle::State_HasFocus)) {
        painter->setPen(QPen(ink, 1, Qt::DotLine));
        painter->drawRect(option.rect.adjusted(1, 1, -2, -2));
    }
    painter->restore();
}

} // namespace suppertide::ui
