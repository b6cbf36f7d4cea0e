// Decimal: a JSON number taken exactly, as it is written; no binary fractions in between.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace suppertide {

/// Sign, digits and the power of ten of the last digit.
struct Decimal
{
    bool negative = false;
    std::string digits; // without leading or trailing zeros; empty: 0
    std::int64_t exponent = 0;
};

/// `text` is a number as JSON writes it ("-1.5e3").
[[nodiscard]] Decimal parseDecimal(std::string_view text);

/// The number × 10^places. Absent if that is no whole number or has more than 18 digits.
[[nodiscard]] std::optional<std::int64_t> wholeAt(const Decimal& number, int places);

/// The JSON number `count` / 10^places: wholes without a point, no zeros at the end.
[[nodiscard]] std::string decimalText(std::int64_t count, int places);

} // namespace suppertide
