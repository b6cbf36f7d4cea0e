// Suitability: whether a variant of a recipe is for a guest: what is in it that the guest avoids,
// what nobody has said, what is not for guests at higher risk, and what the guest would rather not
// eat. Says nothing of portions; who gets which is core/menus' to work out.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/occasion/occasion.h"

namespace suppertide {

/// What there is to know of a variant when it is asked who can eat it.
struct VariantNature
{
    Contents contents;                    // with its preparations
    std::vector<FoodKind> foods;          // that are followed, as they are eaten
    std::vector<std::string> ingredients; // sorted, each once

    friend bool operator==(const VariantNature&, const VariantNature&) = default;
};

/// What a line does not itself say it contains is looked up in `ingredients`.
/// Of a food that is heated to 74 °C in the middle (egg: 71 °C) no fact is left to warn of.
/// Source: USDA and foodsafety.gov, Safe Minimum Internal Temperatures (165 °F, 160 °F).
[[nodiscard]] VariantNature natureOf(const Recipe& recipe, const VariantId& variant,
                                     const std::map<RecipeId, const Recipe*>& recipes,
                                     const IngredientBook& ingredients);

struct Suitability
{
    std::vector<Substance> unsuitable; // in it, though the guest avoids it
    std::vector<std::string> unknown;  // ingredients of which nobody has said, if that matters
    std::vector<RiskFact> risks; // not for a guest at higher risk, by the occasion's rule book

    /// Nothing known is against it, though something may be unknown.
    [[nodiscard]] bool isFree() const { return unsuitable.empty() && risks.empty(); }
    /// All is known, and nothing is against it.
    [[nodiscard]] bool suits() const { return isFree() && unknown.empty(); }

    friend bool operator==(const Suitability&, const Suitability&) = default;
};

/// Whether what is unknown matters: somebody who avoids nothing may eat it.
[[nodiscard]] Suitability suitabilityOf(const Guest& guest, const VariantNature& nature,
                                        safety::RuleBook book);

/// The guest's dislikes that are among the ingredients: their words, in any number, as whole words
/// of the ingredient's ("mushroom" is in "chestnut mushrooms", "nut" is not in "nutmeg").
[[nodiscard]] std::vector<std::string> dislikedIn(const Guest& guest, const VariantNature& nature);

} // namespace suppertide
