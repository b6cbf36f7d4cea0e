#include "ui/models/temperature_table.h"

#include <array>

namespace suppertide::ui {

namespace {

constexpr std::array members{&TemperatureStay::from,    &TemperatureStay::place,
                             &TemperatureStay::first,   &TemperatureStay::last,
                             &TemperatureStay::surface, &TemperatureStay::to};

} // namespace

void TemperatureTable::show(const TemperatureView& view)
{
    if (view.stays.size() == stays_.size() && view.columns == columns_) {
        if (view.stays != stays_) {
            stays_ = view.stays;
            Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
        }
        return;
    }
    beginResetModel();
    stays_ = view.stays;
    columns_ = view.columns;
    endResetModel();
}

int TemperatureTable::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(stays_.size());
}

int TemperatureTable::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(columns_.size());
}

QVariant TemperatureTable::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || index.row() >= rowCount() || index.column() >= columnCount()) {
        return {};
    }
    const TemperatureStay& stay = stays_[static_cast<std::size_t>(index.row())];
    const QString& text = stay.*members.at(static_cast<std::size_t>(index.column()));
    if (role == Qt::DisplayRole) {
        return text;
    }
    if (role == Qt::AccessibleTextRole) {
        return tr("%1: %2").arg(columns_.at(index.column()), text);
    }
    return {};
}

QVariant TemperatureTable::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (role != Qt::DisplayRole) {
        return {};
    }
    return orientation == Qt::Horizontal ? QVariant(columns_.value(section))
                                         : QVariant(section + 1);
}

} // namespace suppertide::ui
