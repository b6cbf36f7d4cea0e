#include "ui/models/clash_items.h"

#include "ui/models/temperature_curves.h"

namespace suppertide::ui {

namespace {

QString text(std::string_view words)
{
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

QString capitalised(QString word)
{
    if (!word.isEmpty()) {
        word[0] = word[0].toUpper();
    }
    return word;
}

} // namespace

std::vector<ClashRow> clashRows(const Plan& plan, const Occasion& occasion,
                                const ReadingStyle& style)
{
    std::vector<ClashRow> rows;
    for (const Clash& clash : plan.clashes) {
        ClashRow row;
        row.number = static_cast<int>(rows.size()) + 1;
        row.severity = clash.severity;
        row.sentence = text(sentence(plan, occasion, clash, style));
        row.where = text(placeAndTime(plan, occasion, clash, style));
        row.kind = text(nameOf(clash.kind));
        row.when = clash.when;
        row.temperatures = temperatureSubjectOf(plan, clash);
        if (!clash.tasks.empty()) {
            row.firstTask = plan.formulation->problem.tasks[clash.tasks.front()].id;
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

ClashItems::ClashItems(QObject* parent) : QAbstractListModel(parent) {}

void ClashItems::setRows(std::vector<ClashRow> rows)
{
    if (rows == rows_) {
        return;
    }
    if (rows.size() == rows_.size()) {
        rows_ = std::move(rows);
        if (!rows_.empty()) {
            Q_EMIT dataChanged(index(0), index(static_cast<int>(rows_.size()) - 1));
        }
        return;
    }
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
}

int ClashItems::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant ClashItems::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || index.row() >= static_cast<int>(rows_.size())) {
        return {};
    }
    const ClashRow& row = rows_[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole:
        return row.sentence;
    case NumberRole:
        return row.number;
    case SeverityRole:
        return static_cast<int>(row.severity);
    case SeverityWordRole:
        return capitalised(text(nameOf(row.severity)));
    case WhereRole:
        return row.where;
    case TemperaturesRole:
        return QString::fromStdString(row.temperatures);
    case Qt::AccessibleTextRole:
        return tr("Clash %1, %2: %3 %4")
            .arg(row.number)
            .arg(text(nameOf(row.severity)), row.sentence, row.where);
    default:
        return {};
    }
}

} // namespace suppertide::ui
