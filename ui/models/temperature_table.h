// TemperatureTable: the stays of a food, or of dishes in an oven, as rows of a table: the chart in
// figures, for who reads or hears them rather than sees a curve.
#pragma once

#include <QAbstractTableModel>

#include "ui/models/temperature_view.h"

namespace suppertide::ui {

class TemperatureTable : public QAbstractTableModel
{
    Q_OBJECT

public:
    using QAbstractTableModel::QAbstractTableModel;

    /// Of another subject, or none; rows that only change stay where they are.
    void show(const TemperatureView& view);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    std::vector<TemperatureStay> stays_;
    QStringList columns_;
};

} // namespace suppertide::ui
