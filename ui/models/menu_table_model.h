// MenuTableModel: compared menus as rows of a table that can be sorted by any column; rows keep
// their places in a view while more becomes known of them.
#pragma once

#include <QAbstractTableModel>

#include <tuple>
#include <vector>

#include "ui/models/menu_comparison.h"

namespace suppertide::ui {

class MenuTableModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    /// The number of the row's menu.
    static constexpr int menuRole = Qt::UserRole;

    explicit MenuTableModel(QObject* parent = nullptr);

    /// Other menus, or none; `comparison` must outlive this or the next call.
    void show(const MenuComparison* comparison);
    /// More is known of some, or the figures of the chart have changed.
    void refresh();

    [[nodiscard]] int rowOf(std::size_t menu) const;
    [[nodiscard]] std::optional<std::size_t> menuAt(int row) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;
    void sort(int column, Qt::SortOrder order) override;

private:
    /// Unknown last, then by value, equal ones by number.
    using SortKey = std::tuple<bool, std::int64_t, std::size_t>;

    void arrange();
    [[nodiscard]] SortKey keyOf(std::size_t menu) const;
    [[nodiscard]] QString tip(std::size_t menu, int column) const;
    [[nodiscard]] QString cell(std::size_t menu, int column) const;

    const MenuComparison* comparison_ = nullptr;
    std::vector<std::size_t> order_; // menus, by row
    std::vector<bool> unbeaten_;     // by menu
    int column_ = 0;
    Qt::SortOrder direction_ = Qt::AscendingOrder;
};

} // namespace suppertide::ui
