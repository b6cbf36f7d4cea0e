// RepertoireDelegate: paints a recipe as the head of a card (stem in the dish's hue and pattern,
// letter and name, one line under it) and each variant as a row of that card with its grip and its
// portions.
#pragma once

#include <QStyledItemDelegate>

#include "ui/theme/theme.h"

namespace suppertide::ui {

class RepertoireDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    explicit RepertoireDelegate(const Theme& theme, QObject* parent = nullptr);
    void setTheme(const Theme& theme) { theme_ = theme; }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;

private:
    void paintStem(QPainter& painter, const QRectF& area, const QModelIndex& index) const;
    void paintCard(QPainter& painter, const QRectF& area, const QModelIndex& index) const;
    void paintVariant(QPainter& painter, const QRectF& area, const QModelIndex& index) const;
    void paintGrip(QPainter& painter, const QPointF& at) const;
    void paintText(QPainter& painter, const QRectF& area, TypeRole role, const QColor& colour,
                   const QString& text, Qt::Alignment alignment = Qt::AlignLeft) const;

    Theme theme_;
};

} // namespace suppertide::ui
