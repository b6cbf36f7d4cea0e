#include "core/quantity/amount.h"

#include <fmt/format.h>

#include <algorithm>

namespace suppertide {

namespace {

/// The nearest multiple of `step` (half to even), but not 0 for what is not 0.
std::int64_t roundedTo(const Rational& value, std::int64_t step)
{
    const std::int64_t count = (value / Rational{step}).rounded();
    return count == 0 && value > Rational{0} ? std::max<std::int64_t>(1, value.rounded())
                                             : count * step;
}

/// Grams or millilitres as a kitchen scale or jug shows them.
std::int64_t asScaleShows(const Rational& value)
{
    if (value < Rational{100}) {
        return roundedTo(value, 1);
    }
    return value < Rational{1000} ? roundedTo(value, 5) : roundedTo(value, 10);
}

std::string smallAndLarge(const Rational& inSmall, std::string_view small, std::string_view large)
{
    const std::int64_t count = asScaleShows(inSmall);
    if (count < 1000) {
        return fmt::format("{} {}", count, small);
    }
    std::string digits = fmt::format("{}.{:03}", count / 1000, count % 1000);
    while (digits.back() == '0') {
        digits.pop_back();
    }
    if (digits.back() == '.') {
        digits.pop_back();
    }
    return fmt::format("{} {}", digits, large);
}

/// "2½": whole and quarters, at least a quarter.
std::string quarters(const Rational& value)
{
    const std::int64_t count =
        std::max<std::int64_t>(value > Rational{0} ? 1 : 0, (value * Rational{4}).rounded());
    static constexpr std::array<std::string_view, 4> parts{"", "¼", "½", "¾"};
    const std::string_view part = parts[static_cast<std::size_t>(count % 4)];
    return count / 4 == 0 && !part.empty() ? std::string(part)
                                           : fmt::format("{}{}", count / 4, part);
}

} // namespace

std::string_view symbolOf(Unit unit)
{
    switch (unit) {
    case Unit::Gram:
        return "g";
    case Unit::Kilogram:
        return "kg";
    case Unit::Millilitre:
        return "ml";
    case Unit::Litre:
        return "l";
    case Unit::Teaspoon:
        return "tsp";
    case Unit::Tablespoon:
        return "tbsp";
    case Unit::Piece:
        return "piece";
    case Unit::Pinch:
        return "pinch";
    case Unit::ToTaste:
        return "to taste";
    }
    return "";
}

std::optional<Unit> findUnit(std::string_view symbol)
{
    const auto found = std::ranges::find(allUnits, symbol, symbolOf);
    return found == allUnits.end() ? std::nullopt : std::optional{*found};
}

Amount scaled(const Amount& amount, const Rational& factor)
{
    return {amount.value * factor, amount.unit};
}

std::string toText(const Amount& amount)
{
    switch (amount.unit) {
    case Unit::Gram:
        return smallAndLarge(amount.value, "g", "kg");
    case Unit::Kilogram:
        return smallAndLarge(amount.value * Rational{1000}, "g", "kg");
    case Unit::Millilitre:
        return smallAndLarge(amount.value, "ml", "l");
    case Unit::Litre:
        return smallAndLarge(amount.value * Rational{1000}, "ml", "l");
    case Unit::Teaspoon:
    case Unit::Tablespoon:
        return fmt::format("{} {}", quarters(amount.value), symbolOf(amount.unit));
    case Unit::Piece:
        return quarters(amount.value);
    case Unit::Pinch:
        return amount.value > Rational{1} ? fmt::format("{} pinches", quarters(amount.value))
                                          : "a pinch";
    case Unit::ToTaste:
        return "to taste";
    }
    return {};
}

} // namespace suppertide
