// TableText: a table of figures as text: lines of cells parted by tabs, a first line with the names
// of the columns, comment lines that begin with '#'. "-" is an empty cell. A fault names its line.
#pragma once

#include <cstddef>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace suppertide {

/// One line of a table. Columns that the table lacks are a fault of whoever asks.
class TableRow
{
public:
    /// Of the text that was read, from 1.
    [[nodiscard]] std::size_t line() const noexcept { return line_; }
    /// The cell as it stands; empty if it is "-".
    [[nodiscard]] std::string_view text(std::string_view column) const;
    [[nodiscard]] bool isEmpty(std::string_view column) const { return text(column).empty(); }
    /// The cell's parts between commas, without blanks around them; none if it is empty.
    [[nodiscard]] std::vector<std::string_view> list(std::string_view column) const;
    /// A finite number with a decimal point. BadInput names table, line and column.
    [[nodiscard]] Result<double> number(std::string_view column) const;
    /// The same, or nothing if the cell is empty.
    [[nodiscard]] Result<std::optional<double>> optionalNumber(std::string_view column) const;
    /// A failure about one cell, for readers that expect more than text or numbers.
    [[nodiscard]] Failure fault(std::string_view column, std::string_view expected) const;

private:
    friend class TableText;
    struct Header
    {
        std::string name;
        std::map<std::string_view, std::size_t, std::less<>> columns;
    };
    std::shared_ptr<const Header> header_;
    std::size_t line_ = 0;
    std::vector<std::string_view> cells_;
};

/// Keeps views into the text that it was read from, which must outlive it.
class TableText
{
public:
    /// `name` is that of the table, for faults. BadInput if the first line is missing, a column
    /// stands twice, one of `columns` is not there, or a line has another number of cells.
    static Result<TableText> read(std::string_view name, std::string_view text,
                                  const std::vector<std::string_view>& columns);

    [[nodiscard]] const std::vector<TableRow>& rows() const { return rows_; }

private:
    std::vector<TableRow> rows_;
};

/// A finite decimal number that is the whole text ("-4", "22.5"); nothing otherwise.
[[nodiscard]] std::optional<double> decimalNumber(std::string_view text);

} // namespace suppertide
