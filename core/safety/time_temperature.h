// Time–temperature equivalents: how long a core at a lower temperature does as well as a moment at
// a higher one. Read from the published tables; between two rows the logarithm of time is linear in
// temperature, below the lowest row nothing counts, and a row of zero time counts only from its own
// temperature on, so that a figure is never shorter than the source's.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/safety/published_temperature.h"
#include "core/safety/rules.h"

namespace suppertide::safety {

struct TimeTemperatureRow
{
    PublishedTemperature temperature;
    double minutes = 0;
    RowStatus status = RowStatus::Confirmed;
};

struct TimeTemperatureTable
{
    std::string name; // "fsis_meat_65"
    std::string source;
    std::string section;
    std::vector<TimeTemperatureRow> rows; // ascending in temperature, all in one unit

    /// Minutes at a constant core of `celsius`; nothing below the lowest row. Above the highest
    /// row: as there.
    [[nodiscard]] std::optional<double> minutesAt(double celsius) const;
};

/// All tables, in the order of resources/tables/time_temperature.tsv; then "fsis_poultry", at each
/// temperature the longest of the poultry tables there (chicken of 1 and 12 % fat, turkey of 1 %),
/// as FSIS asks for birds of unknown kind or fat.
[[nodiscard]] const std::vector<TimeTemperatureTable>& allTimeTemperatureTables();
/// Null if there is none of that name.
[[nodiscard]] const TimeTemperatureTable* findTimeTemperatureTable(std::string_view name);
/// BadInput names the line: unreadable cells, rows of a table out of order or in mixed units.
[[nodiscard]] Result<std::vector<TimeTemperatureTable>>
readTimeTemperatureTables(std::string_view table);

/// A core temperature at a moment.
struct CoreReading
{
    double minute = 0;
    double celsius = 0;
};

/// The share of what the table asks for that a curve has gathered: the integral of one over
/// `minutesAt` along it, linear between readings, exact between the table's rows. 1 or more:
/// enough. A reading at or above a row of zero time counts as 1. Linear in readings and rows.
/// Requires readings in order of time.
[[nodiscard]] double shareGathered(const TimeTemperatureTable& table,
                                   std::span<const CoreReading> curve);

} // namespace suppertide::safety
