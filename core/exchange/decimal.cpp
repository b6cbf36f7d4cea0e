#include "core/exchange/decimal.h"

#include <fmt/format.h>

#include <algorithm>

namespace suppertide {

Decimal parseDecimal(std::string_view text)
{
    constexpr std::int64_t mostExponent = 1'000'000; // beyond any use; keeps the sum in range
    Decimal result;
    bool afterPoint = false;
    std::size_t i = 0;
    for (; i < text.size() && text[i] != 'e' && text[i] != 'E'; ++i) {
        if (text[i] == '-') {
            result.negative = true;
        } else if (text[i] == '.') {
            afterPoint = true;
        } else {
            result.digits += text[i];
            result.exponent -= afterPoint ? 1 : 0;
        }
    }
    if (i < text.size()) {
        const bool less = text[i + 1] == '-';
        i += (less || text[i + 1] == '+') ? 2U : 1U;
        std::int64_t exponent = 0;
        for (; i < text.size(); ++i) {
            exponent = std::min(mostExponent, exponent * 10 + (text[i] - '0'));
        }
        result.exponent += less ? -exponent : exponent;
    }
    while (!result.digits.empty() && result.digits.back() == '0') {
        result.digits.pop_back();
        ++result.exponent;
    }
    result.digits.erase(0, result.digits.find_first_not_of('0'));
    return result;
}

std::optional<std::int64_t> wholeAt(const Decimal& number, int places)
{
    if (number.digits.empty()) {
        return 0;
    }
    constexpr std::int64_t mostDigits = 18; // fit 64 bits
    const std::int64_t zeros = number.exponent + places;
    if (zeros < 0 || static_cast<std::int64_t>(number.digits.size()) + zeros > mostDigits) {
        return std::nullopt;
    }
    std::int64_t result = 0;
    for (const char digit : number.digits) {
        result = result * 10 + (digit - '0');
    }
    for (std::int64_t i = 0; i < zeros; ++i) {
        result *= 10;
    }
    return number.negative ? -result : result;
}

std::string decimalText(std::int64_t count, int places)
{
    std::int64_t unit = 1;
    for (int i = 0; i < places; ++i) {
        unit *= 10;
    }
    const bool negative = count < 0;
    const std::int64_t whole = count / unit;
    std::string fraction = fmt::format("{:0{}}", negative ? -(count % unit) : count % unit, places);
    while (!fraction.empty() && fraction.back() == '0') {
        fraction.pop_back();
    }
    const std::string sign = negative && whole == 0 && !fraction.empty() ? "-" : "";
    return fraction.empty() ? std::to_string(whole) : fmt::format("{}{}.{}", sign, whole, fraction);
}

} // namespace suppertide
