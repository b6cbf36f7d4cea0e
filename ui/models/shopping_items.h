// ShoppingItems: the shopping list as an item model: trips, in them sections of the shop, in them
// what to buy, with a tick; then what need not be bought. The page asks which line a row is.
#pragma once

#include <QStandardItemModel>

#include "core/shopping/shopping_list.h"

namespace suppertide::ui {

class ShoppingItems : public QStandardItemModel
{
    Q_OBJECT

public:
    enum Column
    {
        Thing,
        Buy,
        Cost,
        columns
    };

    explicit ShoppingItems(QObject* parent = nullptr);

    /// Whether the rows were made anew; ticks alone are changed in their place.
    bool show(const shopping::ShoppingList& list);
    [[nodiscard]] const shopping::ShoppingList& list() const { return list_; }
    /// Null for a trip or section.
    [[nodiscard]] const shopping::ShoppingLine* lineAt(const QModelIndex& index) const;
    /// Invalid if there is no such line.
    [[nodiscard]] QModelIndex find(const std::string& key) const;

Q_SIGNALS:
    void ticked(const QString& key, bool isBought);

private:
    QStandardItem* addHeading(QStandardItem* under, const QString& text);
    void addLine(QStandardItem* under, std::size_t place);
    static void showTick(QStandardItem& thing, const shopping::ShoppingLine& line);
    void showTicks(const QModelIndex& parent);

    shopping::ShoppingList list_;
    bool isShowing_ = false;
};

} // namespace suppertide::ui
