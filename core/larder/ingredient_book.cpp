#include "core/larder/ingredient_book.h"

#include <algorithm>

#include "core/food/ingredient_amount.h"

namespace suppertide {

namespace {

constexpr std::string_view byTheCook = "the cook";

/// The table's, or one of which nothing is known.
Ingredient startOf(const std::string& name)
{
    const Ingredient* known = findIngredient(name);
    if (known != nullptr) {
        Ingredient copy = *known;
        copy.name = name;
        copy.otherNames.clear(); // those still find the table's own
        return copy;
    }
    Ingredient unknown;
    unknown.name = name;
    unknown.checkLabel = true;
    return unknown;
}

void contain(Ingredient& ingredient, const std::vector<Substance>& substances)
{
    ingredient.contains = substances;
    ingredient.mayContain.clear();
    ingredient.checkLabel = false;
}

/// What one gives of a part, if that can be told in grams; the table's figure stands else.
void givePart(Ingredient& ingredient, IngredientPart part, const Amount& amount,
              const std::string& source)
{
    if (dimensionOf(amount.unit) != Dimension::Mass) {
        return;
    }
    const Rational milligrams = amount.most() * sizeOf(amount.unit) * Rational{1000};
    std::erase_if(ingredient.parts, [part](const PartMass& each) { return each.part == part; });
    ingredient.parts.push_back({part, Grams::ofSmallest(milligrams.rounded()), std::nullopt});
    ingredient.sources.parts = source;
}

Ingredient merged(const OwnIngredient& own)
{
    Ingredient result = startOf(own.name);
    const std::string source = own.source.empty() ? std::string(byTheCook) : own.source;
    result.otherNames = own.synonyms;
    if (own.contains) {
        contain(result, *own.contains);
    }
    if (own.litreWeighs) {
        result.density = Density{static_cast<int>(own.litreWeighs->smallest() / 1000)};
        result.sources.density = source;
    }
    if (own.ediblePercent) {
        result.ediblePerThousand = *own.ediblePercent * 10;
        result.sources.edible = source;
    }
    if (own.pieceWeighs) {
        std::erase_if(result.pieces,
                      [](const PieceMass& each) { return each.unit == Unit::Piece; });
        result.pieces.push_back({Unit::Piece, *own.pieceWeighs});
        result.pieces.back().mass = edibleOf(*own.pieceWeighs, result);
        result.sources.pieces = source;
    }
    for (const auto& [part, amount] : own.parts) {
        givePart(result, part, amount, source);
    }
    if (own.section) {
        result.section = findStoreSection(*own.section).value_or(result.section);
    }
    if (own.keepsDays) {
        const bool isChilled = result.fridgeDays.has_value();
        (isChilled ? result.fridgeDays : result.cupboardDays) = own.keepsDays;
        result.sources.keeps = source;
    }
    return result;
}

} // namespace

IngredientBook ingredientBook(const Larder& larder)
{
    std::vector<Ingredient> own;
    for (const OwnIngredient& each : larder.ingredients) {
        own.push_back(merged(each));
    }
    for (const ConfirmedLabel& label : larder.labels) {
        const ConfirmedLabel* latest = findLabel(larder, label.ingredient);
        const std::string key = nameKey(label.ingredient);
        auto named = std::ranges::find_if(
            own, [&key](const Ingredient& each) { return nameKey(each.name) == key; });
        if (named == own.end()) {
            named = own.insert(own.end(), startOf(label.ingredient));
        }
        contain(*named, (latest != nullptr ? *latest : label).contains);
    }
    return IngredientBook(own);
}

} // namespace suppertide
