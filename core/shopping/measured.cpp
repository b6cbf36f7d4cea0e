#include "core/shopping/ingredient_facts.h"

namespace suppertide::shopping {

namespace {

// Sums of fractions no finer than this stay within 64 bits for any amounts that recipes may hold.
constexpr std::int64_t finest = 100'000;
constexpr std::int64_t roundedTo = 1000;

Rational shortened(const Rational& value)
{
    return value.denominator() <= finest
               ? value
               : Rational{(value * Rational{roundedTo}).ceiled(), roundedTo};
}

std::optional<Rational> gramsOf(Unit unit, const IngredientFacts& facts)
{
    const auto known = facts.gramsOf.find(unit);
    return known == facts.gramsOf.end() ? std::nullopt : std::optional{known->second};
}

/// Grams of one of `unit`.
std::optional<Rational> weightOf(Unit unit, const IngredientFacts& facts)
{
    switch (dimensionOf(unit)) {
    case Dimension::Mass:
        return sizeOf(unit);
    case Dimension::Volume:
        return facts.gramsPerMillilitre
                   ? std::optional{shortened(sizeOf(unit) * *facts.gramsPerMillilitre)}
                   : std::nullopt;
    case Dimension::Count:
        return gramsOf(unit, facts);
    case Dimension::Distance:
    case Dimension::Inexact:
    case Dimension::ToTaste:
        break;
    }
    return std::nullopt;
}

} // namespace

std::optional<Rational> measured(const Amount& amount, Unit unit, const IngredientFacts& facts)
{
    if (amount.unit == unit) {
        return shortened(amount.most());
    }
    const Dimension from = dimensionOf(amount.unit);
    if (from == dimensionOf(unit) && (from == Dimension::Mass || from == Dimension::Volume)) {
        return shortened(shortened(amount.most()) * sizeOf(amount.unit) / sizeOf(unit));
    }
    const auto heldWeight = weightOf(amount.unit, facts);
    const auto wantedWeight = weightOf(unit, facts);
    if (!heldWeight || !wantedWeight || *wantedWeight <= Rational{0}) {
        return std::nullopt;
    }
    return shortened(shortened(shortened(amount.most()) * *heldWeight) / *wantedWeight);
}

Rational sumOf(const Rational& a, const Rational& b)
{
    return shortened(shortened(a) + shortened(b));
}

} // namespace suppertide::shopping
