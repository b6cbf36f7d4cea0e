#include "core/quantity/amount.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

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

/// A number and the unit it is shown with, apart, so that a range says the unit once.
struct Shown
{
    std::string number;
    std::string_view unit;
};

Shown smallAndLarge(const Rational& inSmall, std::string_view small, std::string_view large)
{
    const std::int64_t count = asScaleShows(inSmall);
    if (count < 1000) {
        return {fmt::format("{}", count), small};
    }
    std::string digits = fmt::format("{}.{:03}", count / 1000, count % 1000);
    while (digits.back() == '0') {
        digits.pop_back();
    }
    if (digits.back() == '.') {
        digits.pop_back();
    }
    return {digits, large};
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

/// "⅓" where a third is nearer than any quarter: cups come in thirds too.
std::string thirdsOrQuarters(const Rational& value)
{
    const auto off = [&value](std::int64_t parts) {
        const Rational part{parts};
        const Rational rest = Rational{(value * part).rounded()} / part - value;
        return rest < Rational{0} ? Rational{0} - rest : rest;
    };
    const std::int64_t thirds = (value * Rational{3}).rounded();
    if (off(4) <= off(3) || thirds % 3 == 0) {
        return quarters(value);
    }
    const std::string_view part = thirds % 3 == 1 ? "⅓" : "⅔";
    return thirds / 3 == 0 ? std::string(part) : fmt::format("{}{}", thirds / 3, part);
}

bool isShownAsOnScale(Unit unit)
{
    using enum Unit;
    constexpr std::array metric{Gram, Kilogram, Millilitre, Centilitre, Decilitre, Litre};
    return std::ranges::find(metric, unit) != metric.end();
}

Shown shown(const Rational& value, Unit unit)
{
    if (isShownAsOnScale(unit)) {
        const bool isMass = dimensionOf(unit) == Dimension::Mass;
        return smallAndLarge(value * sizeOf(unit), isMass ? "g" : "ml", isMass ? "kg" : "l");
    }
    if (unit == Unit::Piece) {
        return {quarters(value), ""};
    }
    const bool isCup = unit == Unit::UsCup || unit == Unit::MetricCup;
    return {isCup ? thirdsOrQuarters(value) : quarters(value),
            value > Rational{1} ? pluralOf(unit) : symbolOf(unit)};
}

std::string joined(const std::string& number, std::string_view unit)
{
    return unit.empty() ? number : fmt::format("{} {}", number, unit);
}

} // namespace

bool isPossible(const Amount& amount)
{
    return amount.value >= Rational{0} && (!amount.upTo || *amount.upTo > amount.value);
}

Amount scaled(const Amount& amount, const Rational& factor)
{
    Amount result{amount.value * factor, amount.unit};
    // No portions take none: that is no range.
    if (amount.upTo && factor > Rational{0}) {
        result.upTo = *amount.upTo * factor;
    }
    return result;
}

std::optional<Amount> inUnit(const Amount& amount, Unit unit)
{
    if (amount.unit == unit) {
        return amount;
    }
    if (!isConvertible(amount.unit, unit)) {
        return std::nullopt;
    }
    const Rational factor = sizeOf(amount.unit) / sizeOf(unit);
    Amount result{amount.value * factor, unit};
    if (amount.upTo) {
        result.upTo = *amount.upTo * factor;
    }
    return result;
}

std::string toText(const Amount& amount)
{
    if (amount.unit == Unit::ToTaste) {
        return "to taste";
    }
    const Shown low = shown(amount.value, amount.unit);
    const Shown high = shown(amount.most(), amount.unit);
    if (low.number != high.number || low.unit != high.unit) {
        const bool isSameUnit = low.unit == high.unit || !isShownAsOnScale(amount.unit);
        return isSameUnit ? joined(fmt::format("{}–{}", low.number, high.number), high.unit)
                          : fmt::format("{} – {}", joined(low.number, low.unit),
                                        joined(high.number, high.unit));
    }
    if (dimensionOf(amount.unit) == Dimension::Inexact && amount.value <= Rational{1}) {
        return fmt::format("a {}", symbolOf(amount.unit));
    }
    return joined(low.number, low.unit);
}

} // namespace suppertide
