// Larder: what belongs to the cook and not to one recipe or evening: ingredients of their own, or
// with figures of their own in place of the table's; what is at home; in which packs, and for how
// much, a shop sells; labels that the cook has read. One for a library. Values only; core/shopping
// works with them.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/civil_time.h"
#include "core/food/ingredient_part.h"
#include "core/food/substance.h"
#include "core/quantity/amount.h"
#include "core/quantity/quantity.h"

namespace suppertide {

/// What the cook says of an ingredient. What is absent stands as in the table of ingredients, or is
/// unknown there too.
struct OwnIngredient
{
    std::string name;                  // as lines of recipes write it
    std::vector<std::string> synonyms; // other words for it
    std::optional<std::vector<Substance>> contains;
    std::optional<Grams> litreWeighs;       // density
    std::optional<Grams> pieceWeighs;       // one, as bought
    std::optional<int> ediblePercent;       // of what is bought, 1…100
    std::map<IngredientPart, Amount> parts; // what one gives ("juice": 45 ml); these alone replace
    std::optional<std::string> section;     // of the shop
    std::optional<int> keepsDays;           // once bought, kept as it should be
    std::string source;                     // where the figures come from

    friend bool operator==(const OwnIngredient&, const OwnIngredient&) = default;
};

/// What is at home.
struct StockItem
{
    std::string ingredient;
    Amount amount; // without meaning if `isAlwaysThere`
    std::optional<CivilDate> useBy;
    bool isAlwaysThere = false; // never bought for an evening: salt, water
    std::string note;

    friend bool operator==(const StockItem&, const StockItem&) = default;
};

/// In what a shop sells an ingredient. Without any pack it is sold by weight, or one by one, at a
/// price that nobody has said.
struct Pack
{
    std::string ingredient;
    Amount amount;                     // in one pack
    std::optional<std::int64_t> price; // in the smallest coin of the larder's currency
    std::string name;                  // "bag", "tin"
    bool isLoose = false; // any amount is sold, at the price for `amount`: fish by the kilogram

    friend bool operator==(const Pack&, const Pack&) = default;
};

/// That the cook has read the label of what is in the kitchen: these substances are all it
/// declares.
struct ConfirmedLabel
{
    std::string ingredient;
    std::vector<Substance> contains;
    std::optional<CivilDate> read;
    std::string note; // which product

    friend bool operator==(const ConfirmedLabel&, const ConfirmedLabel&) = default;
};

struct Larder
{
    std::vector<OwnIngredient> ingredients;
    std::vector<StockItem> stock;
    std::vector<Pack> packs;
    std::vector<ConfirmedLabel> labels;
    std::string currency = "GBP";      // ISO 4217, of all prices
    std::vector<std::string> sections; // in the order in which the cook walks through the shop

    [[nodiscard]] bool empty() const { return *this == Larder{}; }
    friend bool operator==(const Larder&, const Larder&) = default;
};

/// How ingredients are compared: as core/food does, without case, accents and plural.
[[nodiscard]] std::string ingredientKey(std::string_view name);

/// Null if the larder says nothing of it. `name` may be a synonym.
[[nodiscard]] const OwnIngredient* findOwn(const Larder& larder, std::string_view name);
/// The latest reading of that ingredient's label; null if none was read.
[[nodiscard]] const ConfirmedLabel* findLabel(const Larder& larder, std::string_view name);

/// Decimal places of a currency's smallest coin; 2 where nobody has said otherwise.
/// Source: ISO 4217, list one, "minor unit".
[[nodiscard]] int minorDigitsOf(std::string_view currency);
/// "12.50 GBP", "-3 JPY".
[[nodiscard]] std::string priceText(std::int64_t minorUnits, std::string_view currency);

/// `added` over `larder`: an ingredient, label, pack or item of stock that names the same replaces
/// it. The currency is that of `added`, unless only `larder` has prices.
[[nodiscard]] Larder merged(Larder larder, const Larder& added);
/// Whether merging keeps the meaning of all prices.
[[nodiscard]] bool areInOneCurrency(const Larder& larder, const Larder& added);

/// Something in a larder that cannot be, with its place in words.
struct LarderFault
{
    std::string place;
    std::string sentence;

    friend bool operator==(const LarderFault&, const LarderFault&) = default;
};

/// No name, the same ingredient or synonym twice, a litre above 25 kg, a piece above 100 kg or of
/// nothing, an edible part outside 1…100 %, days below 0 or above ten years, amounts below 0, packs
/// of nothing or "to taste", prices below 0, days that are in no calendar, a currency that is not
/// three letters.
[[nodiscard]] std::vector<LarderFault> faultsOf(const Larder& larder);

} // namespace suppertide
