// WayItems: why an evening cannot be cooked, and the ways out found so far, as a list for a view;
// the cheapest way first, below the reasons.
#pragma once

#include <QAbstractListModel>

#include <vector>

#include "core/wording/advice_wording.h"

namespace suppertide::ui {

struct WayRow
{
    bool isWay = false; // else a reason, which only is to be read
    QString change;     // "Serve the main at 20:45 instead of 20:30."
    QString effect;     // "3 steps move …"
    std::int64_t points = 0;

    friend bool operator==(const WayRow&, const WayRow&) = default;
};

[[nodiscard]] WayRow wayRow(const WayOut& way, const ReadingStyle& style);

class WayItems : public QAbstractListModel
{
    Q_OBJECT

public:
    enum Role
    {
        EffectRole = Qt::UserRole,
        IsWayRole
    };

    explicit WayItems(QObject* parent = nullptr);

    void clear();
    void setReasons(const QStringList& reasons);
    /// Puts it where its points belong.
    void add(WayRow row);
    [[nodiscard]] const std::vector<WayRow>& rows() const { return rows_; }
    /// How many ways come before this row; rows of reasons count for nothing.
    [[nodiscard]] int wayNumber(int row) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<WayRow> rows_;
};

} // namespace suppertide::ui
