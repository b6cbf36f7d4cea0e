#include "core/safety/storage_days.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/own_table.h"
#include "core/safety/table_cells.h"

namespace suppertide::tables {

std::string_view storageDays();

} // namespace suppertide::tables

namespace suppertide::safety {

namespace {

Minutes wholeMinutes(double minutes)
{
    return Minutes{std::llround(minutes)};
}

Result<std::optional<KeepingTime>> keepingTime(const TableRow& row, std::string_view least,
                                               std::string_view most)
{
    const auto from = minutesCell(row, least);
    const auto to = minutesCell(row, most);
    if (!from) {
        return from.error();
    }
    if (!to) {
        return to.error();
    }
    if (from->has_value() != to->has_value() || (*from && **from > **to)) {
        return row.fault(most, "no less than in the column before");
    }
    if (!*from) {
        return std::optional<KeepingTime>{};
    }
    return std::optional{KeepingTime{wholeMinutes(**from), wholeMinutes(**to)}};
}

Result<StorageRow> storageRowOf(const TableRow& row)
{
    const auto foods = foodsCell(row);
    const auto books = booksCell(row);
    const auto fridge = keepingTime(row, "fridge_least", "fridge_most");
    const auto freezer = keepingTime(row, "freezer_least", "freezer_most");
    const auto strength = strengthCell(row);
    const auto weight = weightCell(row);
    const auto status = statusCell(row);
    if (const auto failure =
            firstFailure(foods, books, fridge, freezer, strength, weight, status)) {
        return *failure;
    }
    if (row.isEmpty("id") || row.isEmpty("source")) {
        return row.fault("source", "a text");
    }
    return StorageRow{std::string(row.text("id")),
                      std::string(row.text("label")),
                      *foods,
                      *books,
                      *fridge,
                      *freezer,
                      *strength,
                      *weight,
                      *status,
                      std::string(row.text("source")),
                      std::string(row.text("section"))};
}

} // namespace

Result<std::vector<StorageRow>> readStorageRows(std::string_view table)
{
    const auto text = TableText::read("storage_days", table,
                                      {"id", "label", "foods", "books", "fridge_least",
                                       "fridge_most", "freezer_least", "freezer_most", "strength",
                                       "weight", "status", "source", "section"});
    if (!text) {
        return text.error();
    }
    std::vector<StorageRow> rows;
    for (const TableRow& row : text->rows()) {
        auto read = storageRowOf(row);
        if (!read) {
            return read.error();
        }
        rows.push_back(std::move(*read));
    }
    return rows;
}

const std::vector<StorageRow>& allStorageRows()
{
    static const std::vector<StorageRow> rows =
        ownTable(readStorageRows(tables::storageDays()), "the table of keeping times can be read");
    return rows;
}

const StorageRow* findStorageRow(std::string_view id)
{
    const auto found = std::ranges::find(allStorageRows(), id, &StorageRow::id);
    return found == allStorageRows().end() ? nullptr : &*found;
}

const StorageRow* storageOf(RuleBook book, FoodClass food)
{
    const auto found = std::ranges::find_if(allStorageRows(), [&](const StorageRow& row) {
        return std::ranges::find(row.books, book) != row.books.end() &&
               std::ranges::find(row.foods, food) != row.foods.end();
    });
    return found == allStorageRows().end() ? nullptr : &*found;
}

} // namespace suppertide::safety
