#include "ui/models/repertoire_items.h"

#include <QMimeData>

#include "ui/timeline/variant_mime.h"

namespace suppertide::ui {

namespace {

/// A variant's internal id is its recipe's row plus one; a recipe's is 0.
constexpr quintptr isRecipe = 0;

QString text(const std::string& words)
{
    return QString::fromStdString(words);
}

} // namespace

RepertoireItems::RepertoireItems(QObject* parent) : QAbstractItemModel(parent) {}

void RepertoireItems::setCards(std::vector<RecipeCard> cards)
{
    if (cards == cards_) {
        return;
    }
    const bool isSameShape =
        std::equal(cards.begin(), cards.end(), cards_.begin(), cards_.end(),
                   [](const RecipeCard& a, const RecipeCard& b) {
                       return a.id == b.id && a.variants.size() == b.variants.size();
                   });
    if (isSameShape) {
        cards_ = std::move(cards);
        for (int row = 0; row < static_cast<int>(cards_.size()); ++row) {
            const QModelIndex card = index(row, 0, {});
            Q_EMIT dataChanged(card, card);
            const int variants = rowCount(card);
            if (variants > 0) {
                Q_EMIT dataChanged(index(0, 0, card), index(variants - 1, 0, card));
            }
        }
        return;
    }
    beginResetModel();
    cards_ = std::move(cards);
    endResetModel();
}

QModelIndex RepertoireItems::find(const QString& recipe) const
{
    for (std::size_t row = 0; row < cards_.size(); ++row) {
        if (text(cards_[row].id.text()) == recipe) {
            return index(static_cast<int>(row), 0, {});
        }
    }
    return {};
}

QModelIndex RepertoireItems::index(int row, int column, const QModelIndex& parent) const
{
    if (row < 0 || row >= rowCount(parent) || column != 0) {
        return {};
    }
    return createIndex(row, column,
                       parent.isValid() ? static_cast<quintptr>(parent.row()) + 1 : isRecipe);
}

QModelIndex RepertoireItems::parent(const QModelIndex& child) const
{
    if (!child.isValid() || child.internalId() == isRecipe) {
        return {};
    }
    return createIndex(static_cast<int>(child.internalId() - 1), 0, isRecipe);
}

int RepertoireItems::rowCount(const QModelIndex& parent) const
{
    if (!parent.isValid()) {
        return static_cast<int>(cards_.size());
    }
    if (parent.internalId() != isRecipe) {
        return 0;
    }
    return static_cast<int>(cards_[static_cast<std::size_t>(parent.row())].variants.size());
}

int RepertoireItems::columnCount(const QModelIndex& /*parent*/) const
{
    return 1;
}

QVariant RepertoireItems::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) {
        return {};
    }
    const bool isCard = index.internalId() == isRecipe;
    const auto cardRow = isCard ? static_cast<std::size_t>(index.row())
                                : static_cast<std::size_t>(index.internalId() - 1);
    const RecipeCard& card = cards_[cardRow];
    switch (role) {
    case MetaRole:
        return text(card.meta);
    case LookRole:
        return card.look ? QVariant(*card.look) : QVariant();
    case RecipeRole:
        return text(card.id.text());
    default:
        break;
    }
    if (isCard) {
        if (role == Qt::DisplayRole) {
            return text(card.name);
        }
        return role == Qt::AccessibleTextRole ? QVariant(text(card.name + ", " + card.meta))
                                              : QVariant();
    }
    const VariantRow& variant = card.variants[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole:
        return text(variant.name);
    case Qt::AccessibleTextRole:
        return variant.portions.empty()
                   ? tr("%1, %2").arg(text(card.name), text(variant.name))
                   : tr("%1, %2, %3 portions")
                         .arg(text(card.name), text(variant.name), text(variant.portions));
    case PortionsRole:
        return text(variant.portions);
    case VariantRole:
        return text(variant.id.text());
    default:
        return {};
    }
}

Qt::ItemFlags RepertoireItems::flags(const QModelIndex& index) const
{
    if (!index.isValid()) {
        return Qt::NoItemFlags;
    }
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsDragEnabled;
}

QStringList RepertoireItems::mimeTypes() const
{
    return {variantMimeType()};
}

QMimeData* RepertoireItems::mimeData(const QModelIndexList& indexes) const
{
    if (indexes.isEmpty()) {
        return nullptr;
    }
    QModelIndex dragged = indexes.front();
    if (!data(dragged, VariantRole).isValid()) {
        dragged = index(0, 0, dragged); // a card stands for its first variant
    }
    if (!dragged.isValid()) {
        return nullptr;
    }
    auto* mime = new QMimeData;
    mime->setData(variantMimeType(), toMimeBytes({data(dragged, RecipeRole).toString(),
                                                  data(dragged, VariantRole).toString()}));
    return mime;
}

} // namespace suppertide::ui
