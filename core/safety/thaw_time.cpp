#include "core/safety/thaw_time.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/base/own_table.h"
#include "core/safety/table_cells.h"

namespace suppertide::tables {

std::string_view thawTimes();

} // namespace suppertide::tables

namespace suppertide::safety {

namespace {

constexpr std::array methodWords{
    Word<ThawBy>{"fridge", ThawBy::Fridge},
    Word<ThawBy>{"cold water", ThawBy::ColdWater},
    Word<ThawBy>{"running water", ThawBy::RunningWater},
    Word<ThawBy>{"microwave", ThawBy::Microwave},
    Word<ThawBy>{"cooking", ThawBy::Cooking},
    Word<ThawBy>{"counter", ThawBy::Counter},
};

/// Pounds of "12 lb".
Result<double> poundsCell(const TableRow& row, std::string_view column)
{
    const std::string_view text = row.text(column);
    const auto pounds =
        text.ends_with(" lb") ? decimalNumber(text.substr(0, text.size() - 3)) : std::nullopt;
    if (!pounds || *pounds <= 0) {
        return row.fault(column, "a mass such as 12 lb");
    }
    return *pounds;
}

Failure notPublished(ThawBy method, std::string_view range)
{
    return {FailureKind::BadInput,
            fmt::format("No published rule says how long thawing takes here (by {}; known for the "
                        "fridge and cold water, {}). Thaw in the fridge and look after a day.",
                        nameOf(method), range),
            ""};
}

Minutes roundedUp(double minutes)
{
    return Minutes{std::llround(std::ceil(minutes - onTheLimit))};
}

} // namespace

std::string_view nameOf(ThawBy method)
{
    const auto found = std::ranges::find(methodWords, method, &Word<ThawBy>::second);
    return found == methodWords.end() ? std::string_view{} : found->first;
}

Result<std::vector<ThawRow>> readThawRows(std::string_view table)
{
    const auto text = TableText::read(
        "thaw_times", table,
        {"id", "method", "from", "to", "least", "most", "status", "source", "section"});
    if (!text) {
        return text.error();
    }
    std::vector<ThawRow> rows;
    for (const TableRow& row : text->rows()) {
        const auto method = wordCell<ThawBy>(row, "method", methodWords);
        const auto from = poundsCell(row, "from");
        const auto to = poundsCell(row, "to");
        const auto least = minutesCell(row, "least");
        const auto most = minutesCell(row, "most");
        const auto status = statusCell(row);
        if (const auto failure = firstFailure(method, from, to, least, most, status)) {
            return *failure;
        }
        if (!*least || !*most || **least > **most) {
            return row.fault("most", "a time no less than the least");
        }
        rows.push_back({std::string(row.text("id")), *method, *from, *to,
                        KeepingTime{roundedUp(**least), roundedUp(**most)}, *status,
                        std::string(row.text("source")), std::string(row.text("section"))});
    }
    return rows;
}

const std::vector<ThawRow>& allThawRows()
{
    static const std::vector<ThawRow> rows =
        ownTable(readThawRows(tables::thawTimes()), "the table of thawing times can be read");
    return rows;
}

Result<KeepingTime> thawTime(ThawBy method, double kilograms)
{
    const double pounds = kilograms / kilogramsPerPound;
    const auto row = std::ranges::find_if(allThawRows(), [method](const ThawRow& each) {
        return each.method == method && each.fromPounds == each.toPounds;
    });
    if (row == allThawRows().end() || !(kilograms > 0) || kilograms > 25) {
        return notPublished(method, "up to 25 kg");
    }
    const auto minutes = [pounds](Minutes each) {
        return roundedUp(pounds * static_cast<double>(each.count()));
    };
    return KeepingTime{minutes(row->time.least), minutes(row->time.most)};
}

Result<KeepingTime> turkeyThawTime(ThawBy method, double pounds)
{
    const ThawRow* found = nullptr;
    for (const ThawRow& row : allThawRows()) {
        if (row.method == method && row.fromPounds < row.toPounds && pounds >= row.fromPounds &&
            pounds <= row.toPounds) {
            found = &row;
        }
    }
    if (found == nullptr) {
        return notPublished(method, "a turkey of 4 to 24 lb");
    }
    return found->time;
}

} // namespace suppertide::safety
