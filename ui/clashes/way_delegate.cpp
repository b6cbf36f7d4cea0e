#include "ui/clashes/way_delegate.h"

#include <QPainter>

#include "ui/models/way_items.h"

namespace suppertide::ui {

namespace {

constexpr int margin = 5;
constexpr int textLeft = 14;

QString effectOf(const QModelIndex& index)
{
    return index.data(WayItems::EffectRole).toString();
}

} // namespace

WayDelegate::WayDelegate(const Theme& theme, QObject* parent)
    : QStyledItemDelegate(parent), theme_(theme)
{}

TypeRole WayDelegate::typeOf(const QModelIndex& index)
{
    return index.data(WayItems::IsWayRole).toBool() ? TypeRole::LaneName : TypeRole::Control;
}

QRect WayDelegate::textArea(const QRect& row, const QString& text, TypeRole type) const
{
    const QFontMetrics metrics(theme_.font(type));
    const QRect room(row.left() + textLeft, row.top() + margin,
                     std::max(80, row.width() - textLeft - margin), 10'000);
    return text.isEmpty() ? QRect(room.topLeft(), QSize(room.width(), 0))
                          : metrics.boundingRect(room, Qt::TextWordWrap, text);
}

QSize WayDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const int change =
        textArea(option.rect, index.data(Qt::DisplayRole).toString(), typeOf(index)).height();
    const int effect = textArea(option.rect, effectOf(index), TypeRole::Secondary).height();
    return {option.rect.width(), change + effect + 2 * margin + (effect > 0 ? 2 : 0)};
}

void WayDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const
{
    painter->save();
    const Neutrals& neutral = theme_.neutral();
    const bool isSelected = option.state.testFlag(QStyle::State_Selected);
    const bool isPointedAt = option.state.testFlag(QStyle::State_MouseOver) || isSelected;
    painter->fillRect(option.rect, isPointedAt ? neutral.lane : neutral.paper);
    painter->setPen(neutral.rule);
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    if (isSelected) {
        painter->fillRect(QRect(option.rect.topLeft(), QSize(3, option.rect.height())),
                          theme_.role().selected.colour);
    }
    const QString change = index.data(Qt::DisplayRole).toString();
    const QRect first = textArea(option.rect, change, typeOf(index));
    painter->setFont(theme_.font(typeOf(index)));
    painter->setPen(neutral.ink);
    painter->drawText(first, Qt::TextWordWrap, change);
    const QString effect = effectOf(index);
    QRect second = textArea(option.rect, effect, TypeRole::Secondary);
    second.moveTop(first.bottom() + 2);
    painter->setFont(theme_.font(TypeRole::Secondary));
    painter->setPen(neutral.ink2);
    painter->drawText(second, Qt::TextWordWrap, effect);
    if (option.state.testFlag(QStyle::State_HasFocus)) {
        painter->setPen(QPen(neutral.ink, 1, Qt::DotLine));
        painter->drawRect(option.rect.adjusted(2, 2, -3, -3));
    }
    painter->restore();
}

} // namespace suppertide::ui
