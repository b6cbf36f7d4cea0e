// Cells of the safety tables: "145 °F", "112 min", words of enumerations. Used by the readers of
// each table and by nobody else.
#pragma once

#include <algorithm>
#include <optional>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/table_text.h"
#include "core/safety/published_temperature.h"
#include "core/safety/rules.h"

namespace suppertide::safety {

/// "145 °F", "-4 °F", "63 °C"; nothing if the cell is empty.
[[nodiscard]] Result<std::optional<PublishedTemperature>> temperatureCell(const TableRow& row,
                                                                          std::string_view column);
/// Minutes of "15 s", "112 min", "2 h", "7 d", "1 w" or "3 mo" (of 30 days). "<1 s" is 1 s: never
/// shorter than the source. Nothing if the cell is empty.
[[nodiscard]] Result<std::optional<double>> minutesCell(const TableRow& row,
                                                        std::string_view column);

template <typename T>
using Word = std::pair<std::string_view, T>;

/// The value that a word of the table stands for.
template <typename T>
[[nodiscard]] Result<T> wordCell(const TableRow& row, std::string_view column,
                                 std::span<const Word<T>> words)
{
    const auto found = std::ranges::find(words, row.text(column), &Word<T>::first);
    if (found == words.end()) {
        return row.fault(column, "a word of this program");
    }
    return found->second;
}

/// The first failure among results of several types; nothing if there is none.
template <typename... T>
[[nodiscard]] std::optional<Failure> firstFailure(const Result<T>&... results)
{
    std::optional<Failure> failure;
    (..., (!failure && !results ? void(failure = results.error()) : void()));
    return failure;
}

/// "us_home,us_trade"; empty: none.
[[nodiscard]] Result<std::vector<RuleBook>> booksCell(const TableRow& row);
/// "raw meat,bacon"; "*": none named.
[[nodiscard]] Result<std::vector<FoodClass>> foodsCell(const TableRow& row);
[[nodiscard]] Result<Strength> strengthCell(const TableRow& row);
[[nodiscard]] Result<Weight> weightCell(const TableRow& row);
[[nodiscard]] Result<RowStatus> statusCell(const TableRow& row);

} // namespace suppertide::safety
