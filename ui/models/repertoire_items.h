// RepertoireItems: the cards as a tree for a view: recipes, and under each its variants, which can
// be dragged onto the timeline.
#pragma once

#include <QAbstractItemModel>

#include "ui/models/repertoire.h"

namespace suppertide::ui {

class RepertoireItems : public QAbstractItemModel
{
    Q_OBJECT

public:
    enum Role
    {
        MetaRole = Qt::UserRole,
        LookRole,     // int; invalid: not on the menu
        PortionsRole, // text
        RecipeRole,   // id as text
        VariantRole   // id as text; invalid for recipes
    };

    explicit RepertoireItems(QObject* parent = nullptr);

    void setCards(std::vector<RecipeCard> cards);
    [[nodiscard]] const std::vector<RecipeCard>& cards() const { return cards_; }
    [[nodiscard]] QModelIndex find(const QString& recipe) const;

    [[nodiscard]] QModelIndex index(int row, int column, const QModelIndex& parent) const override;
    [[nodiscard]] QModelIndex parent(const QModelIndex& child) const override;
    [[nodiscard]] int rowCount(const QModelIndex& parent) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    [[nodiscard]] QStringList mimeTypes() const override;
    [[nodiscard]] QMimeData* mimeData(const QModelIndexList& indexes) const override;
    [[nodiscard]] Qt::DropActions supportedDragActions() const override { return Qt::CopyAction; }

private:
    std::vector<RecipeCard> cards_;
};

} // namespace suppertide::ui
