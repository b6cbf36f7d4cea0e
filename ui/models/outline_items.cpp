#include "ui/models/outline_items.h"

#include "ui/models/row_path.h"

namespace suppertide::ui {

namespace {

QString spoken(const OutlineRow& row)
{
    QStringList parts{row.title};
    for (const QString& more : {row.detail, row.fault}) {
        if (!more.isEmpty()) {
            parts << more;
        }
    }
    return parts.join(QStringLiteral(", "));
}

} // namespace

OutlineItems::OutlineItems(QObject* parent) : QAbstractItemModel(parent) {}

void OutlineItems::setRows(std::vector<OutlineRow> rows)
{
    const bool isSameShape = std::equal(rows.begin(), rows.end(), rows_.begin(), rows_.end(),
                                        [](const OutlineRow& a, const OutlineRow& b) {
                                            return a.id == b.id && a.depth == b.depth;
                                        });
    if (!isSameShape) {
        beginResetModel();
        rows_ = std::move(rows);
        buildTree();
        endResetModel();
        return;
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i] != rows_[i]) {
            rows_[i] = std::move(rows[i]);
            Q_EMIT dataChanged(indexOf(i + 1), indexOf(i + 1));
        }
    }
}

/// Rows of depth 0 stand at the top; a deeper one under the last one that is less deep. A heading
/// takes the rows of depth 1 that follow it.
void OutlineItems::buildTree()
{
    nodes_.assign(1, Node{});
    std::vector<std::size_t> above{0}; // the last node of each depth, the root first
    for (const OutlineRow& row : rows_) {
        const auto depth = static_cast<std::size_t>(row.depth);
        above.resize(std::min(above.size(), depth + 1));
        const std::size_t node = nodes_.size();
        Node& parent = nodes_[above.back()];
        const int place = static_cast<int>(parent.children.size());
        parent.children.push_back(node);
        nodes_.push_back({above.back(), place, {}});
        above.push_back(node);
    }
}

QModelIndex OutlineItems::find(const std::string& id) const
{
    for (RowPath path(id); path.size() > 0; path = path.parent()) {
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            if (rows_[i].id == path.text()) {
                return indexOf(i + 1);
            }
        }
    }
    return {};
}

std::string OutlineItems::idAt(const QModelIndex& index) const
{
    return index.isValid() ? rows_[index.internalId() - 1].id : std::string();
}

const OutlineItems::Node& OutlineItems::nodeAt(const QModelIndex& index) const
{
    return nodes_[index.isValid() ? index.internalId() : 0];
}

QModelIndex OutlineItems::indexOf(std::size_t node) const
{
    return node == 0 ? QModelIndex() : createIndex(nodes_[node].row, 0, node);
}

QModelIndex OutlineItems::index(int row, int column, const QModelIndex& parent) const
{
    const Node& node = nodeAt(parent);
    if (row < 0 || row >= static_cast<int>(node.children.size()) || column != 0) {
        return {};
    }
    return createIndex(row, 0, node.children[static_cast<std::size_t>(row)]);
}

QModelIndex OutlineItems::parent(const QModelIndex& child) const
{
    return child.isValid() ? indexOf(nodeAt(child).parent) : QModelIndex();
}

int OutlineItems::rowCount(const QModelIndex& parent) const
{
    return static_cast<int>(nodeAt(parent).children.size());
}

int OutlineItems::columnCount(const QModelIndex& /*parent*/) const
{
    return 1;
}

QVariant OutlineItems::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) {
        return {};
    }
    const OutlineRow& row = rows_[index.internalId() - 1];
    switch (role) {
    case Qt::DisplayRole:
        return row.title;
    case Qt::AccessibleTextRole:
        return spoken(row);
    case Qt::ToolTipRole:
        return row.fault.isEmpty() ? QVariant() : QVariant(row.fault);
    case IdRole:
        return QString::fromStdString(row.id);
    case DetailRole:
        return row.detail;
    case LookRole:
        return row.look ? QVariant(*row.look) : QVariant();
    case IsHeadingRole:
        return row.kind == RowKind::Heading;
    case FaultRole:
        return row.fault;
    default:
        return {};
    }
}

} // namespace suppertide::ui
