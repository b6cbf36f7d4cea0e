#include "ui/models/mix_model.h"

#include <algorithm>

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

QString text(std::string_view words)
{
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

MixModel::Mark markOfCell(const menus::MixCell& cell)
{
    if (!cell.suitability.isFree()) {
        return MixModel::Against;
    }
    return cell.suitability.unknown.empty() ? MixModel::Free : MixModel::Unknown;
}

} // namespace

void MixModel::show(const LibraryState& library)
{
    auto input = placesInput(library);
    menus::MixTable table = input ? menus::mixTableOf(*input) : menus::MixTable{};
    const bool isSameShape = table.places.columns == table_.places.columns &&
                             table.places.guests == table_.places.guests &&
                             std::ranges::equal(table.rows, table_.rows, {},
                                                &menus::MixRow::helping, &menus::MixRow::helping);
    if (!isSameShape) {
        beginResetModel();
    }
    input_ = input ? *std::move(input) : PlanInput{};
    const bool isOther = table != table_;
    table_ = std::move(table);
    if (!isSameShape) {
        endResetModel();
    } else if (isOther && !isEmpty() && columnCount() > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
        Q_EMIT headerDataChanged(Qt::Vertical, 0, rowCount() - 1);
    }
}

int MixModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(table_.rows.size());
}

int MixModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(table_.places.guests.size());
}

bool MixModel::isInTable(int guest, int row) const
{
    return guest >= 0 && guest < columnCount() && row >= 0 && row < rowCount();
}

bool MixModel::isTheirs(const QModelIndex& cell) const
{
    return isInTable(cell.column(), cell.row()) && cellAt(cell.column(), cell.row()).isTheirs;
}

int MixModel::rowOfPortion(int guest, int row) const
{
    for (int each = 0; isInTable(guest, row) && each < rowCount(); ++each) {
        if (rowAt(each).column == rowAt(row).column && cellAt(guest, each).isTheirs) {
            return each;
        }
    }
    return -1;
}

int MixModel::rowAway(int row, int by) const
{
    const int step = by < 0 ? -1 : 1;
    for (; by != 0 && row + step >= 0 && row + step < rowCount() &&
           rowAt(row + step).column == rowAt(row).column;
         by -= step) {
        row += step;
    }
    return row;
}

const menus::PlaceColumn& MixModel::columnOf(int row) const
{
    return table_.places.columns[rowAt(row).column];
}

QString MixModel::nameOf(int row) const
{
    const auto& helping = rowAt(row).helping;
    if (!helping) {
        return columnOf(row).isMain ? tr("nothing") : tr("goes without");
    }
    return helpingName(input_, helping->first, helping->second);
}

QString MixModel::guestOf(int guest) const
{
    return guestName(input_, table_.places.guests[static_cast<std::size_t>(guest)]);
}

bool MixModel::isFirst(int row) const
{
    return row == 0 || rowAt(row - 1).column != rowAt(row).column;
}

bool MixModel::canMove(int guest, int from, int to) const
{
    return isInTable(guest, from) && isInTable(guest, to) &&
           menus::moveFault(table_, static_cast<std::size_t>(guest), static_cast<std::size_t>(from),
                            static_cast<std::size_t>(to)) == menus::MoveFault::None;
}

QString MixModel::moveWords(int guest, int from, int to) const
{
    if (!isInTable(guest, from) || !isInTable(guest, to)) {
        return tr("A portion goes to another row of the same course. Nothing is changed.");
    }
    switch (menus::moveFault(table_, static_cast<std::size_t>(guest),
                             static_cast<std::size_t>(from), static_cast<std::size_t>(to))) {
    case menus::MoveFault::NoPortion:
        return tr("%1 has no portion there to move. Take one that is marked ●.")
            .arg(guestOf(guest));
    case menus::MoveFault::OtherCourse:
        return tr("“%1” is of another course (%2). Take the portion to a row under %3.")
            .arg(nameOf(to), text(columnOf(to).name), text(columnOf(from).name));
    case menus::MoveFault::None:
        break;
    }
    if (!rowAt(to).helping) {
        return columnOf(to).isMain
                   ? tr("%1 gets nothing in %2: that is told as a clash.")
                         .arg(guestOf(guest), text(columnOf(to).name))
                   : tr("%1 goes without %2.").arg(guestOf(guest), text(columnOf(to).name));
    }
    const Suitability& suitability = cellAt(guest, to).suitability;
    const QString gets = tr("%1 gets %2").arg(guestOf(guest), nameOf(to));
    const QString against = wordsOf(suitability);
    if (against.isEmpty()) {
        return tr("%1.").arg(gets);
    }
    return suitability.isFree() ? tr("%1: %2.").arg(gets, against)
                                : tr("%1: %2. That is told as a clash.").arg(gets, against);
}

