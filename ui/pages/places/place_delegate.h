// PlaceDelegate: a cell of the table of places is edited by a list of all that the guest could get.
#pragma once

#include <QStyledItemDelegate>

#include "ui/document/document.h"

namespace suppertide::ui {

class PlaceDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    /// `document` must outlive this.
    explicit PlaceDelegate(Document& document, QObject* parent = nullptr);

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model,
                      const QModelIndex& index) const override;

private:
    Document& document_;
};

} // namespace suppertide::ui
