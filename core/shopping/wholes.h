// Wholes: parts of one thing come from the same ones: a lemon gives its zest and its juice, an egg
// its yolk and its white. As many are needed as the part of which most is wanted asks for.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "core/shopping/ingredient_facts.h"
#include "core/shopping/shopping_need.h"

namespace suppertide::shopping {

/// How many wholes the need opens, if it is for a part; absent if nobody knows.
[[nodiscard]] std::optional<Rational> wholesFor(const ShoppingNeed& need,
                                                const IngredientFacts& facts);

/// A line for “lemon juice” or “egg yolk” becomes one for the juice of lemons or the yolk of eggs,
/// if the whole is known to give it.
void takeFromWhole(ShoppingNeed& need, FactsBook& facts);

/// What parts of wholes are wanted, and what is left of them.
class Wholes
{
public:
    /// A part of so many wholes.
    void addPart(IngredientPart part, const Rational& wholes);
    [[nodiscard]] bool empty() const { return parts_.empty(); }
    /// Wholes to open. Zest and peel are the same skin and add up; all else comes apart.
    [[nodiscard]] Rational count() const;
    /// Of each part that is used at all, of how many of `opened` wholes it is left. Parts of
    /// which nothing is used are left of all of them: `known` says which there are.
    [[nodiscard]] std::map<IngredientPart, Rational>
    left(const Rational& opened, const std::vector<IngredientPart>& known) const;

private:
    [[nodiscard]] Rational used(IngredientPart part) const;

    std::map<IngredientPart, Rational> parts_;
};

} // namespace suppertide::shopping
