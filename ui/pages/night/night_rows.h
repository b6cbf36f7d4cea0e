// NightRows: the lines of the night's sheet as rows of a list: a heading for each cook, then what
// is under way, due and next. For the page's list; reads aloud as whole sentences.
#pragma once

#include <QAbstractListModel>
#include <QStringList>

#include <vector>

#include "core/sheet/night_sheet.h"

namespace suppertide::ui {

enum class RowKind
{
    Heading,
    Line,
    Note
};

struct NightRow
{
    RowKind kind = RowKind::Line;
    LineState state = LineState::Coming;
    QString task; // of a line
    QString text;
    QString when;
    QString late;
    QString detail;
    QStringList cautions;

    friend bool operator==(const NightRow&, const NightRow&) = default;
};

[[nodiscard]] std::vector<NightRow> nightRows(const NightSheet& sheet);

class NightRows : public QAbstractListModel
{
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    /// Nothing is reset if nothing has changed, and rows of the same shape stay where they are.
    void setRows(std::vector<NightRow> rows);
    [[nodiscard]] const NightRow& row(const QModelIndex& index) const;
    /// The line of that task, or the first line; invalid if there is none.
    [[nodiscard]] QModelIndex indexOf(const QString& task) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

private:
    std::vector<NightRow> rows_;
};

} // namespace suppertide::ui
