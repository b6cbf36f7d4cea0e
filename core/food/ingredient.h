// Ingredient: what is known of a thing that recipes take: its names, what it contains, what a
// millilitre and a piece of it weigh, what of it is eaten, how long it keeps. A table of them is
// compiled in; the user's own come before it. What an amount weighs is core/food/ingredient_amount.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/food/food_class.h"
#include "core/food/ingredient_part.h"
#include "core/food/store_section.h"
#include "core/food/substance.h"
#include "core/quantity/quantity.h"
#include "core/quantity/unit.h"

namespace suppertide {

/// Milligrams in a millilitre: 528 for plain flour. Grams and millilitres meet only through it.
struct Density
{
    int milligramsPerMillilitre = 1000;

    friend bool operator==(const Density&, const Density&) = default;
};

/// What one of a counted unit weighs, its edible part: a clove of garlic 3 g.
struct PieceMass
{
    Unit unit = Unit::Piece;
    Grams mass;

    friend bool operator==(const PieceMass&, const PieceMass&) = default;
};

/// What one whole has of a part (a yolk of 17 g), or the share of what is bought that it is (bones,
/// 320 of 1000).
struct PartMass
{
    IngredientPart part = IngredientPart::Juice;
    std::optional<Grams> each;
    std::optional<int> perThousand;

    friend bool operator==(const PartMass&, const PartMass&) = default;
};

/// Where the figures are from.
struct IngredientSources
{
    std::string density;
    std::string pieces;
    std::string edible;
    std::string parts;
    std::string keeps;

    friend bool operator==(const IngredientSources&, const IngredientSources&) = default;
};

struct Ingredient
{
    std::string name; // "plain flour", in the singular
    std::vector<std::string> otherNames;
    FoodClass foodClass = FoodClass::DryGoods;
    StoreSection section = StoreSection::Other;
    std::vector<Substance> contains;   // for certain, or as a rule
    std::vector<Substance> mayContain; // what some makers add
    bool checkLabel = false;           // only the label of the very thing says what it contains
    std::optional<Density> density;
    std::vector<PieceMass> pieces;
    std::optional<int> ediblePerThousand; // of what is bought
    std::vector<PartMass> parts;
    std::optional<int> fridgeDays; // that it keeps as bought; for shopping, no rule of safety
    std::optional<int> cupboardDays;
    std::string usdaNumber; // in release 26 of the USDA's table (usda_foods.h)
    IngredientSources sources;

    friend bool operator==(const Ingredient&, const Ingredient&) = default;
};

/// The table that is compiled in.
[[nodiscard]] const std::vector<Ingredient>& allIngredients();

/// By name or other name, whatever its case, accents and number ("Garlic Cloves"), also with words
/// before it or after a comma that say only how it is ("large ripe", describing_words.h); null if
/// nobody knows it. What follows a comma and may be something to eat is never passed over: "rice,
/// with almonds" is not known.
[[nodiscard]] const Ingredient* findIngredient(std::string_view name);

/// The table with the user's own ingredients, which come first, so that they override it. Values;
/// what is found points into the book (or the table) and lives as long.
class IngredientBook
{
public:
    IngredientBook() = default;
    explicit IngredientBook(std::span<const Ingredient> own);

    [[nodiscard]] const Ingredient* find(std::string_view name) const;

private:
    std::shared_ptr<const std::vector<Ingredient>> own_; // shared by copies, never changed
    std::map<std::string, const Ingredient*, std::less<>> names_;
};

/// The form by which names are compared: lower case, no accents, one blank between words, the last
/// word in the singular.
[[nodiscard]] std::string nameKey(std::string_view name);

/// BadInput names table, line and column.
[[nodiscard]] Result<std::vector<Ingredient>> readIngredients(std::string_view table);

} // namespace suppertide
