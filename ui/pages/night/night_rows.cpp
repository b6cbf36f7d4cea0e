#include "ui/pages/night/night_rows.h"

#include <algorithm>

namespace suppertide::ui {

namespace {

QString words(const std::string& text)
{
    return QString::fromStdString(text);
}

NightRow heading(const QString& text)
{
    NightRow row;
    row.kind = RowKind::Heading;
    row.text = text;
    return row;
}

NightRow note(const QString& text)
{
    NightRow row;
    row.kind = RowKind::Note;
    row.text = text;
    return row;
}

NightRow lineRow(const NightLine& line)
{
    NightRow row;
    row.state = line.state;
    row.task = words(line.task);
    row.text = words(line.deed);
    row.when = words(line.when);
    row.late = words(line.late);
    row.detail = words(line.detail);
    QStringList amounts;
    for (const std::string& amount : line.amounts) {
        amounts.push_back(words(amount));
    }
    if (!amounts.isEmpty()) {
        row.detail += (row.detail.isEmpty() ? QString() : QStringLiteral(" · ")) +
                      amounts.join(QStringLiteral(", "));
    }
    for (const std::string& caution : line.cautions) {
        row.cautions.push_back(words(caution));
    }
    return row;
}

void add(std::vector<NightRow>& rows, const std::vector<NightLine>& lines)
{
    std::transform(lines.begin(), lines.end(), std::back_inserter(rows), lineRow);
}

} // namespace

std::vector<NightRow> nightRows(const NightSheet& sheet)
{
    std::vector<NightRow> rows;
    for (const NightCook& cook : sheet.cooks) {
        const QString seated = words(cook.seated);
        const QString name =
            words(cook.name) + (seated.isEmpty() ? QString() : QStringLiteral(", ") + seated);
        rows.push_back(heading(NightRows::tr("%1: now").arg(name)));
        if (cook.now.empty()) {
            rows.push_back(note(NightRows::tr("Nothing to do just now.")));
        }
        add(rows, cook.now);
    }
    for (const NightCook& cook : sheet.cooks) {
        if (!cook.next.empty()) {
            rows.push_back(heading(NightRows::tr("%1: next").arg(words(cook.name))));
            add(rows, cook.next);
        }
    }
    if (!sheet.byThemselves.empty()) {
        rows.push_back(heading(NightRows::tr("By themselves")));
        add(rows, sheet.byThemselves);
    }
    if (!sheet.turns.empty()) {
        rows.push_back(heading(NightRows::tr("Ovens")));
        for (const std::string& turn : sheet.turns) {
            rows.push_back(note(words(turn)));
        }
    }
    if (!sheet.servings.empty()) {
        rows.push_back(heading(NightRows::tr("To serve")));
        for (const std::string& guests : sheet.notes) {
            rows.push_back(note(words(guests)));
        }
        add(rows, sheet.servings);
    }
    return rows;
}

void NightRows::setRows(std::vector<NightRow> rows)
{
    if (rows == rows_) {
        return;
    }
    const auto isSameLine = [](const NightRow& a, const NightRow& b) {
        return a.kind == b.kind && a.task == b.task;
    };
    if (std::equal(rows.begin(), rows.end(), rows_.begin(), rows_.end(), isSameLine)) {
        rows_ = std::move(rows);
        Q_EMIT dataChanged(index(0), index(rowCount() - 1));
        return;
    }
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
}

const NightRow& NightRows::row(const QModelIndex& index) const
{
    return rows_.at(static_cast<std::size_t>(index.row()));
}

QModelIndex NightRows::indexOf(const QString& task) const
{
    const auto is = [&task](const NightRow& row) {
        return row.kind == RowKind::Line && (task.isEmpty() || row.task == task);
    };
    const auto found = std::find_if(rows_.begin(), rows_.end(), is);
    return found == rows_.end() ? QModelIndex()
                                : index(static_cast<int>(std::distance(rows_.begin(), found)));
}

int NightRows::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant NightRows::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || (role != Qt::DisplayRole && role != Qt::AccessibleTextRole)) {
        return {};
    }
    const NightRow& shown = row(index);
    QStringList parts{shown.text};
    for (const QString& part : {shown.when, shown.late, shown.detail}) {
        if (!part.isEmpty()) {
            parts.push_back(part);
        }
    }
    return (parts + shown.cautions).join(QStringLiteral(", "));
}

Qt::ItemFlags NightRows::flags(const QModelIndex& index) const
{
    if (!index.isValid()) {
        return Qt::NoItemFlags;
    }
    return row(index).kind == RowKind::Line ? Qt::ItemIsEnabled | Qt::ItemIsSelectable
                                            : Qt::ItemFlags(Qt::ItemIsEnabled);
}

} // namespace suppertide::ui