std::optional<Edit> MixModel::move(const LibraryState& library, int guest, int from, int to) const
{
    if (from == to || !canMove(guest, from, to)) {
        return std::nullopt;
    }
    return givenHelping(library, input_, columnOf(to),
                        table_.places.guests[static_cast<std::size_t>(guest)], rowAt(to).helping);
}

QString MixModel::cellWords(int guest, int row) const
{
    const menus::MixCell& cell = cellAt(guest, row);
    const QString against = wordsOf(cell.suitability);
    if (cell.isTheirs) {
        return against.isEmpty() ? tr("gets it") : tr("gets it; %1").arg(against);
    }
    return against.isEmpty() ? tr("could get it") : against;
}

QVariant MixModel::data(const QModelIndex& index, int role) const
{
    if (!isInTable(index.column(), index.row())) {
        return {};
    }
    const menus::MixCell& cell = cellAt(index.column(), index.row());
    switch (role) {
    case Qt::DisplayRole: {
        const QString sign = cell.isTheirs ? u"●"_s : QString();
        const Mark mark = markOfCell(cell);
        return mark == Against ? sign + u"✕"_s : mark == Unknown ? sign + u"?"_s : sign;
    }
    case Qt::ToolTipRole:
    case Qt::AccessibleTextRole:
        return tr("%1, %2: %3")
            .arg(guestOf(index.column()), nameOf(index.row()),
                 cellWords(index.column(), index.row()));
    case Qt::TextAlignmentRole:
        return Qt::AlignCenter;
    case markRole:
        return markOfCell(cell);
    case isFirstRole:
        return isFirst(index.row());
    default:
        return {};
    }
}

QVariant MixModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (section < 0) {
        return {};
    }
    if (orientation == Qt::Horizontal) {
        return section < columnCount() && role == Qt::DisplayRole ? guestOf(section) : QVariant();
    }
    if (section >= rowCount()) {
        return {};
    }
    if (role == Qt::TextAlignmentRole) {
        return static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter);
    }
    return role == Qt::DisplayRole   ? QVariant(rowWords(section))
           : role == Qt::ToolTipRole ? QVariant(nameOf(section))
                                     : QVariant();
}

/// "SOUP / Chilled soup / with egg (2)", a line each; what stands above already is left out.
QString MixModel::rowWords(int section) const
{
    const menus::MixRow& row = rowAt(section);
    QStringList lines;
    if (isFirst(section)) {
        lines << text(columnOf(section).name).toUpper();
    }
    if (!row.helping) {
        lines << nameOf(section);
        return lines.join(u'\n');
    }
    const HelpingWords words = helpingWords(input_, row.helping->first, row.helping->second);
    const GivenHelping before = section == 0 ? GivenHelping{} : rowAt(section - 1).helping;
    const bool isOtherDish = isFirst(section) || !before || before->first != row.helping->first;
    const QString portions =
        row.portions > Portions{0} ? u" (%1)"_s.arg(text(row.portions.text())) : QString();
    if (words.variant.isEmpty()) {
        lines << words.dish + portions;
    } else {
        if (isOtherDish) {
            lines << words.dish;
        }
        lines << u"    "_s + words.variant + portions;
    }
    return lines.join(u'\n');
}

} // namespace suppertide::ui
