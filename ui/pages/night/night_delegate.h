// NightDelegate: draws the rows of the night's sheet, large: the wider the page, the larger, so
// that with the page filling the window what is to be done now is read from two metres.
#pragma once

#include <QFont>
#include <QStyledItemDelegate>

#include "ui/pages/night/night_rows.h"
#include "ui/theme/theme.h"

namespace suppertide::ui {

class NightDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    NightDelegate(const Theme& theme, QObject* parent);

    void setTheme(const Theme& theme) { theme_ = theme; }
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;

    /// Height in px of what is to be done now, on a page of that width.
    [[nodiscard]] static int largeType(int width, double textScale);

private:
    struct Piece
    {
        QString text;
        QFont font;
        QColor colour;
        QRect box;
    };
    struct Laid
    {
        std::vector<Piece> pieces;
        int height = 0;
    };
    [[nodiscard]] Laid layOut(const NightRow& row, const QRect& within) const;

    Theme theme_;
};

} // namespace suppertide::ui
