#include "ui/models/shopping_items.h"

#include <functional>
#include <optional>

#include "core/shopping/shopping_text.h"

namespace suppertide::ui {

namespace {

constexpr int placeRole = Qt::UserRole + 1;

QString text(const std::string& words)
{
    return QString::fromStdString(words);
}

shopping::ShoppingList withoutTicks(shopping::ShoppingList list)
{
    for (shopping::ShoppingLine& line : list.lines) {
        line.isBought = false;
        line.boughtBefore.reset();
    }
    return list;
}

QStandardItem* plain(const QString& words)
{
    auto* item = new QStandardItem(words);
    item->setEditable(false);
    return item;
}

} // namespace

ShoppingItems::ShoppingItems(QObject* parent) : QStandardItemModel(parent)
{
    setHorizontalHeaderLabels({tr("Thing"), tr("Buy"), tr("Price")});
    connect(this, &QStandardItemModel::itemChanged, this, [this](const QStandardItem* item) {
        const auto* line = lineAt(item->index());
        if (!isShowing_ && line != nullptr && item->column() == Thing) {
            Q_EMIT ticked(text(line->key), item->checkState() == Qt::Checked);
        }
    });
}

QStandardItem* ShoppingItems::addHeading(QStandardItem* under, const QString& words)
{
    QStandardItem* heading = plain(words);
    under->appendRow({heading, plain({}), plain({})});
    return heading;
}

void ShoppingItems::addLine(QStandardItem* under, std::size_t place)
{
    const shopping::ShoppingLine& line = list_.lines[place];
    const QString named = text(line.ingredient);
    const QString buy = line.trip ? text(shopping::buyText(line, list_.measures)) : QString();
    // Beside a timeline there is no room for a column more.
    QStandardItem* thing = plain(line.trip ? tr("%1: %2").arg(named, buy) : named);
    thing->setData(QVariant::fromValue(static_cast<qulonglong>(place)), placeRole);
    QString cost;
    if (line.trip && line.cost) {
        cost = text(priceText(*line.cost, list_.currency));
    }
    if (line.trip) {
        thing->setCheckable(true);
        showTick(*thing, line);
    }
    thing->setAccessibleText(thing->text());
    thing->setToolTip(thing->text());
    QStandardItem* price = plain(cost);
    price->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    under->appendRow({thing, plain(buy), price});
}

void ShoppingItems::showTick(QStandardItem& thing, const shopping::ShoppingLine& line)
{
    thing.setCheckState(line.isBought       ? Qt::Checked
                        : line.boughtBefore ? Qt::PartiallyChecked
                                            : Qt::Unchecked);
    QFont font = thing.font();
    font.setStrikeOut(line.isBought);
    thing.setFont(font);
}

void ShoppingItems::showTicks(const QModelIndex& parent)
{
    for (int row = 0; row < rowCount(parent); ++row) {
        const QModelIndex child = index(row, Thing, parent);
        if (const auto* line = lineAt(child); line != nullptr && line->trip) {
            showTick(*itemFromIndex(child), *line);
        }
        showTicks(child);
    }
}

bool ShoppingItems::show(const shopping::ShoppingList& list)
{
    if (withoutTicks(list) == withoutTicks(list_)) {
        // The row that is just being ticked must not be taken away under the view.
        isShowing_ = true;
        list_ = list;
        showTicks({});
        isShowing_ = false;
        return false;
    }
    isShowing_ = true;
    list_ = list;
    removeRows(0, rowCount());
    std::vector<QStandardItem*> trips;
    for (const shopping::TripOfList& trip : list_.trips) {
        trips.push_back(addHeading(invisibleRootItem(), text(shopping::tripText(trip))));
    }
    QStandardItem* rest = nullptr;
    QStandardItem* section = nullptr;
    std::optional<std::pair<std::size_t, std::string>> shown;
    for (std::size_t i = 0; i < list_.lines.size(); ++i) {
        const shopping::ShoppingLine& line = list_.lines[i];
        if (!line.trip) {
            rest =
                rest == nullptr ? addHeading(invisibleRootItem(), tr("Nothing to buy of")) : rest;
            addLine(rest, i);
            continue;
        }
        const std::pair now{*line.trip, line.section};
        if (shown != now) {
            shown = now;
            section = addHeading(trips[*line.trip],
                                 line.section.empty() ? tr("elsewhere") : text(line.section));
        }
        addLine(section, i);
    }
    isShowing_ = false;
    return true;
}

const shopping::ShoppingLine* ShoppingItems::lineAt(const QModelIndex& index) const
{
    const QVariant place = index.sibling(index.row(), Thing).data(placeRole);
    if (!place.isValid() || place.toULongLong() >= list_.lines.size()) {
        return nullptr;
    }
    return &list_.lines[static_cast<std::size_t>(place.toULongLong())];
}

QModelIndex ShoppingItems::find(const std::string& key) const
{
    const std::function<QModelIndex(const QModelIndex&)> under = [&](const QModelIndex& parent) {
        for (int row = 0; row < rowCount(parent); ++row) {
            const QModelIndex child = index(row, Thing, parent);
            const auto* line = lineAt(child);
            if (line != nullptr && line->key == key) {
                return child;
            }
            if (const QModelIndex found = under(child); found.isValid()) {
                return found;
            }
        }
        return QModelIndex();
    };
    return under({});
}

} // namespace suppertide::ui
