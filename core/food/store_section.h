// StoreSection: where in a shop a thing stands, by which a shopping list is grouped; in the order
// in which most shops are walked, frozen things last.
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace suppertide {

enum class StoreSection
{
    FruitAndVegetables,
    Bread,
    Meat,
    Fish,
    DairyAndEggs,
    DryGoods,
    Baking,
    TinsAndJars,
    OilsAndSauces,
    Spices,
    Drinks,
    Frozen,
    Other,
};

inline constexpr std::array allStoreSections{StoreSection::FruitAndVegetables,
                                             StoreSection::Bread,
                                             StoreSection::Meat,
                                             StoreSection::Fish,
                                             StoreSection::DairyAndEggs,
                                             StoreSection::DryGoods,
                                             StoreSection::Baking,
                                             StoreSection::TinsAndJars,
                                             StoreSection::OilsAndSauces,
                                             StoreSection::Spices,
                                             StoreSection::Drinks,
                                             StoreSection::Frozen,
                                             StoreSection::Other};

/// "fruit and vegetables", "tins and jars": as in the tables, on screen and in files; and back.
[[nodiscard]] std::string_view nameOf(StoreSection section);
[[nodiscard]] std::optional<StoreSection> findStoreSection(std::string_view name);

} // namespace suppertide
