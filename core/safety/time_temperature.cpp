#include "core/safety/time_temperature.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/base/own_table.h"
#include "core/safety/table_cells.h"

namespace suppertide::tables {

std::string_view timeTemperature();

} // namespace suppertide::tables

namespace suppertide::safety {

namespace {

constexpr std::array poultryTables{"fsis_chicken_1", "fsis_chicken_12", "fsis_turkey_1"};

/// The longest time of several tables at each of their temperatures, which all have.
TimeTemperatureTable longestOf(const std::vector<TimeTemperatureTable>& tables)
{
    TimeTemperatureTable longest;
    longest.name = "fsis_poultry";
    for (const TimeTemperatureTable& table : tables) {
        if (std::ranges::find(poultryTables, table.name) == poultryTables.end()) {
            continue;
        }
        if (longest.rows.empty()) {
            longest.rows = table.rows;
            longest.source = table.source;
            longest.section = "Tables 3 and 4, the longest at each temperature";
            continue;
        }
        ensures(longest.rows.size() == table.rows.size(), "poultry tables have the same rows");
        for (std::size_t i = 0; i < table.rows.size(); ++i) {
            ensures(longest.rows[i].temperature == table.rows[i].temperature,
                    "poultry tables have the same temperatures");
            if (table.rows[i].minutes > longest.rows[i].minutes) {
                longest.rows[i] = table.rows[i];
            }
        }
    }
    return longest;
}

/// Share gathered while the reading goes linearly from `from` to `to` (in the table's unit, both
/// between two neighbouring rows of time `low` and `high` minutes at `lowAt` and `highAt`).
/// 1/t is exponential in temperature there: its mean over a linear run is a logarithmic mean.
double shareBetween(double from, double to, double minutes, const TimeTemperatureRow& low,
                    const TimeTemperatureRow& high)
{
    const double slope =
        std::log(high.minutes / low.minutes) / (high.temperature.value - low.temperature.value);
    const auto rateAt = [&](double at) {
        return std::exp(-slope * (at - low.temperature.value)) / low.minutes;
    };
    const double exponent = -slope * (to - from);
    const double mean =
        std::abs(exponent) < 1e-9 ? 1 + exponent / 2 : std::expm1(exponent) / exponent;
    return minutes * rateAt(from) * mean;
}

/// The share of a piece of curve that lies between `low` and the next row, or above the last one.
double shareOfBand(const TimeTemperatureTable& table, std::size_t row, double from, double to,
                   double minutes)
{
    const TimeTemperatureRow& low = table.rows[row];
    const bool isLast = row + 1 == table.rows.size();
    if (low.minutes <= 0) {
        return 1;
    }
    if (isLast || table.rows[row + 1].minutes <= 0) {
        return minutes / low.minutes;
    }
    return shareBetween(from, to, minutes, low, table.rows[row + 1]);
}

/// What one linear piece of the curve adds. `from` and `to` in the table's unit.
double shareOfPiece(const TimeTemperatureTable& table, double from, double to, double minutes)
{
    double share = 0;
    const double low = std::min(from, to);
    const double high = std::max(from, to);
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
        const double bandLow = table.rows[row].temperature.value;
        const bool isLast = row + 1 == table.rows.size();
        const double bandHigh = isLast ? high : table.rows[row + 1].temperature.value;
        const double a = std::max(low, bandLow);
        const double b = std::min(high, bandHigh);
        if (a > b || (a == b && low < high)) {
            continue;
        }
        const double part = low < high ? (b - a) / (high - low) : 1.0;
        // A curve that stays exactly on a row counts once, in the band above it.
        if (low == high && !isLast && low >= bandHigh) {
            continue;
        }
        share += shareOfBand(table, row, from <= to ? a : b, from <= to ? b : a, minutes * part);
    }
    return share;
}

} // namespace

std::optional<double> TimeTemperatureTable::minutesAt(double celsius) const
{
    const double at = rows.front().temperature.reading(celsius) + onTheLimit;
    if (!(at >= rows.front().temperature.value)) {
        return std::nullopt;
    }
    const auto above = std::ranges::upper_bound(
        rows, at, {}, [](const TimeTemperatureRow& row) { return row.temperature.value; });
    const TimeTemperatureRow& low = *std::prev(above);
    if (above == rows.end() || above->minutes <= 0 || low.minutes <= 0 ||
        at - low.temperature.value < 2 * onTheLimit) {
        return low.minutes;
    }
    const double part = (at - onTheLimit - low.temperature.value) /
                        (above->temperature.value - low.temperature.value);
    return std::exp(std::lerp(std::log(low.minutes), std::log(above->minutes), part));
}

Result<std::vector<TimeTemperatureTable>> readTimeTemperatureTables(std::string_view table)
{
    const auto text = TableText::read(
        "time_temperature", table, {"table", "temperature", "time", "status", "source", "section"});
    if (!text) {
        return text.error();
    }
    std::vector<TimeTemperatureTable> tables;
    for (const TableRow& row : text->rows()) {
        const auto temperature = temperatureCell(row, "temperature");
        const auto minutes = minutesCell(row, "time");
        const auto status = statusCell(row);
        if (!temperature || !*temperature) {
            return row.fault("temperature", "a temperature such as 145 °F");
        }
        if (!minutes || !*minutes) {
            return row.fault("time", "a time such as 112 min");
        }
        if (!status) {
            return status.error();
        }
        if (tables.empty() || tables.back().name != row.text("table")) {
            tables.push_back({std::string(row.text("table")),
                              std::string(row.text("source")),
                              std::string(row.text("section")),
                              {}});
        }
        auto& rows = tables.back().rows;
        if (!rows.empty() && (rows.back().temperature.unit != (*temperature)->unit ||
                              rows.back().temperature.value >= (*temperature)->value ||
                              rows.back().minutes < **minutes)) {
            return row.fault("temperature", "more than in the line before, for no longer a time");
        }
        rows.push_back({**temperature, **minutes, *status});
    }
    return tables;
}

const std::vector<TimeTemperatureTable>& allTimeTemperatureTables()
{
    static const std::vector<TimeTemperatureTable> tables = [] {
        std::vector<TimeTemperatureTable> all =
            ownTable(readTimeTemperatureTables(tables::timeTemperature()),
                     "the table of time and temperature can be read");
        all.push_back(longestOf(all));
        return all;
    }();
    return tables;
}

const TimeTemperatureTable* findTimeTemperatureTable(std::string_view name)
{
    const auto found =
        std::ranges::find(allTimeTemperatureTables(), name, &TimeTemperatureTable::name);
    return found == allTimeTemperatureTables().end() ? nullptr : &*found;
}

double shareGathered(const TimeTemperatureTable& table, std::span<const CoreReading> curve)
{
    const PublishedTemperature unit = table.rows.front().temperature;
    double share = 0;
    for (std::size_t i = 1; i < curve.size(); ++i) {
        const double minutes = curve[i].minute - curve[i - 1].minute;
        expects(minutes >= 0, "readings stand in order of time");
        share += shareOfPiece(table, unit.reading(curve[i - 1].celsius) + onTheLimit,
                              unit.reading(curve[i].celsius) + onTheLimit, minutes);
    }
    return share;
}

} // namespace suppertide::safety
