#include "ui/models/place_model.h"

#include <QCoreApplication>

#include <algorithm>

#include "core/menus/mix.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

struct Words
{
    Q_DECLARE_TR_FUNCTIONS(Places)
};

QString text(std::string_view words)
{
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

} // namespace

void PlaceModel::show(const LibraryState& library)
{
    auto input = placesInput(library);
    menus::PlaceTable table = input ? menus::placesOf(*input) : menus::PlaceTable{};
    const bool isSameShape = table.columns == table_.columns && table.guests == table_.guests;
    if (!isSameShape) {
        beginResetModel();
    }
    input_ = input ? *std::move(input) : PlanInput{};
    const bool isOther = table != table_;
    table_ = std::move(table);
    if (!isSameShape) {
        endResetModel();
    } else if (isOther && !isEmpty()) {
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    }
}

int PlaceModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(table_.guests.size());
}

int PlaceModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(table_.columns.size());
}

const menus::PlaceCell* PlaceModel::cellAt(const QModelIndex& index) const
{
    if (!index.isValid() || index.row() >= rowCount() || index.column() >= columnCount()) {
        return nullptr;
    }
    return &table_.cells[static_cast<std::size_t>(index.row())]
                        [static_cast<std::size_t>(index.column())];
}

QString PlaceModel::nameOf(const menus::PlaceOption& option) const
{
    return helpingName(input_, option.dish, option.variant);
}

QString PlaceModel::cellText(const QModelIndex& index) const
{
    const menus::PlaceCell* cell = cellAt(index);
    if (cell == nullptr) {
        return {};
    }
    if (!*cell) {
        return table_.columns[static_cast<std::size_t>(index.column())].isMain
                   ? Words::tr("✕ nothing")
                   : Words::tr("– goes without");
    }
    const QString mark = markOf((*cell)->suitability);
    return mark.isEmpty() ? nameOf(**cell) : mark + u": "_s + nameOf(**cell);
}

QString PlaceModel::guestOf(int row) const
{
    return guestName(input_, table_.guests[static_cast<std::size_t>(row)]);
}

QVariant PlaceModel::data(const QModelIndex& index, int role) const
{
    const menus::PlaceCell* cell = cellAt(index);
    if (cell == nullptr) {
        return {};
    }
    switch (role) {
    case Qt::DisplayRole:
        return cellText(index);
    case Qt::ToolTipRole:
        return *cell && !wordsOf((*cell)->suitability).isEmpty() ? wordsOf((*cell)->suitability)
                                                                 : cellText(index);
    case Qt::AccessibleTextRole:
        return Words::tr("%1, %2: %3")
            .arg(guestOf(index.row()),
                 headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString(),
                 *cell && !wordsOf((*cell)->suitability).isEmpty()
                     ? nameOf(**cell) + u", "_s + wordsOf((*cell)->suitability)
                     : cellText(index));
    default:
        return {};
    }
}

QVariant PlaceModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (role != Qt::DisplayRole || section < 0) {
        return {};
    }
    if (orientation == Qt::Vertical) {
        return section < rowCount() ? guestOf(section) : QString();
    }
    return section < columnCount() ? text(table_.columns[static_cast<std::size_t>(section)].name)
                                   : QString();
}

Qt::ItemFlags PlaceModel::flags(const QModelIndex& index) const
{
    const Qt::ItemFlags usual = QAbstractTableModel::flags(index);
    return index.isValid() ? usual | Qt::ItemIsEditable : usual;
}

std::vector<PlaceChoice> PlaceModel::choices(const QModelIndex& cell) const
{
    if (cellAt(cell) == nullptr) {
        return {};
    }
    std::vector<PlaceChoice> choices{{Words::tr("nothing"), std::nullopt}};
    const auto options =
        menus::optionsFor(input_, table_.columns[static_cast<std::size_t>(cell.column())],
                          table_.guests[static_cast<std::size_t>(cell.row())]);
    for (const menus::PlaceOption& option : options) {
        const QString mark = markOf(option.suitability);
        choices.push_back({mark.isEmpty() ? nameOf(option) : mark + u": "_s + nameOf(option),
                           std::pair{option.dish, option.variant}});
    }
    return choices;
}

int PlaceModel::choiceNow(const QModelIndex& cell) const
{
    const menus::PlaceCell* now = cellAt(cell);
    if (now == nullptr || !*now) {
        return 0;
    }
    const auto all = choices(cell);
    const auto found = std::ranges::find(
        all, std::optional{std::pair{(*now)->dish, (*now)->variant}}, &PlaceChoice::helping);
    return found == all.end() ? 0 : static_cast<int>(found - all.begin());
}

std::optional<Edit> PlaceModel::edit(const LibraryState& library, const QModelIndex& cell,
                                     int choice) const
{
    const auto all = choices(cell);
    if (choice < 0 || static_cast<std::size_t>(choice) >= all.size() || choice == choiceNow(cell)) {
        return std::nullopt;
    }
    return givenHelping(library, input_, table_.columns[static_cast<std::size_t>(cell.column())],
                        table_.guests[static_cast<std::size_t>(cell.row())],
                        all[static_cast<std::size_t>(choice)].helping);
}

QString PlaceModel::summary() const
{
    int against = 0;
    int unknown = 0;
    for (const auto& row : table_.cells) {
        for (std::size_t column = 0; column < row.size(); ++column) {
            const bool isNothing = !row[column] && table_.columns[column].isMain;
            against += isNothing || (row[column] && !row[column]->suitability.isFree()) ? 1 : 0;
            unknown += row[column] && row[column]->suitability.isFree() &&
                               !row[column]->suitability.unknown.empty()
                           ? 1
                           : 0;
        }
    }
    if (against == 0 && unknown == 0) {
        return Words::tr("Everybody gets something that nothing known speaks against. Recipes can "
                         "be wrong: ask your guests, and read the labels.");
    }
    QStringList parts;
    if (against > 0) {
        parts.push_back(against == 1 ? Words::tr("1 place with nothing, or with what the guest "
                                                 "must not have (✕)")
                                     : Words::tr("%1 places with nothing, or with what the guest "
                                                 "must not have (✕)")
                                           .arg(against));
    }
    if (unknown > 0) {
        parts.push_back(unknown == 1
                            ? Words::tr("1 place of which not all is known (?)")
                            : Words::tr("%1 places of which not all is known (?)").arg(unknown));
    }
    return Words::tr("%1. Ask your guests, and read the labels.").arg(parts.join(u"; "_s));
}

std::optional<Edit> sharedOut(const LibraryState& library, const std::optional<CourseId>& course)
{
    const auto input = placesInput(library);
    if (!input) {
        return std::nullopt;
    }
    Occasion next = *input->occasion;
    QString name;
    for (Course& each : next.courses) {
        if (course && each.id != *course) {
            continue;
        }
        name = text(each.name);
        const menus::CourseOffer offer = menus::offerOf(*input, each);
        const menus::CourseMix mix = menus::mixOf(*input, offer, menus::leadingNow(each));
        each.dishes = mix.dishes;
    }
    if (next == *input->occasion) {
        return std::nullopt;
    }
    return Edit{withOccasion(library, [&next](Occasion& occasion) { occasion = std::move(next); }),
                course ? Words::tr("Share out %1").arg(name) : Words::tr("Share out portions"),
                {}};
}

} // namespace suppertide::ui
