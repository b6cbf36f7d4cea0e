// ShoppingNeed: one line of a recipe that asks for something, scaled to all the portions that are
// made by it, with all that one must know to trace it back. `needsOf` walks an evening as
// core/plan does: variants share their steps, preparations are made once for all that use them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/making.h"
#include "core/plan/plan.h"
#include "core/quantity/kitchen_text.h"

namespace suppertide::shopping {

struct ShoppingNeed
{
    std::size_t making = 0; // in order of the evening's makings
    LineId line;
    std::string ingredient;
    std::string note;
    IngredientPart part = IngredientPart::Whole;
    Amount amount;
    std::optional<Amount> also; // the same by another measure
    std::string recipeName;     // "Lamb stock"
    RecipeId recipe;
    std::vector<DishId> dishes;         // it goes into, through preparations too
    std::vector<std::string> dishNames; // likewise; a dish's own line: itself
    std::vector<std::string> variants;  // whose portions need it
    Portions portions;                  // of the recipe that are made with it
    std::optional<Instant> firstUse;    // in the plan; else its course's serving
    std::string takenFrom;              // the dish whose by-product it is; empty: bought
    bool isBoughtApart = false;         // the plan takes no part of a whole that another dish opens

    friend bool operator==(const ShoppingNeed&, const ShoppingNeed&) = default;
};

/// What a dish leaves that nobody takes.
struct SpareByProduct
{
    std::string name;
    Amount amount;
    std::string from; // the recipe
    RecipeId recipe;

    friend bool operator==(const SpareByProduct&, const SpareByProduct&) = default;
};

struct Needs
{
    std::vector<ShoppingNeed> needs;
    std::vector<SpareByProduct> spare;
    std::vector<std::string> sentences; // of what cannot be counted
};

/// `plan` may be null. Of methods that are open, what the layout says, else the first is taken.
[[nodiscard]] Needs needsOf(const PlanInput& input, const Plan* plan,
                            const std::optional<MeasureSystem>& measures);

} // namespace suppertide::shopping
