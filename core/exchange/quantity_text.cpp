#include "core/exchange/quantity_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>

#include "core/exchange/decimal.h"

namespace suppertide {

namespace {

constexpr bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

/// Digits and nothing else, at most nine of them.
std::optional<std::int64_t> parseCount(std::string_view text)
{
    constexpr std::size_t mostDigits = 9;
    if (text.empty() || text.size() > mostDigits || !std::ranges::all_of(text, isDigit)) {
        return std::nullopt;
    }
    std::int64_t value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

/// The text before and after the first `separator`; the second is absent if there is none.
std::pair<std::string_view, std::optional<std::string_view>> splitAt(std::string_view text,
                                                                     char separator)
{
    const std::size_t at = text.find(separator);
    return at == std::string_view::npos
               ? std::pair{text, std::optional<std::string_view>{}}
               : std::pair{text.substr(0, at), std::optional{text.substr(at + 1)}};
}

/// "1/2"; "3" and "0.75" if `mayBeWhole`.
std::optional<Rational> parsePart(std::string_view text, bool mayBeWhole)
{
    const auto [above, below] = splitAt(text, '/');
    if (below) {
        const auto numerator = parseCount(above);
        const auto denominator = parseCount(*below);
        return numerator && denominator && *denominator != 0
                   ? std::optional{Rational{*numerator, *denominator}}
                   : std::nullopt;
    }
    const auto [whole, fraction] = splitAt(text, '.');
    constexpr std::size_t mostPlaces = 3;
    if (!mayBeWhole || !parseCount(whole) || (fraction && !parseCount(*fraction)) ||
        (fraction && fraction->size() > mostPlaces)) {
        return std::nullopt;
    }
    return Rational{wholeAt(parseDecimal(text), mostPlaces).value_or(0), 1000};
}

} // namespace

std::optional<Rational> parseFraction(std::string_view text)
{
    const auto [first, second] = splitAt(text, ' ');
    std::optional<Rational> value;
    if (!second) {
        value = parsePart(first, true);
    } else if (const auto whole = parseCount(first)) {
        const auto fraction = parsePart(*second, false);
        value = fraction ? std::optional{Rational{*whole} + *fraction} : std::nullopt;
    }
    return value && isInRange(*value) ? value : std::nullopt;
}

std::string fractionText(const Rational& value)
{
    const std::int64_t whole = value.numerator() / value.denominator();
    if (value.isWhole() || whole <= 0) {
        return value.text();
    }
    return fmt::format("{} {}", whole, (value - Rational{whole}).text());
}

bool isInRange(const Rational& value)
{
    return value >= Rational{0} && value <= Rational{mostAmount} &&
           value.denominator() <= mostDenominator;
}

namespace {

/// "2-3": both ends, the second above the first; or one number.
std::optional<Amount> parseNumbers(std::string_view text, Unit unit)
{
    const auto [first, second] = splitAt(text, '-');
    const auto value = parseFraction(first);
    if (!value || !second) {
        return value ? std::optional{Amount{*value, unit}} : std::nullopt;
    }
    const auto upTo = parseFraction(*second);
    return upTo && *upTo > *value ? std::optional{Amount{*value, unit, *upTo}} : std::nullopt;
}

} // namespace

std::optional<Amount> parseAmount(std::string_view text)
{
    if (text == symbolOf(Unit::ToTaste)) {
        return Amount{Rational{0}, Unit::ToTaste};
    }
    if (text == symbolOf(Unit::Pinch)) {
        return Amount{Rational{1}, Unit::Pinch};
    }
    for (const Unit unit : allUnits) {
        const std::string_view symbol = symbolOf(unit);
        if (text.size() > symbol.size() + 1 && text.ends_with(symbol) &&
            text[text.size() - symbol.size() - 1] == ' ') {
            // "2 US tsp" ends in "tsp" too, but "2 US" is no number.
            if (auto amount = parseNumbers(text.substr(0, text.size() - symbol.size() - 1), unit)) {
                return amount;
            }
        }
    }
    return std::nullopt;
}

std::string amountText(const Amount& amount)
{
    if (amount == Amount{Rational{0}, Unit::ToTaste} ||
        amount == Amount{Rational{1}, Unit::Pinch}) {
        return std::string(symbolOf(amount.unit));
    }
    if (amount.upTo) {
        return fmt::format("{}-{} {}", fractionText(amount.value), fractionText(*amount.upTo),
                           symbolOf(amount.unit));
    }
    return fmt::format("{} {}", fractionText(amount.value), symbolOf(amount.unit));
}

std::optional<Minutes> parseMinutes(std::string_view text)
{
    struct Named
    {
        std::array<std::string_view, 2> names;
        std::int64_t minutes;
    };
    static constexpr std::array<Named, 3> units{
        {{{"day", "days"}, std::int64_t{24} * 60}, {{"h", "h"}, 60}, {{"min", "min"}, 1}}};
    std::int64_t sum = 0;
    std::size_t largestLeft = 0; // each unit once, the larger first
    std::optional<std::string_view> rest = text;
    while (rest) {
        const auto [number, afterNumber] = splitAt(*rest, ' ');
        const auto count = parseCount(number);
        if (!count || *count > mostMinutes || !afterNumber) {
            return std::nullopt;
        }
        const auto [name, afterName] = splitAt(*afterNumber, ' ');
        while (largestLeft < units.size() && std::ranges::find(units.at(largestLeft).names, name) ==
                                                 units.at(largestLeft).names.end()) {
            ++largestLeft;
        }
        if (largestLeft == units.size()) {
            return std::nullopt;
        }
        sum += *count * units.at(largestLeft).minutes;
        ++largestLeft;
        rest = afterName;
    }
    return sum <= mostMinutes ? std::optional{Minutes{sum}} : std::nullopt;
}

} // namespace suppertide
