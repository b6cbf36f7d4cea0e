#include "core/quantity/unit.h"

#include <algorithm>
#include <cctype>

namespace suppertide {

namespace {

struct UnitFacts
{
    Unit unit;
    std::string_view symbol;
    std::string_view plural;
    Dimension dimension;
    // Grams, millilitres or millimetres as a fraction.
    std::int64_t above = 1;
    std::int64_t below = 1;
};

// The US gallon is 231 cubic inches of 16.387064 ml. A pound is 453.59237 g. The imperial gallon is
// 4546.09 ml.
constexpr std::int64_t usGallon = 3'785'411'784; // in 1/1000000 ml
constexpr std::int64_t million = 1'000'000;
constexpr std::int64_t pound = 45'359'237;       // in 1/100000 g
constexpr std::int64_t imperialGallon = 454'609; // in 1/100 ml

constexpr std::array unitFacts{
    UnitFacts{Unit::Gram, "g", "g", Dimension::Mass},
    UnitFacts{Unit::Kilogram, "kg", "kg", Dimension::Mass, 1000},
    UnitFacts{Unit::Millilitre, "ml", "ml", Dimension::Volume},
    UnitFacts{Unit::Litre, "l", "l", Dimension::Volume, 1000},
    UnitFacts{Unit::Teaspoon, "tsp", "tsp", Dimension::Volume, 5},
    UnitFacts{Unit::Tablespoon, "tbsp", "tbsp", Dimension::Volume, 15},
    UnitFacts{Unit::Piece, "piece", "pieces", Dimension::Count},
    UnitFacts{Unit::Pinch, "pinch", "pinches", Dimension::Inexact},
    UnitFacts{Unit::ToTaste, "to taste", "to taste", Dimension::ToTaste},
    UnitFacts{Unit::Centilitre, "cl", "cl", Dimension::Volume, 10},
    UnitFacts{Unit::Decilitre, "dl", "dl", Dimension::Volume, 100},
    UnitFacts{Unit::MetricCup, "metric cup", "metric cups", Dimension::Volume, 250},
    UnitFacts{Unit::AustralianTablespoon, "Australian tbsp", "Australian tbsp", Dimension::Volume,
              20},
    UnitFacts{Unit::Ounce, "oz", "oz", Dimension::Mass, pound, std::int64_t{16} * 100'000},
    UnitFacts{Unit::Pound, "lb", "lb", Dimension::Mass, pound, 100'000},
    UnitFacts{Unit::UsTeaspoon, "US tsp", "US tsp", Dimension::Volume, usGallon, 768 * million},
    UnitFacts{Unit::UsTablespoon, "US tbsp", "US tbsp", Dimension::Volume, usGallon, 256 * million},
    UnitFacts{Unit::UsFluidOunce, "US fl oz", "US fl oz", Dimension::Volume, usGallon,
              128 * million},
    UnitFacts{Unit::UsCup, "US cup", "US cups", Dimension::Volume, usGallon, 16 * million},
    UnitFacts{Unit::UsPint, "US pint", "US pints", Dimension::Volume, usGallon, 8 * million},
    UnitFacts{Unit::UsQuart, "US quart", "US quarts", Dimension::Volume, usGallon, 4 * million},
    UnitFacts{Unit::UsGallon, "US gallon", "US gallons", Dimension::Volume, usGallon, million},
    UnitFacts{Unit::ImperialFluidOunce, "imperial fl oz", "imperial fl oz", Dimension::Volume,
              imperialGallon, std::int64_t{160} * 100},
    UnitFacts{Unit::ImperialPint, "imperial pint", "imperial pints", Dimension::Volume,
              imperialGallon, 800},
    UnitFacts{Unit::ImperialQuart, "imperial quart", "imperial quarts", Dimension::Volume,
              imperialGallon, 400},
    UnitFacts{Unit::ImperialGallon, "imperial gallon", "imperial gallons", Dimension::Volume,
              imperialGallon, 100},
    UnitFacts{Unit::Millimetre, "mm", "mm", Dimension::Distance},
    UnitFacts{Unit::Centimetre, "cm", "cm", Dimension::Distance, 10},
    UnitFacts{Unit::Inch, "inch", "inches", Dimension::Distance, 254, 10},
    UnitFacts{Unit::Clove, "clove", "cloves", Dimension::Count},
    UnitFacts{Unit::Bunch, "bunch", "bunches", Dimension::Count},
    UnitFacts{Unit::Sprig, "sprig", "sprigs", Dimension::Count},
    UnitFacts{Unit::Leaf, "leaf", "leaves", Dimension::Count},
    UnitFacts{Unit::Slice, "slice", "slices", Dimension::Count},
    UnitFacts{Unit::Sheet, "sheet", "sheets", Dimension::Count},
    UnitFacts{Unit::Head, "head", "heads", Dimension::Count},
    UnitFacts{Unit::Stalk, "stalk", "stalks", Dimension::Count},
    UnitFacts{Unit::Stick, "stick", "sticks", Dimension::Count},
    UnitFacts{Unit::Tin, "tin", "tins", Dimension::Count},
    UnitFacts{Unit::Jar, "jar", "jars", Dimension::Count},
    UnitFacts{Unit::Packet, "packet", "packets", Dimension::Count},
    UnitFacts{Unit::Handful, "handful", "handfuls", Dimension::Inexact},
    UnitFacts{Unit::Knob, "knob", "knobs", Dimension::Inexact},
    UnitFacts{Unit::Dash, "dash", "dashes", Dimension::Inexact},
    UnitFacts{Unit::Drop, "drop", "drops", Dimension::Inexact},
};
static_assert(unitFacts.size() == allUnits.size());
static_assert(std::ranges::equal(unitFacts, allUnits, {}, &UnitFacts::unit));
static_assert([] {
    for (std::size_t i = 0; i < allUnits.size(); ++i) {
        if (static_cast<std::size_t>(allUnits.at(i)) != i) {
            return false;
        }
    }
    return true;
}());

const UnitFacts& factsOf(Unit unit)
{
    return unitFacts.at(static_cast<std::size_t>(unit));
}

} // namespace

std::string_view symbolOf(Unit unit)
{
    return factsOf(unit).symbol;
}

std::string_view pluralOf(Unit unit)
{
    return factsOf(unit).plural;
}

std::optional<Unit> findUnit(std::string_view symbol)
{
    const auto found = std::ranges::find(unitFacts, symbol, &UnitFacts::symbol);
    return found == unitFacts.end() ? std::nullopt : std::optional{found->unit};
}

std::optional<Unit> findUnitWord(std::string_view word)
{
    const auto isSame = [](std::string_view a, std::string_view b) {
        return std::ranges::equal(a, b, [](unsigned char one, unsigned char other) {
            return std::tolower(one) == std::tolower(other);
        });
    };
    const auto found = std::ranges::find_if(unitFacts, [&](const UnitFacts& facts) {
        return isSame(word, facts.symbol) || isSame(word, facts.plural);
    });
    return found == unitFacts.end() ? std::nullopt : std::optional{found->unit};
}

Dimension dimensionOf(Unit unit)
{
    return factsOf(unit).dimension;
}

Rational sizeOf(Unit unit)
{
    return Rational{factsOf(unit).above, factsOf(unit).below};
}

bool isConvertible(Unit a, Unit b)
{
    const Dimension dimension = dimensionOf(a);
    const bool isMeasured = dimension == Dimension::Mass || dimension == Dimension::Volume ||
                            dimension == Dimension::Distance;
    return a == b || (isMeasured && dimension == dimensionOf(b));
}

} // namespace suppertide
