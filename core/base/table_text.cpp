#include "core/base/table_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

namespace suppertide {

namespace {

std::string_view withoutBlanks(std::string_view text)
{
    const auto first = text.find_first_not_of(" \r");
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(" \r") - first + 1);
}

std::vector<std::string_view> parts(std::string_view text, char by)
{
    std::vector<std::string_view> result;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find(by, from), text.size());
        result.push_back(withoutBlanks(text.substr(from, to - from)));
        from = to + 1;
    }
    return result;
}

Failure tableFault(std::string_view table, std::size_t line, std::string_view what)
{
    return {FailureKind::BadInput,
            fmt::format("The table “{}” cannot be read: line {} {}. Correct that line.", table,
                        line, what),
            ""};
}

} // namespace

std::optional<double> decimalNumber(std::string_view text)
{
    double value = 0;
    const char* const end = text.data() + text.size();
    const auto [stop, error] = std::from_chars(text.data(), end, value);
    if (error != std::errc{} || stop != end || !std::isfinite(value)) {
        return std::nullopt;
    }
    return value;
}

std::string_view TableRow::text(std::string_view column) const
{
    const auto at = header_->columns.find(column);
    expects(at != header_->columns.end(), "the table has the column");
    const std::string_view cell = cells_[at->second];
    return cell == "-" ? std::string_view{} : cell;
}

std::vector<std::string_view> TableRow::list(std::string_view column) const
{
    return isEmpty(column) ? std::vector<std::string_view>{} : parts(text(column), ',');
}

Result<double> TableRow::number(std::string_view column) const
{
    if (const auto value = decimalNumber(text(column))) {
        return *value;
    }
    return fault(column, "a number");
}

Result<std::optional<double>> TableRow::optionalNumber(std::string_view column) const
{
    if (isEmpty(column)) {
        return std::optional<double>{};
    }
    const Result<double> value = number(column);
    if (!value) {
        return value.error();
    }
    return std::optional{*value};
}

Failure TableRow::fault(std::string_view column, std::string_view expected) const
{
    return tableFault(
        header_->name, line_,
        fmt::format("has “{}” as {}, where {} is expected", text(column), column, expected));
}

Result<TableText> TableText::read(std::string_view name, std::string_view text,
                                  const std::vector<std::string_view>& columns)
{
    auto header = std::make_shared<TableRow::Header>();
    header->name = name;
    TableText table;
    std::size_t number = 0;
    for (const std::string_view line : parts(text, '\n')) {
        ++number;
        if (line.empty() || line.starts_with('#')) {
            continue;
        }
        std::vector<std::string_view> cells = parts(line, '\t');
        if (header->columns.empty()) {
            for (const std::string_view column : cells) {
                if (!header->columns.emplace(column, header->columns.size()).second) {
                    return tableFault(name, number,
                                      fmt::format("names the column “{}” twice", column));
                }
            }
            continue;
        }
        if (cells.size() != header->columns.size()) {
            return tableFault(
                name, number,
                fmt::format("has {} cells instead of {}", cells.size(), header->columns.size()));
        }
        TableRow row;
        row.header_ = header;
        row.line_ = number;
        row.cells_ = std::move(cells);
        table.rows_.push_back(std::move(row));
    }
    for (const std::string_view column : columns) {
        if (!header->columns.contains(column)) {
            return tableFault(name, 1, fmt::format("lacks the column “{}”", column));
        }
    }
    return table;
}

} // namespace suppertide
