#include "core/food/ingredient_amount.h"

#include <fmt/format.h>

#include <algorithm>

namespace suppertide {

namespace {

constexpr std::int64_t perUnit = 1000; // milligrams in a gram, thousandths in a whole

Failure cannotWeigh(const Amount& amount, const Ingredient& ingredient, std::string_view why)
{
    return {FailureKind::BadInput,
            fmt::format("“{} of {}” has no weight that is known: {}", toText(amount),
                        ingredient.name, why),
            {}};
}

std::optional<Grams> pieceMass(const Ingredient& ingredient, Unit unit)
{
    const auto found = std::ranges::find(ingredient.pieces, unit, &PieceMass::unit);
    return found == ingredient.pieces.end() ? std::nullopt : std::optional{found->mass};
}

const PartMass* partOf(const Ingredient& ingredient, IngredientPart part)
{
    const auto found = std::ranges::find(ingredient.parts, part, &PartMass::part);
    return found == ingredient.parts.end() ? nullptr : &*found;
}

/// Milligrams of a count of things that weigh `each`.
Grams times(const Rational& count, Grams each)
{
    return Grams::ofSmallest((count * Rational{each.smallest()}).rounded());
}

/// Rounded early, so that no fraction of a customary unit outgrows 64 bits: to a millionth.
Rational inBase(const Amount& amount)
{
    constexpr std::int64_t million = 1'000'000;
    const Rational& most = amount.most();
    const Rational value = most.denominator() <= million
                               ? most
                               : Rational{(most * Rational{million}).rounded(), million};
    return value * sizeOf(amount.unit);
}

std::string otherUnits(const Ingredient& ingredient)
{
    std::string units;
    for (const PieceMass& piece : ingredient.pieces) {
        units += fmt::format("{}{}", units.empty() ? "" : ", ",
                             piece.unit == Unit::Piece ? "pieces" : pluralOf(piece.unit));
    }
    return units.empty() ? "" : fmt::format(" or in {}", units);
}

/// Of one whole: what it gives of the part, in milligrams.
std::optional<Grams> partMassOfOne(const Ingredient& ingredient, IngredientPart part)
{
    const PartMass* known = partOf(ingredient, part);
    if (known == nullptr) {
        return std::nullopt;
    }
    if (known->each) {
        return known->each;
    }
    const auto edible = pieceMass(ingredient, Unit::Piece);
    if (!edible || !known->perThousand) {
        return std::nullopt;
    }
    return asPurchased(*edible, ingredient) * Rational{*known->perThousand, perUnit};
}

/// Of a part that is a thing of its own ("lemon juice") its own; what has no other is as the whole.
std::optional<Density> densityOf(const Ingredient& ingredient, IngredientPart part)
{
    if (part != IngredientPart::Whole) {
        const auto name = fmt::format("{} {}", ingredient.name, nameOf(part));
        if (const Ingredient* own = findIngredient(name)) {
            return own->density;
        }
    }
    return ingredient.density;
}

Result<Grams> countedMass(const Amount& amount, const Ingredient& ingredient, IngredientPart part)
{
    const bool isPart = part != IngredientPart::Whole && amount.unit == Unit::Piece;
    if (isPart && partOf(ingredient, part) != nullptr) {
        if (const auto one = partMassOfOne(ingredient, part)) {
            return times(amount.most(), *one);
        }
    }
    if (const auto one = pieceMass(ingredient, amount.unit)) {
        return times(amount.most(), *one);
    }
    return cannotWeigh(amount, ingredient,
                       fmt::format("nobody has said what a {} of it weighs. Give the amount in "
                                   "grams{}.",
                                   symbolOf(amount.unit), otherUnits(ingredient)));
}

} // namespace

Result<Grams> massOf(const Amount& amount, const Ingredient& ingredient, IngredientPart part)
{
    switch (dimensionOf(amount.unit)) {
    case Dimension::Mass:
        return Grams::ofSmallest((inBase(amount) * Rational{perUnit}).rounded());
    case Dimension::Volume:
        if (const auto density = densityOf(ingredient, part)) {
            return Grams::ofSmallest(
                (inBase(amount) * Rational{density->milligramsPerMillilitre}).rounded());
        }
        return cannotWeigh(amount, ingredient,
                           fmt::format("it is not measured by volume. Give the amount in grams{}.",
                                       otherUnits(ingredient)));
    case Dimension::Count:
    case Dimension::Inexact:
        return countedMass(amount, ingredient, part);
    case Dimension::Distance:
        return countedMass(*inUnit(amount, Unit::Centimetre), ingredient, part);
    case Dimension::ToTaste:
        break;
    }
    return cannotWeigh(amount, ingredient, "it is left to the cook.");
}

Result<Millilitres> volumeOf(const Amount& amount, const Ingredient& ingredient,
                             IngredientPart part)
{
    if (dimensionOf(amount.unit) == Dimension::Volume) {
        return Millilitres::ofSmallest((inBase(amount) * Rational{perUnit}).rounded());
    }
    const auto mass = massOf(amount, ingredient, part);
    if (!mass) {
        return mass.error();
    }
    const auto density = densityOf(ingredient, part);
    if (!density) {
        return Failure{FailureKind::BadInput,
                       fmt::format("{} is not measured by volume. Give its amount in grams{}.",
                                   ingredient.name, otherUnits(ingredient)),
                       {}};
    }
    const Rational milligramsPerMicrolitre{density->milligramsPerMillilitre, perUnit};
    return Millilitres::ofSmallest(
        (Rational{mass->smallest()} / milligramsPerMicrolitre).rounded());
}

Result<Amount> inUnitOf(const Amount& amount, Unit unit, const Ingredient& ingredient)
{
    if (const auto same = inUnit(amount, unit)) {
        return *same;
    }
    const auto mass = massOf(amount.atMost(), ingredient);
    if (!mass) {
        return mass.error();
    }
    const auto one = massOf({Rational{1}, unit}, ingredient);
    if (!one) {
        return one.error();
    }
    return Amount{Rational{mass->smallest(), std::max<std::int64_t>(1, one->smallest())}, unit};
}

Grams asPurchased(Grams edible, const Ingredient& ingredient)
{
    return ingredient.ediblePerThousand ? edible * Rational{perUnit, *ingredient.ediblePerThousand}
                                        : edible;
}

Grams edibleOf(Grams purchased, const Ingredient& ingredient)
{
    return ingredient.ediblePerThousand
               ? purchased * Rational{*ingredient.ediblePerThousand, perUnit}
               : purchased;
}

Result<Rational> wholesFor(const Amount& amount, const Ingredient& ingredient, IngredientPart part)
{
    if (amount.unit == Unit::Piece) {
        return amount.most();
    }
    const auto wanted = massOf(amount, ingredient, part);
    if (!wanted) {
        return wanted.error();
    }
    const auto one = part == IngredientPart::Whole ? pieceMass(ingredient, Unit::Piece)
                                                   : partMassOfOne(ingredient, part);
    if (!one) {
        return Failure{FailureKind::BadInput,
                       fmt::format("Nobody has said how much {} one {} has. Give the amount in "
                                   "pieces.",
                                   part == IngredientPart::Whole ? "weight" : nameOf(part),
                                   ingredient.name),
                       {}};
    }
    return Rational{wanted->smallest(), one->smallest()};
}

} // namespace suppertide
