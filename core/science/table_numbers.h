// TableNumbers: the numbers of one row of a table, of which the first that cannot be read is kept
// as the fault of the row. Used by the readers of this folder's tables.
#pragma once

#include <optional>
#include <string_view>

#include "core/base/table_text.h"

namespace suppertide::science {

class TableNumbers
{
public:
    explicit TableNumbers(const TableRow& row) : row_(row) {}

    /// The cell, or 0 after noting the fault.
    double number(std::string_view column)
    {
        const auto cell = row_.number(column);
        if (!cell && !fault_) {
            fault_ = cell.error();
        }
        return cell ? *cell : 0.0;
    }

    std::optional<double> optionalNumber(std::string_view column)
    {
        const auto cell = row_.optionalNumber(column);
        if (!cell && !fault_) {
            fault_ = cell.error();
        }
        return cell ? *cell : std::nullopt;
    }

    [[nodiscard]] const std::optional<Failure>& fault() const { return fault_; }

private:
    const TableRow& row_;
    std::optional<Failure> fault_;
};

} // namespace suppertide::science
