#include "core/shopping/line_amounts.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace suppertide::shopping {

namespace {

bool isCountable(const ShoppingNeed& need)
{
    const Dimension dimension = dimensionOf(need.amount.unit);
    return need.takenFrom.empty() &&
           (dimension == Dimension::Mass || dimension == Dimension::Volume ||
            dimension == Dimension::Count);
}

/// In which it would be told by itself.
Unit naturalUnit(const ShoppingNeed& need, const IngredientFacts& facts)
{
    if (wholesFor(need, facts)) {
        return Unit::Piece;
    }
    switch (dimensionOf(need.amount.unit)) {
    case Dimension::Mass:
        return Unit::Gram;
    case Dimension::Volume:
        return Unit::Millilitre;
    case Dimension::Count:
    case Dimension::Distance:
    case Dimension::Inexact:
    case Dimension::ToTaste:
        break;
    }
    return need.amount.unit;
}

/// Those into which most needs convert come first, then those natural to most, then as written.
Unit bestUnit(const std::vector<ShoppingNeed>& needs, const IngredientFacts& facts)
{
    std::optional<Unit> best;
    std::pair<std::int64_t, std::int64_t> most;
    for (const ShoppingNeed& candidate : needs) {
        const Unit unit = naturalUnit(candidate, facts);
        const auto convertible = std::ranges::count_if(needs, [&](const ShoppingNeed& need) {
            return asBought(need, unit, facts).has_value();
        });
        const auto natural = std::ranges::count_if(
            needs, [&](const ShoppingNeed& need) { return naturalUnit(need, facts) == unit; });
        const std::pair<std::int64_t, std::int64_t> score{convertible, natural};
        if (!best || score > most) {
            best = unit;
            most = score;
        }
    }
    return best.value_or(Unit::Gram);
}

void addUp(NeedGroup& group, const IngredientFacts& facts)
{
    for (const ShoppingNeed& need : group.needs) {
        const auto wholes = wholesFor(need, facts);
        if (wholes && !need.isBoughtApart) {
            group.wholes.addPart(need.part, *wholes);
        } else {
            group.amount = sumOf(group.amount, *asBought(need, group.unit, facts));
        }
    }
    group.opened = group.wholes.count();
    if (group.opened > Rational{0}) {
        const Amount wholes{group.opened, Unit::Piece};
        group.amount = sumOf(group.amount, *measured(wholes, group.unit, facts));
    }
    group.isCounted = true;
}

} // namespace

bool isPreparedAmount(const ShoppingNeed& need)
{
    using namespace std::string_view_literals;
    constexpr std::array words{"peeled weight"sv, "trimmed weight"sv, "prepared weight"sv,
                               "net weight"sv};
    const std::string note = ingredientKey(need.note);
    return need.part != IngredientPart::Whole ||
           std::ranges::any_of(words, [&note](std::string_view word) {
               return note.find(word) != std::string::npos;
           });
}

std::optional<Rational> asBought(const ShoppingNeed& need, Unit unit, const IngredientFacts& facts)
{
    if (const auto wholes = wholesFor(need, facts)) {
        return measured(Amount{*wholes, Unit::Piece}, unit, facts);
    }
    auto value = measured(need.amount, unit, facts);
    if (!value && need.also) {
        value = measured(*need.also, unit, facts);
    }
    if (value && isPreparedAmount(need)) {
        const auto share = facts.portion.find(need.part);
        const Rational& used = share == facts.portion.end() ? facts.edible : share->second;
        value = sumOf(*value / used, Rational{0});
    }
    return value;
}

std::vector<NeedGroup> groupsOf(std::vector<ShoppingNeed> needs, const IngredientFacts& facts)
{
    std::vector<NeedGroup> groups;
    const auto uncounted = std::ranges::stable_partition(needs, isCountable);
    const std::vector<ShoppingNeed> others(uncounted.begin(), uncounted.end());
    needs.erase(uncounted.begin(), uncounted.end());
    while (!needs.empty()) {
        NeedGroup group;
        group.unit = bestUnit(needs, facts);
        const auto rest = std::ranges::stable_partition(needs, [&](const ShoppingNeed& need) {
            return asBought(need, group.unit, facts).has_value();
        });
        group.needs.assign(needs.begin(), rest.begin());
        needs.erase(needs.begin(), rest.begin());
        addUp(group, facts);
        groups.push_back(std::move(group));
    }
    if (groups.empty() && !others.empty()) {
        groups.emplace_back();
    }
    if (!groups.empty()) {
        groups.front().needs.insert(groups.front().needs.end(), others.begin(), others.end());
    }
    return groups;
}

} // namespace suppertide::shopping
