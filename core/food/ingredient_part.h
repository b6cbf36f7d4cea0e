// IngredientPart: the part of a whole that a line of a recipe takes; one lemon gives both zest and
// juice.
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace suppertide {

enum class IngredientPart
{
    Whole,
    Zest,
    Juice,
    Yolk,
    White,
    Leaves,
    Stalks,
    Bones,
    Meat,
    Peel,
    Seeds
};

inline constexpr std::array allIngredientParts{
    IngredientPart::Whole, IngredientPart::Zest,   IngredientPart::Juice,  IngredientPart::Yolk,
    IngredientPart::White, IngredientPart::Leaves, IngredientPart::Stalks, IngredientPart::Bones,
    IngredientPart::Meat,  IngredientPart::Peel,   IngredientPart::Seeds};

/// "whole", "zest", "yolk": as in the tables, on screen and in files; and back.
[[nodiscard]] std::string_view nameOf(IngredientPart part);
[[nodiscard]] std::optional<IngredientPart> findIngredientPart(std::string_view name);

} // namespace suppertide
