// Amount: how much of an ingredient a recipe asks for, exactly, in the recipe's own unit; also a
// range ("2–3 tbsp"). What it comes to in other units is core/quantity/conversion; how it is shown
// in the user's system, core/quantity/kitchen_text.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/quantity/rational.h"
#include "core/quantity/unit.h"

namespace suppertide {

struct Amount
{
    Rational value;
    Unit unit = Unit::Gram;
    std::optional<Rational> upTo = std::nullopt; // of a range, above `value`

    /// What must be there so that the range is covered: its upper end.
    [[nodiscard]] const Rational& most() const noexcept { return upTo ? *upTo : value; }
    /// The upper end alone, no range.
    [[nodiscard]] Amount atMost() const { return {most(), unit}; }

    friend bool operator==(const Amount&, const Amount&) = default;
};

/// Not below 0, and a range ends above where it begins.
[[nodiscard]] bool isPossible(const Amount& amount);

/// Exact: scaling by a and then by b equals scaling by ab, at both ends of a range.
[[nodiscard]] Amount scaled(const Amount& amount, const Rational& factor);

/// The same in another unit, exactly; absent if the two do not convert. Between metric and
/// customary units the fraction grows long: round before doing sums with it.
[[nodiscard]] std::optional<Amount> inUnit(const Amount& amount, Unit unit);

/// For reading, in the amount's own unit: "1.2 kg", "235 g", "2½ tbsp", "a pinch", "3",
/// "2–3 cloves". Grams and millilitres round to what a kitchen scale shows (1 below 100, 5 below
/// 1000, 10 above); all else to a quarter, cups also to a third, but never to nothing.
[[nodiscard]] std::string toText(const Amount& amount);

} // namespace suppertide
