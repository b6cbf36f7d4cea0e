#include "core/food/ingredient_part.h"

#include <algorithm>

namespace suppertide {

namespace {

constexpr std::array<std::string_view, allIngredientParts.size()> partNames{
    "whole",  "zest",  "juice", "yolk", "white", "leaves",
    "stalks", "bones", "meat",  "peel", "seeds"};

} // namespace

std::string_view nameOf(IngredientPart part)
{
    return partNames.at(static_cast<std::size_t>(part));
}

std::optional<IngredientPart> findIngredientPart(std::string_view name)
{
    const auto found = std::ranges::find_if(
        allIngredientParts, [name](IngredientPart part) { return nameOf(part) == name; });
    return found == allIngredientParts.end() ? std::nullopt : std::optional{*found};
}

} // namespace suppertide
