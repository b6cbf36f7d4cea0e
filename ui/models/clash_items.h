// ClashItems: the clashes of a plan as a list for a view, numbered as on the timeline.
#pragma once

#include <QAbstractListModel>

#include <vector>

#include "core/occasion/occasion.h"
#include "core/plan/plan.h"
#include "core/wording/wording.h"

namespace suppertide::ui {

struct ClashRow
{
    int number = 1;
    Severity severity = Severity::Impossible;
    QString sentence;
    QString where;         // "Oven, Saturday 17:40 to 18:10"
    QString kind;          // "oven temperature"
    std::string firstTask; // id; empty: it concerns no step
    std::optional<Interval> when;
    std::string temperatures; // whose are shown with it (temperature_curves); empty: of none

    friend bool operator==(const ClashRow&, const ClashRow&) = default;
};

[[nodiscard]] std::vector<ClashRow> clashRows(const Plan& plan, const Occasion& occasion,
                                              const ReadingStyle& style);

class ClashItems : public QAbstractListModel
{
    Q_OBJECT

public:
    enum Role
    {
        NumberRole = Qt::UserRole,
        SeverityRole,     // int of Severity
        SeverityWordRole, // "Impossible"
        WhereRole,
        TemperaturesRole // key of a food or an oven; empty: none
    };

    explicit ClashItems(QObject* parent = nullptr);

    void setRows(std::vector<ClashRow> rows);
    [[nodiscard]] const std::vector<ClashRow>& rows() const { return rows_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<ClashRow> rows_;
};

} // namespace suppertide::ui
