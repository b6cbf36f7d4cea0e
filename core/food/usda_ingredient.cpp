// What the USDA's table says of a food, as an ingredient of the user's own.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <iterator>

#include "core/food/usda_foods.h"

namespace suppertide {

namespace {

struct MeasureUnit
{
    std::string_view word;
    Unit unit;
};

/// The first word of a household measure, as a unit.
std::optional<Unit> unitOf(std::string_view measure)
{
    static constexpr std::array<MeasureUnit, 24> units{{
        {"cup", Unit::UsCup},
        {"tbsp", Unit::UsTablespoon},
        {"tablespoon", Unit::UsTablespoon},
        {"tsp", Unit::UsTeaspoon},
        {"teaspoon", Unit::UsTeaspoon},
        {"fl oz", Unit::UsFluidOunce},
        {"clove", Unit::Clove},
        {"bunch", Unit::Bunch},
        {"sprig", Unit::Sprig},
        {"leaf", Unit::Leaf},
        {"leaves", Unit::Leaf},
        {"slice", Unit::Slice},
        {"sheet", Unit::Sheet},
        {"head", Unit::Head},
        {"stalk", Unit::Stalk},
        {"stick", Unit::Stick},
        {"can", Unit::Tin},
        {"package", Unit::Packet},
        {"packet", Unit::Packet},
        {"envelope", Unit::Packet},
        {"medium", Unit::Piece},
        {"fruit", Unit::Piece},
        {"piece", Unit::Piece},
        {"large", Unit::Piece},
    }};
    const auto found = std::ranges::find_if(
        units, [measure](const MeasureUnit& each) { return measure.starts_with(each.word); });
    return found == units.end() ? std::nullopt : std::optional{found->unit};
}

} // namespace

Ingredient ingredientFrom(const UsdaFood& food)
{
    Ingredient result;
    std::ranges::transform(food.name, std::back_inserter(result.name), [](unsigned char letter) {
        return static_cast<char>(letter < 128 ? std::tolower(letter) : letter);
    });
    result.checkLabel = true;
    result.usdaNumber = food.number;
    const std::string source = fmt::format("SR26 {}: ", food.number);
    for (const HouseholdWeight& weight : food.weights) {
        const auto unit = unitOf(weight.measure);
        if (!unit || weight.amount <= 0) {
            continue;
        }
        const double grams = static_cast<double>(weight.mass.smallest()) / 1000 / weight.amount;
        if (dimensionOf(*unit) == Dimension::Volume) {
            if (!result.density) {
                const double density = grams / sizeOf(*unit).toDouble();
                result.density = Density{static_cast<int>(std::lround(density * 1000))};
                result.sources.density = source + weight.measure;
            }
        } else if (std::ranges::find(result.pieces, *unit, &PieceMass::unit) ==
                   result.pieces.end()) {
            result.pieces.push_back({*unit, Grams::ofSmallest(std::llround(grams * 1000))});
            result.sources.pieces +=
                (result.sources.pieces.empty() ? source : "; ") + weight.measure;
        }
    }
    if (food.refuse && *food.refuse < 100) {
        result.ediblePerThousand = static_cast<int>(std::lround((100 - *food.refuse) * 10));
        result.sources.edible = source + fmt::format("refuse {} %", *food.refuse);
    }
    return result;
}

} // namespace suppertide
