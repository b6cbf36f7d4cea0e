// OutlineDelegate: paints a row of an outline: the dish's swatch and letter, the title, the detail
// at the right, and a mark where something is wrong.
#pragma once

#include <QStyledItemDelegate>

#include "ui/theme/theme.h"

namespace suppertide::ui {

class OutlineDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    explicit OutlineDelegate(const Theme& theme, QObject* parent = nullptr);
    void setTheme(const Theme& theme) { theme_ = theme; }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;

private:
    Theme theme_;
};

} // namespace suppertide::ui
