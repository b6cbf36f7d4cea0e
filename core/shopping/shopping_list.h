// ShoppingList: all that is to be bought for an evening, each line traced to what needs it: amounts
// in one unit for an ingredient, parts taken from the same wholes, what is at home taken off,
// rounded up to what a shop sells, by trip and by section of the shop, with its cost and what will
// be over. Values in, values out; read by ui/pages/shopping, `suppertide shop` and core/menus.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/larder/bought.h"
#include "core/larder/larder.h"
#include "core/quantity/kitchen_text.h"
#include "core/shopping/shopping_need.h"

namespace suppertide::shopping {

struct ShoppingInput
{
    PlanInput evening;
    Larder larder;
    Bought bought;
    PlanPtr plan; // null: things are needed by the time they are served
    /// All recipes, for what left-overs could be used for.
    std::map<RecipeId, std::shared_ptr<const Recipe>> repertoire;
    /// In which amounts are said; absent: as the recipes have them. What is bought stays the same.
    std::optional<MeasureSystem> measures{};
};

struct PackCount
{
    Pack pack;
    std::int64_t count = 0;

    friend bool operator==(const PackCount&, const PackCount&) = default;
};

struct ShoppingLine
{
    std::string key; // by which ticks know it; the same while it is the same thing
    std::string ingredient;
    std::string section;
    std::vector<ShoppingNeed> needs;
    Amount needed;                      // as it is bought, before what is at home
    Amount fromHome;                    // in the same unit
    Amount toBuy;                       // rounded up to what is sold; of 0 nothing is bought
    std::vector<PackCount> packs;       // empty: loose, or nobody has said how it is sold
    std::optional<std::int64_t> cost;   // of what is bought
    Amount leftOver;                    // of what is bought and at home
    std::vector<std::string> uses;      // of the repertoire, for what is left over
    std::vector<std::string> notes;     // sentences on what must be known to buy it
    std::vector<std::string> partsLeft; // "3 egg whites", of the wholes that are opened
    bool isInTable = true;              // what it is, is known
    bool isAlwaysThere = false;         // at home: salt, water
    bool isBought = false;              // ticked, and no more is needed than then
    std::optional<Amount> boughtBefore; // ticked, but more is needed now
    std::optional<Instant> firstUse;
    std::optional<int> keepsDays;
    std::optional<std::size_t> trip; // of the list's trips; absent: nothing to buy

    friend bool operator==(const ShoppingLine&, const ShoppingLine&) = default;
};

/// One going shopping: of the occasion's trips, or a day that the program proposes.
struct TripOfList
{
    std::optional<HouseJobId> job; // absent: proposed
    std::string name;
    CivilTime latest;

    friend bool operator==(const TripOfList&, const TripOfList&) = default;
};

struct ShoppingList
{
    std::string occasion;
    std::string zone;
    std::string currency;
    std::optional<MeasureSystem> measures; // in which it is to be said
    std::vector<TripOfList> trips;         // by time
    std::vector<ShoppingLine> lines;       // by trip, section as the cook walks, and name
    std::vector<SpareByProduct> spare;
    std::vector<std::string> spareUses; // parallel to `spare`: dishes that could take it, or empty
    std::vector<std::string> sentences; // of what could not be counted
    std::int64_t cost = 0;              // of all lines with a price
    std::size_t unpriced = 0;           // lines to buy of which nobody has said a price

    friend bool operator==(const ShoppingList&, const ShoppingList&) = default;
};

[[nodiscard]] ShoppingList shoppingListOf(const ShoppingInput& input);

/// The same list with these ticks: nothing else changes by one.
[[nodiscard]] ShoppingList withTicks(ShoppingList list, const Bought& bought, const Larder& larder);

/// What to keep when the line is ticked: how much there was to buy.
[[nodiscard]] Bought withTicked(Bought bought, const ShoppingLine& line, bool isBought);

} // namespace suppertide::shopping
