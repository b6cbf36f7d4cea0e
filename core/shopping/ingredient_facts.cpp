#include "core/shopping/ingredient_facts.h"

#include <algorithm>

#include "core/food/ingredient.h"

namespace suppertide::shopping {

namespace {

constexpr std::int64_t milligrams = 1000; // in a gram
constexpr std::int64_t whole = 1000;      // per thousand

Rational inGrams(Grams mass)
{
    return Rational{mass.smallest(), milligrams};
}

IngredientFacts factsOf(const Ingredient& ingredient)
{
    IngredientFacts facts;
    facts.key = nameKey(ingredient.name);
    facts.name = ingredient.name;
    facts.isKnown = true;
    if (ingredient.density) {
        facts.gramsPerMillilitre =
            Rational{ingredient.density->milligramsPerMillilitre, milligrams};
    }
    if (ingredient.ediblePerThousand && *ingredient.ediblePerThousand > 0) {
        facts.edible = Rational{*ingredient.ediblePerThousand, whole};
    }
    for (const PieceMass& piece : ingredient.pieces) {
        // The table weighs what is eaten of one; a shop, all of it.
        facts.gramsOf[piece.unit] = sumOf(inGrams(piece.mass) / facts.edible, Rational{0});
    }
    for (const PartMass& part : ingredient.parts) {
        if (part.each && !part.each->isZero()) {
            facts.parts[part.part] = {inGrams(*part.each), Unit::Gram};
        }
        if (part.perThousand && *part.perThousand > 0) {
            facts.portion[part.part] = Rational{*part.perThousand, whole};
        }
    }
    facts.section = nameOf(ingredient.section);
    if (ingredient.fridgeDays || ingredient.cupboardDays) {
        facts.keepsDays =
            std::max(ingredient.fridgeDays.value_or(0), ingredient.cupboardDays.value_or(0));
    }
    return facts;
}

void overlay(const OwnIngredient& own, IngredientFacts& facts)
{
    facts.isKnown = true;
    if (own.litreWeighs) {
        // Milligrams of a litre: so many millionths of a gram in a millilitre.
        facts.gramsPerMillilitre = Rational{own.litreWeighs->smallest(), milligrams * milligrams};
    }
    if (own.pieceWeighs) {
        facts.gramsOf[Unit::Piece] = inGrams(*own.pieceWeighs);
    }
    if (own.ediblePercent && *own.ediblePercent > 0) {
        facts.edible = Rational{*own.ediblePercent, 100};
    }
    for (const auto& [part, amount] : own.parts) {
        facts.parts.insert_or_assign(part, amount);
        facts.portion.erase(part);
    }
    if (own.section) {
        facts.section = *own.section;
    }
    if (own.keepsDays) {
        facts.keepsDays = own.keepsDays;
    }
}

} // namespace

IngredientFacts factsOf(std::string_view name, const Larder& larder)
{
    const OwnIngredient* own = findOwn(larder, name);
    const std::string_view called = own == nullptr ? name : std::string_view(own->name);
    IngredientFacts facts;
    if (const Ingredient* known = findIngredient(called)) {
        facts = factsOf(*known);
    } else {
        facts.key = nameKey(called);
        facts.name = std::string(called);
    }
    facts.isFromTheTap = facts.key == "water";
    if (own != nullptr) {
        overlay(*own, facts);
    }
    return facts;
}

const IngredientFacts& FactsBook::of(const std::string& name)
{
    auto known = known_.find(name);
    if (known == known_.end()) {
        known = known_.emplace(name, factsOf(name, larder_)).first;
    }
    return known->second;
}

} // namespace suppertide::shopping
