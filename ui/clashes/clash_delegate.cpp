#include "ui/clashes/clash_delegate.h"

#include <QPainter>
#include <QPainterPath>

#include "core/plan/plan.h"
#include "ui/models/clash_items.h"
#include "ui/timeline/tag_shape.h"

namespace suppertide::ui {

namespace {

constexpr int margin = 5;
constexpr int textLeft = 34;
constexpr double tagSize = 16;

Severity severityAt(const QModelIndex& index)
{
    return static_cast<Severity>(index.data(ClashItems::SeverityRole).toInt());
}

const Fill& fillOf(const Theme& theme, Severity severity)
{
    switch (severity) {
    case Severity::Impossible:
        return theme.role().impossible;
    case Severity::Unsafe:
        return theme.role().unsafe;
    case Severity::Undesirable:
        return theme.role().undesirable;
    }
    return theme.role().impossible;
}

} // namespace

ClashDelegate::ClashDelegate(const Theme& theme, QObject* parent)
    : QStyledItemDelegate(parent), theme_(theme)
{}

QRect ClashDelegate::sentenceArea(const QRect& row, const QModelIndex& index) const
{
    const QFontMetrics metrics(theme_.font(TypeRole::LaneName));
    const QRect room(row.left() + textLeft, row.top() + margin,
                     std::max(80, row.width() - textLeft - margin), 10'000);
    return metrics.boundingRect(room, Qt::TextWordWrap, index.data(Qt::DisplayRole).toString());
}

QSize ClashDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const QFontMetrics second(theme_.font(TypeRole::Secondary));
    const int height = sentenceArea(option.rect, index).height() + second.height() + 2 * margin + 2;
    return {option.rect.width(), std::max(height, 28)};
}

void ClashDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const
{
    painter->save();
    const Neutrals& neutral = theme_.neutral();
    const bool isPointedAt = option.state.testFlag(QStyle::State_MouseOver) ||
                             option.state.testFlag(QStyle::State_Selected);
    painter->fillRect(option.rect, isPointedAt ? neutral.lane : neutral.paper);
    painter->setPen(neutral.rule);
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    if (option.state.testFlag(QStyle::State_Selected)) {
        painter->fillRect(QRect(option.rect.topLeft(), QSize(3, option.rect.height())),
                          theme_.role().selected.colour);
    }
    paintTag(*painter, QPointF(option.rect.left() + 18, option.rect.top() + margin + 9), index);

    const QRect sentence = sentenceArea(option.rect, index);
    painter->setFont(theme_.font(TypeRole::LaneName));
    painter->setPen(neutral.ink);
    painter->drawText(sentence, Qt::TextWordWrap, index.data(Qt::DisplayRole).toString());

    const QString severity = index.data(ClashItems::SeverityWordRole).toString();
    QRect second(sentence.left(), sentence.bottom() + 2,
                 option.rect.right() - sentence.left() - margin, 1000);
    painter->setFont(theme_.font(TypeRole::SecondaryBold));
    second.setHeight(painter->fontMetrics().height());
    painter->setPen(fillOf(theme_, severityAt(index)).colour);
    painter->drawText(second, Qt::AlignLeft, severity);
    second.setLeft(second.left() + painter->fontMetrics().horizontalAdvance(severity) + 8);
    painter->setFont(theme_.font(TypeRole::Secondary));
    painter->setPen(neutral.ink2);
    painter->drawText(
        second, Qt::AlignLeft,
        painter->fontMetrics().elidedText(index.data(ClashItems::WhereRole).toString(),
                                          Qt::ElideRight, second.width()));
    if (option.state.testFlag(QStyle::State_HasFocus)) {
        painter->setPen(QPen(neutral.ink, 1, Qt::DotLine));
        painter->drawRect(option.rect.adjusted(2, 2, -3, -3));
    }
    painter->restore();
}

/// Filled square, filled triangle, open circle: told apart without colour.
void ClashDelegate::paintTag(QPainter& painter, const QPointF& centre,
                             const QModelIndex& index) const
{
    const Severity severity = severityAt(index);
    const Fill& fill = fillOf(theme_, severity);
    const double half = tagSize * theme_.textScale / 2;
    const QString figure = index.data(ClashItems::NumberRole).toString();
    painter.setFont(theme_.font(TypeRole::SecondaryBold));
    const double width = painter.fontMetrics().horizontalAdvance(figure);
    const double side = halfWidth(width, half);
    const QRectF box(centre.x() - side, centre.y() - half, 2 * side, 2 * half);
    painter.setRenderHint(QPainter::Antialiasing);
    QColor text = fill.textOn;
    switch (severity) {
    case Severity::Impossible:
        painter.fillRect(box, fill.colour);
        break;
    case Severity::Unsafe: {
        const double figureTop = half + 1; // over the foot
        const double foot = halfFoot(width, figureTop, 2 * half + 2, half + 2);
        QPainterPath triangle(QPointF(centre.x(), box.top() - 2));
        triangle.lineTo(centre.x() + foot, box.bottom());
        triangle.lineTo(centre.x() - foot, box.bottom());
        triangle.closeSubpath();
        painter.fillPath(triangle, fill.colour);
        break;
    }
    case Severity::Undesirable:
        painter.setPen(QPen(fill.colour, 1.8));
        painter.setBrush(theme_.neutral().paper);
        painter.drawEllipse(box);
        text = fill.colour;
        break;
    }
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(text);
    const double lower = severity == Severity::Unsafe ? 2 : 0; // a triangle's middle lies lower
    painter.drawText(box.translated(0, lower), Qt::AlignCenter, figure);
}

} // namespace suppertide::ui
