#include "ui/pages/night/night_delegate.h"

#include <QAbstractItemView>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr int margin = 6;
constexpr int markRoom = 26; // left of the words
/// So many letters of what is to be done now fit a line.
constexpr int lettersInLine = 17;
/// Read at 2 m a capital must be 5.8 mm high (10 minutes of arc): 30 px of type at 96 dpi.
constexpr int largest = 34;
constexpr int least = 16;

} // namespace

NightDelegate::NightDelegate(const Theme& theme, QObject* parent)
    : QStyledItemDelegate(parent), theme_(theme)
{}

int NightDelegate::largeType(int width, double textScale)
{
    const int byWidth = std::clamp(width / lettersInLine, least, largest);
    return static_cast<int>(std::lround(std::max(byWidth * 1.0, least * textScale)));
}

NightDelegate::Laid NightDelegate::layOut(const NightRow& row, const QRect& within) const
{
    const int large = largeType(within.width(), theme_.textScale);
    const Neutrals& neutral = theme_.neutral();
    Laid laid;
    int top = within.top() + margin;
    const int left = within.left() + (row.kind == RowKind::Line ? markRoom : margin);
    const auto add = [&](const QString& text, int size, bool isBold, const QColor& colour) {
        if (text.isEmpty()) {
            return;
        }
        QFont font = theme_.font(isBold ? TypeRole::LaneName : TypeRole::Control);
        font.setPixelSize(std::max(size, 11));
        const QRect room(left, top, std::max(60, within.right() - left - margin), 10'000);
        const QRect box =
            QFontMetrics(font).boundingRect(room, Qt::TextWordWrap, text).adjusted(0, 0, 2, 0);
        laid.pieces.push_back({text, font, colour, box});
        top = box.bottom() + 3;
    };
    switch (row.kind) {
    case RowKind::Heading:
        add(row.text, large * 2 / 3, true, neutral.ink2);
        break;
    case RowKind::Note:
        add(row.text, large * 2 / 3, false, neutral.ink);
        break;
    case RowKind::Line: {
        const bool isNow = row.state != LineState::Coming;
        add(row.text, isNow ? large : large * 3 / 4, isNow, neutral.ink);
        add(row.when, large * 2 / 3, isNow, neutral.ink);
        add(row.late, large * 2 / 3, true, theme_.role().impossible.colour);
        add(row.detail, large * 3 / 5, false, neutral.ink2);
        if (isNow) {
            for (const QString& caution : row.cautions) {
                add(u"▲ "_s + caution, large * 3 / 5, true, theme_.role().unsafe.colour);
            }
        }
        break;
    }
    }
    laid.height = top + margin - within.top();
    return laid;
}

QSize NightDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
    const int width = view != nullptr ? view->viewport()->width() : option.rect.width();
    const auto* rows = qobject_cast<const NightRows*>(index.model());
    return {width, std::max(24, layOut(rows->row(index), QRect(0, 0, width, 0)).height)};
}

void NightDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const
{
    const auto* rows = qobject_cast<const NightRows*>(index.model());
    const NightRow& row = rows->row(index);
    const Neutrals& neutral = theme_.neutral();
    painter->save();
    const bool isSelected = option.state.testFlag(QStyle::State_Selected);
    painter->fillRect(option.rect, row.kind == RowKind::Heading ? neutral.panel
                                   : isSelected                 ? neutral.lane
                                                                : neutral.paper);
    painter->setPen(neutral.rule);
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    if (isSelected) {
        painter->fillRect(QRect(option.rect.topLeft(), QSize(4, option.rect.height())),
                          theme_.role().selected.colour);
    }
    for (const Piece& piece : layOut(row, option.rect).pieces) {
        painter->setFont(piece.font);
        painter->setPen(piece.colour);
        painter->drawText(piece.box, Qt::TextWordWrap, piece.text);
    }
    if (row.kind == RowKind::Line) {
        // Under way: a filled bar; due: a filled arrow; to come: an open ring.
        painter->setRenderHint(QPainter::Antialiasing);
        const QPointF at(option.rect.left() + markRoom / 2.0 + 2, option.rect.top() + 20);
        painter->setPen(QPen(neutral.ink, 2));
        switch (row.state) {
        case LineState::UnderWay:
            painter->fillRect(QRectF(at.x() - 3, at.y() - 9, 7, 18), neutral.ink);
            break;
        case LineState::Due: {
            QPainterPath arrow(QPointF(at.x() - 6, at.y() - 8));
            arrow.lineTo(at.x() + 8, at.y());
            arrow.lineTo(at.x() - 6, at.y() + 8);
            arrow.closeSubpath();
            painter->fillPath(arrow, neutral.ink);
            break;
        }
        case LineState::Coming:
            painter->drawEllipse(at, 5, 5);
            break;
        }
    }
    if (option.state.testFlag(QStyle::State_HasFocus) && row.kind == RowKind::Line) {
        painter->setRenderHint(QPainter::Antialiasing, false);
        painter->setPen(QPen(neutral.ink, 1, Qt::DotLine));
        painter->drawRect(option.rect.adjusted(6, 2, -3, -3));
    }
    painter->restore();
}

} // namespace suppertide::ui
