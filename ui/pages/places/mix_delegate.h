// MixDelegate: paints a cell of the mix: a disc where the guest gets the variant, a ring where it
// came from while it is dragged, and the marks of what speaks against it; by shape first, colour
// second.
#pragma once

#include <QStyledItemDelegate>

#include <optional>

#include "ui/pages/places/mix_view.h"

namespace suppertide::ui {

class MixDelegate : public QStyledItemDelegate
{
public:
    explicit MixDelegate(const Theme& theme, QObject* parent = nullptr);

    void setTheme(const Theme& theme) { theme_ = theme; }
    void setDrag(const std::optional<PortionDrag>& drag) { drag_ = drag; }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;

private:
    void paintPortion(QPainter& painter, const QRectF& cell, const QModelIndex& index) const;
    void paintMark(QPainter& painter, const QRectF& cell, const QModelIndex& index,
                   const QColor& ink) const;

    Theme theme_;
    std::optional<PortionDrag> drag_;
};

} // namespace suppertide::ui
