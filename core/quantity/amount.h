// Amount: how much of an ingredient a recipe asks for, exactly, in the recipe's own unit.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "core/quantity/rational.h"

namespace suppertide {

/// Units that a recipe line may use. Piece counts whole things ("2 lemons").
enum class Unit
{
    Gram,
    Kilogram,
    Millilitre,
    Litre,
    Teaspoon,   // 5 ml, metric kitchen measure (common practice)
    Tablespoon, // 15 ml, metric kitchen measure (common practice)
    Piece,
    Pinch,
    ToTaste,
};

inline constexpr std::array allUnits{Unit::Gram,  Unit::Kilogram, Unit::Millilitre,
                                     Unit::Litre, Unit::Teaspoon, Unit::Tablespoon,
                                     Unit::Piece, Unit::Pinch,    Unit::ToTaste};

/// "g", "kg", "ml", "l", "tsp", "tbsp", "piece", "pinch", "to taste": as in files and on screen.
[[nodiscard]] std::string_view symbolOf(Unit unit);
[[nodiscard]] std::optional<Unit> findUnit(std::string_view symbol);

struct Amount
{
    Rational value;
    Unit unit = Unit::Gram;

    friend bool operator==(const Amount&, const Amount&) = default;
};

/// Exact: scaling by a and then by b equals scaling by ab.
[[nodiscard]] Amount scaled(const Amount& amount, const Rational& factor);

/// For reading: "1.2 kg", "235 g", "2½ tbsp", "a pinch", "3". Grams and millilitres round to what
/// a kitchen scale shows (1 below 100, 5 below 1000, 10 above); spoons and pieces to a quarter,
/// but never to nothing.
[[nodiscard]] std::string toText(const Amount& amount);

} // namespace suppertide
