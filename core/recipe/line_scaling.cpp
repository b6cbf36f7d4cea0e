#include "core/recipe/line_scaling.h"

#include <cmath>

#include "core/base/contracts.h"

namespace suppertide {

namespace {

Rational power(const Rational& base, const Rational& exponent)
{
    constexpr std::int64_t parts = 10'000;
    const double value = std::pow(base.toDouble(), exponent.toDouble());
    return Rational{std::llround(value * static_cast<double>(parts)), parts};
}

struct Factor
{
    const Made& made;

    Rational operator()(const InProportion& /*rule*/) const { return made.batch / made.recipe; }
    Rational operator()(const SameForAny& /*rule*/) const { return made.batch / made.all; }
    Rational operator()(const EachBatch& rule) const
    {
        return rule.portions ? Rational{(made.batch / *rule.portions).ceiled()} : Rational{1};
    }
    Rational operator()(const ByPower& rule) const
    {
        return power(made.all / made.recipe, rule.exponent) * made.batch / made.all;
    }
    Rational operator()(const ByMould& rule) const
    {
        const Rational larger = made.mould ? areaRatio(*made.mould, rule.mould) : Rational{1};
        // A larger mould serves more.
        const Portions each = made.recipe * larger;
        return Rational{(made.batch / each).ceiled()} * larger;
    }
};

struct PossibleRule
{
    bool operator()(const InProportion& /*rule*/) const { return true; }
    bool operator()(const SameForAny& /*rule*/) const { return true; }
    bool operator()(const EachBatch& rule) const
    {
        return !rule.portions || *rule.portions > Rational{0};
    }
    bool operator()(const ByPower& rule) const
    {
        return rule.exponent >= Rational{0} && rule.exponent <= Rational{1};
    }
    bool operator()(const ByMould& rule) const { return isPossible(rule.mould); }
};

} // namespace

Amount amountIn(const Made& made, const Amount& amount, const LineScaling& scaling)
{
    expects(made.recipe > Rational{0}, "a recipe for more than no portions");
    if (made.batch <= Rational{0} || made.all <= Rational{0}) {
        return scaled(amount, Rational{0});
    }
    return scaled(amount, std::visit(Factor{made}, scaling));
}

bool isPossible(const LineScaling& scaling)
{
    return std::visit(PossibleRule{}, scaling);
}

} // namespace suppertide
