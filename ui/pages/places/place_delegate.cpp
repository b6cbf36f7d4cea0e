#include "ui/pages/places/place_delegate.h"

#include <QComboBox>

#include "ui/models/place_model.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

PlaceDelegate::PlaceDelegate(Document& document, QObject* parent)
    : QStyledItemDelegate(parent), document_(document)
{}

QWidget* PlaceDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                     const QModelIndex& index) const
{
    const auto* model = qobject_cast<const PlaceModel*>(index.model());
    auto* box = new QComboBox(parent);
    box->setObjectName(u"placeChoice"_s);
    box->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
    for (const PlaceChoice& choice : model->choices(index)) {
        box->addItem(choice.text);
    }
    // Taken as soon as it is chosen; going through the list with keys takes nothing yet.
    connect(box, &QComboBox::activated, this, [this, box] {
        auto* self = const_cast<PlaceDelegate*>(
            this); // NOLINT(cppcoreguidelines-pro-type-const-cast): signals of Qt's const function
        Q_EMIT self->commitData(box);
        Q_EMIT self->closeEditor(box);
    });
    return box;
}

void PlaceDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const
{
    const auto* model = qobject_cast<const PlaceModel*>(index.model());
    qobject_cast<QComboBox*>(editor)->setCurrentIndex(model->choiceNow(index));
}

void PlaceDelegate::setModelData(QWidget* editor, QAbstractItemModel* model,
                                 const QModelIndex& index) const
{
    const auto* places = qobject_cast<const PlaceModel*>(model);
    auto edit =
        places->edit(document_.library(), index, qobject_cast<QComboBox*>(editor)->currentIndex());
    if (edit) {
        document_.apply(std::move(edit->next), edit->text);
    }
}

} // namespace suppertide::ui
