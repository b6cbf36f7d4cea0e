#include "ui/models/way_items.h"

#include <algorithm>

namespace suppertide::ui {

WayRow wayRow(const WayOut& way, const ReadingStyle& style)
{
    return {true, QString::fromStdString(changeSentence(way, style)),
            QString::fromStdString(effectSentence(way, style)), way.points};
}

WayItems::WayItems(QObject* parent) : QAbstractListModel(parent) {}

void WayItems::clear()
{
    beginResetModel();
    rows_.clear();
    endResetModel();
}

void WayItems::setReasons(const QStringList& reasons)
{
    beginResetModel();
    std::erase_if(rows_, [](const WayRow& row) { return !row.isWay; });
    std::vector<WayRow> said;
    for (const QString& reason : reasons) {
        said.push_back({false, reason, {}, 0});
    }
    rows_.insert(rows_.begin(), said.begin(), said.end());
    endResetModel();
}

void WayItems::add(WayRow row)
{
    const auto place = std::find_if(rows_.begin(), rows_.end(), [&row](const WayRow& other) {
        return other.isWay && other.points > row.points;
    });
    const int at = static_cast<int>(place - rows_.begin());
    beginInsertRows({}, at, at);
    rows_.insert(place, std::move(row));
    endInsertRows();
}

int WayItems::wayNumber(int row) const
{
    const auto end = rows_.begin() +
                     std::clamp<std::ptrdiff_t>(row, 0, static_cast<std::ptrdiff_t>(rows_.size()));
    return static_cast<int>(
        std::count_if(rows_.begin(), end, [](const WayRow& each) { return each.isWay; }));
}

int WayItems::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant WayItems::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || index.row() >= static_cast<int>(rows_.size())) {
        return {};
    }
    const WayRow& row = rows_[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole:
        return row.change;
    case EffectRole:
        return row.effect;
    case IsWayRole:
        return row.isWay;
    case Qt::AccessibleTextRole:
        return row.isWay ? tr("Way out: %1 %2").arg(row.change, row.effect) : row.change;
    default:
        return {};
    }
}

} // namespace suppertide::ui
