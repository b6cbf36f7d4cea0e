// OutlineItems: the rows of an outline as a tree for a view.
#pragma once

#include <QAbstractItemModel>

#include <vector>

#include "ui/models/outline.h"

namespace suppertide::ui {

class OutlineItems : public QAbstractItemModel
{
    Q_OBJECT

public:
    enum Role
    {
        IdRole = Qt::UserRole,
        DetailRole,
        LookRole,
        IsHeadingRole,
        FaultRole
    };

    explicit OutlineItems(QObject* parent = nullptr);

    void setRows(std::vector<OutlineRow> rows);
    /// The row of that id, or of the nearest part of its path that is there.
    [[nodiscard]] QModelIndex find(const std::string& id) const;
    [[nodiscard]] std::string idAt(const QModelIndex& index) const;

    [[nodiscard]] QModelIndex index(int row, int column, const QModelIndex& parent) const override;
    [[nodiscard]] QModelIndex parent(const QModelIndex& child) const override;
    [[nodiscard]] int rowCount(const QModelIndex& parent) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    struct Node
    {
        std::size_t parent = 0; // 0: the invisible root
        int row = 0;
        std::vector<std::size_t> children;
    };
    void buildTree();
    [[nodiscard]] const Node& nodeAt(const QModelIndex& index) const;
    [[nodiscard]] QModelIndex indexOf(std::size_t node) const;

    std::vector<OutlineRow> rows_; // row i is node i + 1
    std::vector<Node> nodes_{Node{}};
};

} // namespace suppertide::ui
