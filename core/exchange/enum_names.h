// The words by which files name the enumerators of recipes, kitchens and occasions. Substances and
// diets have theirs in core/food.
#pragma once

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "core/kitchen/kitchen.h"
#include "core/occasion/occasion.h"
#include "core/recipe/recipe.h"

namespace suppertide {

template <typename E>
using EnumName = std::pair<E, std::string_view>;

/// All enumerators of E with their words.
template <typename E>
inline constexpr auto enumNames = nullptr;

template <>
inline constexpr auto
    enumNames<Scaling> = std::to_array<EnumName<Scaling>>({{Scaling::Fixed, "fixed"},
                                                           {Scaling::PerPortion, "per portion"},
                                                           {Scaling::PerBatch, "per batch"}});
template <>
inline constexpr auto enumNames<OvenMode> =
    std::to_array<EnumName<OvenMode>>({{OvenMode::Any, "any"},
                                       {OvenMode::Fan, "fan"},
                                       {OvenMode::Conventional, "conventional"},
                                       {OvenMode::Grill, "grill"},
                                       {OvenMode::Off, "off"}});
template <>
inline constexpr auto
    enumNames<FoodShape> = std::to_array<EnumName<FoodShape>>({{FoodShape::Stirred, "stirred"},
                                                               {FoodShape::Flat, "flat"},
                                                               {FoodShape::Long, "long"},
                                                               {FoodShape::Round, "round"}});
template <>
inline constexpr auto
    enumNames<Treatment> = std::to_array<EnumName<Treatment>>({{Treatment::Stand, "stand"},
                                                               {Treatment::Heat, "heat"},
                                                               {Treatment::Boil, "boil"},
                                                               {Treatment::Simmer, "simmer"},
                                                               {Treatment::Reduce, "reduce"},
                                                               {Treatment::IceBath, "ice bath"},
                                                               {Treatment::Thaw, "thaw"}});
template <>
inline constexpr auto enumNames<BurnerKind> =
    std::to_array<EnumName<BurnerKind>>({{BurnerKind::Gas, "gas"},
                                         {BurnerKind::Electric, "electric"},
                                         {BurnerKind::Induction, "induction"}});
template <>
inline constexpr auto enumNames<safety::RuleBook> =
    std::to_array<EnumName<safety::RuleBook>>({{safety::RuleBook::UsHome, "us home"},
                                               {safety::RuleBook::UsTrade, "us trade"},
                                               {safety::RuleBook::UkEu, "uk eu"}});
template <>
inline constexpr auto
    enumNames<Caution> = std::to_array<EnumName<Caution>>({{Caution::HotOil, "hot oil"},
                                                           {Caution::Caramel, "caramel"},
                                                           {Caution::OpenFlame, "open flame"},
                                                           {Caution::Steam, "steam"},
                                                           {Caution::SharpBlade, "sharp blade"},
                                                           {Caution::RawMeat, "raw meat"},
                                                           {Caution::RawEgg, "raw egg"},
                                                           {Caution::Alcohol, "alcohol"},
                                                           {Caution::Poisonous, "poisonous"}});
template <>
inline constexpr auto
    enumNames<KeepPlace> = std::to_array<EnumName<KeepPlace>>({{KeepPlace::Nowhere, "nowhere"},
                                                               {KeepPlace::Counter, "counter"},
                                                               {KeepPlace::Fridge, "fridge"},
                                                               {KeepPlace::Freezer, "freezer"},
                                                               {KeepPlace::Warm, "warm"}});
template <>
inline constexpr auto enumNames<WarmBy> = std::to_array<EnumName<WarmBy>>(
    {{WarmBy::Oven, "oven"}, {WarmBy::Burner, "burner"}, {WarmBy::Flask, "flask"}});
template <>
inline constexpr auto enumNames<IngredientPart> =
    std::to_array<EnumName<IngredientPart>>({{IngredientPart::Whole, "whole"},
                                             {IngredientPart::Zest, "zest"},
                                             {IngredientPart::Juice, "juice"},
                                             {IngredientPart::Yolk, "yolk"},
                                             {IngredientPart::White, "white"},
                                             {IngredientPart::Leaves, "leaves"},
                                             {IngredientPart::Stalks, "stalks"},
                                             {IngredientPart::Bones, "bones"},
                                             {IngredientPart::Meat, "meat"},
                                             {IngredientPart::Peel, "peel"},
                                             {IngredientPart::Seeds, "seeds"}});
template <>
inline constexpr auto enumNames<RecipeKind> = std::to_array<EnumName<RecipeKind>>(
    {{RecipeKind::Dish, "dish"}, {RecipeKind::Preparation, "preparation"}});
template <>
inline constexpr auto enumNames<ColdKind> = std::to_array<EnumName<ColdKind>>(
    {{ColdKind::Fridge, "fridge"}, {ColdKind::Freezer, "freezer"}});
template <>
inline constexpr auto enumNames<Presence> =
    std::to_array<EnumName<Presence>>({{Presence::Free, "free"}, {Presence::AtHome, "at home"}});
template <>
inline constexpr auto enumNames<Wish> = std::to_array<EnumName<Wish>>({{Wish::None, "none"},
                                                                       {Wish::Some, "some"},
                                                                       {Wish::Much, "much"}});
template <>
inline constexpr auto enumNames<CautionLevel> =
    std::to_array<EnumName<CautionLevel>>({{CautionLevel::Likely, "likely"},
                                           {CautionLevel::Half, "50 %"},
                                           {CautionLevel::Careful, "80 %"},
                                           {CautionLevel::VeryCareful, "95 %"}});
/// The named grades of attention; any other is a number of percent.
inline constexpr auto attentionNames =
    std::to_array<EnumName<Attention>>({{undivided, "undivided"},
                                        {handsOn, "hands-on"},
                                        {keepAnEye, "keep an eye"},
                                        {unattended, "unattended"}});

template <typename E>
[[nodiscard]] std::optional<std::string_view> nameIn(const auto& names, const E& value)
{
    const auto found = std::ranges::find(names, value, &EnumName<E>::first);
    return found == names.end() ? std::nullopt : std::optional{found->second};
}

template <typename E>
[[nodiscard]] std::optional<E> findIn(const auto& names, std::string_view name)
{
    const auto found = std::ranges::find(names, name, &EnumName<E>::second);
    return found == names.end() ? std::nullopt : std::optional{found->first};
}

} // namespace suppertide
