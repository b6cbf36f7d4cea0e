#include "ui/models/menu_table_model.h"

#include <algorithm>

#include "core/wording/menu_words.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

using menus::Cookable;
using menus::Figure;

enum Column
{
    Name,
    Cooked,
    Suits,
    FirstFigure
};

constexpr int figures = static_cast<int>(menus::allFigures.size());

Figure figureOf(int column)
{
    return menus::allFigures[static_cast<std::size_t>(column - FirstFigure)];
}

int columnOf(Figure figure)
{
    return FirstFigure + static_cast<int>(std::ranges::find(menus::allFigures, figure) -
                                          menus::allFigures.begin());
}

QString text(std::string_view words)
{
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

} // namespace

MenuTableModel::MenuTableModel(QObject* parent) : QAbstractTableModel(parent) {}

void MenuTableModel::show(const MenuComparison* comparison)
{
    beginResetModel();
    comparison_ = comparison;
    order_.clear();
    if (comparison_ != nullptr) {
        order_.resize(comparison_->menus().size());
        for (std::size_t i = 0; i < order_.size(); ++i) {
            order_[i] = i;
        }
    }
    arrange();
    endResetModel();
}

void MenuTableModel::refresh()
{
    sort(column_, direction_);
    if (!order_.empty()) {
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    }
}

int MenuTableModel::rowOf(std::size_t menu) const
{
    const auto found = std::ranges::find(order_, menu);
    return found == order_.end() ? -1 : static_cast<int>(found - order_.begin());
}

std::optional<std::size_t> MenuTableModel::menuAt(int row) const
{
    return row >= 0 && row < rowCount() ? std::optional{order_[static_cast<std::size_t>(row)]}
                                        : std::nullopt;
}

int MenuTableModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(order_.size());
}

int MenuTableModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : FirstFigure + figures;
}

QString MenuTableModel::cell(std::size_t menu, int column) const
{
    const menus::ComparedMenu& compared = comparison_->menus()[menu];
    switch (column) {
    case Name:
        return comparison_->nameOf(menu);
    case Cooked:
        return compared.cookable == Cookable::Yes  ? tr("yes")
               : compared.cookable == Cookable::No ? tr("no")
                                                   : tr("not settled");
    case Suits:
        return text(whomItSuits(comparison_->occasion(), compared));
    default:
        return text(figureText(figureOf(column), menus::valueOf(compared, figureOf(column))));
    }
}

/// What stands behind the figure.
QString MenuTableModel::tip(std::size_t menu, int column) const
{
    const menus::ComparedMenu& compared = comparison_->menus()[menu];
    if (column == columnOf(Figure::Repeated)) {
        return text(repeatedText(comparison_->occasion(), compared));
    }
    if (column == columnOf(Figure::Price) && !compared.leftUsed.empty()) {
        return tr("%1. Used instead of bought: %2.")
            .arg(cell(menu, column), text(leftUsedText(compared)));
    }
    return cell(menu, column);
}

QVariant MenuTableModel::data(const QModelIndex& index, int role) const
{
    const auto menu = menuAt(index.row());
    if (!menu || comparison_ == nullptr) {
        return {};
    }
    switch (role) {
    case Qt::DisplayRole:
        // A star stands for what no colour need tell.
        return index.column() == Name && unbeaten_[*menu] ? u"★ "_s + cell(*menu, Name)
                                                          : cell(*menu, index.column());
    case Qt::AccessibleTextRole:
        return index.column() == Name
                   ? unbeaten_[*menu] ? tr("%1, nothing beats it").arg(cell(*menu, Name))
                                      : cell(*menu, Name)
                   : tr("%1: %2").arg(
                         headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString(),
                         cell(*menu, index.column()));
    case Qt::ToolTipRole:
        return tip(*menu, index.column());
    case Qt::TextAlignmentRole:
        return index.column() >= FirstFigure ? QVariant(Qt::AlignRight | Qt::AlignVCenter)
                                             : QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    case menuRole:
        return static_cast<int>(*menu);
    default:
        return {};
    }
}

QVariant MenuTableModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal) {
        return {};
    }
    if (role == Qt::ToolTipRole && section >= FirstFigure) {
        return text(meaningOf(figureOf(section)));
    }
    if (role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
    case Name:
        return tr("Menu");
    case Cooked:
        return tr("Can be cooked");
    case Suits:
        return tr("Suits");
    default:
        return figureName(figureOf(section));
    }
}

void MenuTableModel::sort(int column, Qt::SortOrder order)
{
    Q_EMIT layoutAboutToBeChanged({}, QAbstractItemModel::VerticalSortHint);
    const QModelIndexList before = persistentIndexList();
    std::vector<std::size_t> menus;
    for (const QModelIndex& each : before) {
        menus.push_back(order_[static_cast<std::size_t>(each.row())]);
    }
    column_ = column;
    direction_ = order;
    arrange();
    QModelIndexList after;
    for (qsizetype i = 0; i < before.size(); ++i) {
        after.push_back(index(rowOf(menus[static_cast<std::size_t>(i)]), before[i].column()));
    }
    changePersistentIndexList(before, after);
    Q_EMIT layoutChanged({}, QAbstractItemModel::VerticalSortHint);
}

/// What is not known stands last, whichever way the rest is sorted.
void MenuTableModel::arrange()
{
    unbeaten_.assign(order_.size(), false);
    if (comparison_ == nullptr) {
        return;
    }
    for (const MenuPoint& point : comparison_->points()) {
        unbeaten_[point.menu] = point.isUnbeaten;
    }
    // Worked out once for each menu, not at each comparison of ten thousand.
    std::vector<SortKey> keys;
    keys.reserve(order_.size());
    for (std::size_t menu = 0; menu < order_.size(); ++menu) {
        keys.push_back(keyOf(menu));
    }
    std::ranges::sort(order_, {}, [&keys](std::size_t menu) { return keys[menu]; });
}

MenuTableModel::SortKey MenuTableModel::keyOf(std::size_t menu) const
{
    const menus::ComparedMenu& compared = comparison_->menus()[menu];
    const std::int64_t sign = direction_ == Qt::AscendingOrder ? 1 : -1;
    switch (column_) {
    case Name:
        return {false, sign * static_cast<std::int64_t>(menu), menu};
    case Cooked:
        return {false, sign * static_cast<std::int64_t>(compared.cookable), menu};
    case Suits:
        return {false,
                sign * static_cast<std::int64_t>(10 * compared.notServed.size() +
                                                 compared.unsure.size()),
                menu};
    default: {
        const auto value = menus::valueOf(compared, figureOf(column_));
        return {!value.has_value(), sign * value.value_or(0), menu};
    }
    }
}

} // namespace suppertide::ui
