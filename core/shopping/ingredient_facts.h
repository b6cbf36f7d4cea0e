// IngredientFacts: what shopping asks about an ingredient, from the cook's larder over the table of
// ingredients; and amounts of it told in one unit. Grams, millilitres and pieces meet only through
// its density and the mass of a piece.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/food/ingredient_part.h"
#include "core/larder/larder.h"
#include "core/quantity/amount.h"

namespace suppertide::shopping {

struct IngredientFacts
{
    std::string key;  // one for all its names
    std::string name; // as the table or the larder calls it
    bool isKnown = false;
    std::optional<Rational> gramsPerMillilitre;
    std::map<Unit, Rational> gramsOf;           // one piece, clove, bunch …, as bought
    Rational edible{1};                         // of what is bought, above 0
    std::map<IngredientPart, Amount> parts;     // what one whole gives
    std::map<IngredientPart, Rational> portion; // of what is bought: bones, 0.32
    std::string section;
    std::optional<int> keepsDays;
    bool isFromTheTap = false; // water: nobody buys it

    friend bool operator==(const IngredientFacts&, const IngredientFacts&) = default;
};

/// Facts of any ingredient, by whatever of its names.
[[nodiscard]] IngredientFacts factsOf(std::string_view name, const Larder& larder);

/// Facts looked up once for each name. For one list at a time.
class FactsBook
{
public:
    /// `larder` must outlive it.
    explicit FactsBook(const Larder& larder) : larder_(larder) {}
    /// Valid as long as the book.
    [[nodiscard]] const IngredientFacts& of(const std::string& name);

private:
    const Larder& larder_;
    std::map<std::string, IngredientFacts> known_;
};

/// So much of it in `unit`, with a range's upper end; absent if nobody knows how the two compare.
/// Exact, but for fractions finer than a hundred-thousandth, which are rounded up to a thousandth.
[[nodiscard]] std::optional<Rational> measured(const Amount& amount, Unit unit,
                                               const IngredientFacts& facts);

/// The sum, rounded up to a thousandth where its fraction would outgrow numbers.
[[nodiscard]] Rational sumOf(const Rational& a, const Rational& b);

} // namespace suppertide::shopping
