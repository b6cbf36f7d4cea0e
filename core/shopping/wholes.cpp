#include "core/shopping/wholes.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace suppertide::shopping {

namespace {

/// Zest is the outside of the peel.
IngredientPart skinOf(IngredientPart part)
{
    return part == IngredientPart::Zest ? IngredientPart::Peel : part;
}

std::optional<Rational> byYield(const Amount& wanted, const Amount& yield,
                                const IngredientFacts& facts)
{
    const auto all = measured(wanted, yield.unit, facts);
    if (!all || yield.value <= Rational{0}) {
        return std::nullopt;
    }
    return sumOf(*all / yield.value, Rational{0});
}

} // namespace

std::optional<Rational> wholesFor(const ShoppingNeed& need, const IngredientFacts& facts)
{
    if (need.part == IngredientPart::Whole) {
        return std::nullopt;
    }
    if (need.amount.unit == Unit::Piece) {
        return measured(need.amount, Unit::Piece, facts);
    }
    const auto yield = facts.parts.find(need.part);
    if (yield == facts.parts.end()) {
        return std::nullopt;
    }
    // The part's own density is unknown; near enough to water's for juice, yolk and white (common
    // practice).
    IngredientFacts part;
    part.gramsPerMillilitre = Rational{1};
    if (const auto wholes = byYield(need.amount, yield->second, part)) {
        return wholes;
    }
    return need.also ? byYield(*need.also, yield->second, part) : std::nullopt;
}

void takeFromWhole(ShoppingNeed& need, FactsBook& facts)
{
    constexpr std::array words{std::pair{std::string_view{" juice"}, IngredientPart::Juice},
                               std::pair{std::string_view{" zest"}, IngredientPart::Zest},
                               std::pair{std::string_view{" yolk"}, IngredientPart::Yolk},
                               std::pair{std::string_view{" white"}, IngredientPart::White}};
    const std::string key = ingredientKey(need.ingredient);
    for (const auto& [word, part] : words) {
        if (need.part != IngredientPart::Whole || !key.ends_with(word)) {
            continue;
        }
        const IngredientFacts& whole = facts.of(key.substr(0, key.size() - word.size()));
        if (whole.isKnown && whole.parts.contains(part)) {
            need.ingredient = whole.name;
            need.part = part;
        }
    }
}

void Wholes::addPart(IngredientPart part, const Rational& wholes)
{
    Rational& sum = parts_[part];
    sum = sumOf(sum, wholes);
}

Rational Wholes::used(IngredientPart part) const
{
    Rational sum;
    for (const auto& [each, wholes] : parts_) {
        if (skinOf(each) == skinOf(part)) {
            sum = sumOf(sum, wholes);
        }
    }
    return sum;
}

Rational Wholes::count() const
{
    Rational most;
    for (const auto& [part, wholes] : parts_) {
        most = std::max(most, used(part));
    }
    return most;
}

std::map<IngredientPart, Rational> Wholes::left(const Rational& opened,
                                                const std::vector<IngredientPart>& known) const
{
    std::map<IngredientPart, Rational> left;
    for (const IngredientPart part : known) {
        const Rational rest = opened - used(part);
        if (rest > Rational{0}) {
            left.emplace(part, rest);
        }
    }
    return left;
}

} // namespace suppertide::shopping
