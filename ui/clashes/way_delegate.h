// WayDelegate: paints a way out: what would be changed, in bold, and under it what that would do;
// a reason is plain text.
#pragma once

#include <QStyledItemDelegate>

#include "ui/theme/theme.h"

namespace suppertide::ui {

class WayDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    explicit WayDelegate(const Theme& theme, QObject* parent = nullptr);
    void setTheme(const Theme& theme) { theme_ = theme; }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;

private:
    [[nodiscard]] QRect textArea(const QRect& row, const QString& text, TypeRole type) const;
    [[nodiscard]] static TypeRole typeOf(const QModelIndex& index);

    Theme theme_;
};

} // namespace suppertide::ui
