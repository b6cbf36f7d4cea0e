// ClashDelegate: paints a clash as in the design: its tag (shape of the severity, number), the
// sentence in bold, and under it the severity in words with where and when.
#pragma once

#include <QStyledItemDelegate>

#include "ui/theme/theme.h"

namespace suppertide::ui {

class ClashDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    explicit ClashDelegate(const Theme& theme, QObject* parent = nullptr);
    void setTheme(const Theme& theme) { theme_ = theme; }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;

private:
    [[nodiscard]] QRect sentenceArea(const QRect& row, const QModelIndex& index) const;
    void paintTag(QPainter& painter, const QPointF& centre, const QModelIndex& index) const;

    Theme theme_;
};

} // namespace suppertide::ui
