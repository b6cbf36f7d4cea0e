// Unit: what an amount of an ingredient is counted in, with its exact definition. Cups, pints and
// spoons differ between countries, so each is a unit of its own; nothing is called just "cup".
#pragma once

#include <array>
#include <optional>
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
    Teaspoon,   // metric, 5 ml
    Tablespoon, // metric, 15 ml
    Piece,
    Pinch,
    ToTaste,
    Centilitre,
    Decilitre,
    MetricCup,
    AustralianTablespoon, // 20 ml
    Ounce,
    Pound,
    UsTeaspoon,
    UsTablespoon,
    UsFluidOunce,
    UsCup,
    UsPint,
    UsQuart,
    UsGallon,
    ImperialFluidOunce,
    ImperialPint,
    ImperialQuart,
    ImperialGallon,
    Millimetre,
    Centimetre,
    Inch,
    Clove,
    Bunch,
    Sprig,
    Leaf,
    Slice,
    Sheet,
    Head,
    Stalk,
    Stick,
    Tin,
    Jar,
    Packet,
    Handful,
    Knob,
    Dash,
    Drop,
};

inline constexpr std::array allUnits{
    Unit::Gram,
    Unit::Kilogram,
    Unit::Millilitre,
    Unit::Litre,
    Unit::Teaspoon,
    Unit::Tablespoon,
    Unit::Piece,
    Unit::Pinch,
    Unit::ToTaste,
    Unit::Centilitre,
    Unit::Decilitre,
    Unit::MetricCup,
    Unit::AustralianTablespoon,
    Unit::Ounce,
    Unit::Pound,
    Unit::UsTeaspoon,
    Unit::UsTablespoon,
    Unit::UsFluidOunce,
    Unit::UsCup,
    Unit::UsPint,
    Unit::UsQuart,
    Unit::UsGallon,
    Unit::ImperialFluidOunce,
    Unit::ImperialPint,
    Unit::ImperialQuart,
    Unit::ImperialGallon,
    Unit::Millimetre,
    Unit::Centimetre,
    Unit::Inch,
    Unit::Clove,
    Unit::Bunch,
    Unit::Sprig,
    Unit::Leaf,
    Unit::Slice,
    Unit::Sheet,
    Unit::Head,
    Unit::Stalk,
    Unit::Stick,
    Unit::Tin,
    Unit::Jar,
    Unit::Packet,
    Unit::Handful,
    Unit::Knob,
    Unit::Dash,
    Unit::Drop,
};

/// Amounts of one dimension can be added and compared. Each count is a dimension of its own: a
/// clove is no bunch, and what either weighs depends on the ingredient (core/food).
enum class Dimension
{
    Mass,
    Volume,
    Distance,
    Count,   // pieces, cloves, bunches…
    Inexact, // a pinch, a dash, a handful: scaled, but never converted
    ToTaste,
};

/// "g", "US cup", "imperial pint", "clove": as in files.
[[nodiscard]] std::string_view symbolOf(Unit unit);
/// "US cups", "cloves"; the symbol itself where it has no plural ("g").
[[nodiscard]] std::string_view pluralOf(Unit unit);
[[nodiscard]] std::optional<Unit> findUnit(std::string_view symbol);
/// By its symbol or plural, whatever its case.
[[nodiscard]] std::optional<Unit> findUnitWord(std::string_view word);

[[nodiscard]] Dimension dimensionOf(Unit unit);
/// How many grams, millilitres or millimetres one is, exactly; 1 for what is counted.
/// Sources: pound and ounce: NIST Special Publication 811 (2008), B.8; gallon of 231 in³ and its
/// parts: NIST Handbook 44, Appendix C; imperial gallon of 4.54609 l and its parts: Weights and
/// Measures Act 1985, Schedule 1; inch of 25.4 mm: NIST SP 811, B.8. Metric spoons and cup are
/// customary: 5, 15 and 250 ml; the Australian tablespoon is 20 ml (NSW Health, metric measures).
[[nodiscard]] Rational sizeOf(Unit unit);
/// Whether an amount in `a` can be told exactly in `b`.
[[nodiscard]] bool isConvertible(Unit a, Unit b);

} // namespace suppertide
