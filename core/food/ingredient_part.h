// IngredientPart: the part of a whole that a line takes; one lemon gives both zest and juice.
#pragma once

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

} // namespace suppertide
