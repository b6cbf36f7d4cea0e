#include "core/shopping/by_products.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "core/larder/larder.h"

namespace suppertide::shopping {

namespace {

/// Parts that are left when another part is taken, by the word that names them.
constexpr std::array leftParts{
    std::pair{std::string_view{"yolk"}, IngredientPart::Yolk},
    std::pair{std::string_view{"white"}, IngredientPart::White},
    std::pair{std::string_view{"juice"}, IngredientPart::Juice},
    std::pair{std::string_view{"zest"}, IngredientPart::Zest},
    std::pair{std::string_view{"stalk"}, IngredientPart::Stalks},
    std::pair{std::string_view{"leaf"}, IngredientPart::Leaves},
    std::pair{std::string_view{"leaves"}, IngredientPart::Leaves},
};

struct PartLeft
{
    std::string ingredient;
    IngredientPart part = IngredientPart::Whole;
};

/// “egg yolks” of a step that takes the white of eggs are the yolks of those eggs.
PartLeft partLeft(const MadeStep& made, const std::string& name)
{
    const std::string key = ingredientKey(name);
    for (const auto& [word, part] : leftParts) {
        if (key.find(word) == std::string::npos) {
            continue;
        }
        for (const IngredientLine& line : made.lines) {
            const bool isOther = line.part != part && line.part != IngredientPart::Whole;
            if (isOther && key.starts_with(ingredientKey(line.ingredient))) {
                return {line.ingredient, part};
            }
        }
    }
    return {};
}

} // namespace

ByProducts::ByProducts(const std::vector<Making>& makings, const Layout& layout)
    : makings_(makings), layout_(layout)
{
    for (std::size_t index = 0; index < makings.size(); ++index) {
        const Making& making = makings[index];
        for (const Batch& batch : making.batches) {
            const MadeStep& made = making.steps[batch.step];
            const Rational share = batch.share.total() / making.recipe->portions;
            for (const ByProduct& product : made.step.leaves) {
                PartLeft part = partLeft(made, product.name);
                left_.push_back({index, product.name, scaled(product.amount, share),
                                 std::move(part.ingredient), part.part});
            }
        }
    }
}

bool ByProducts::isDeclined(std::size_t making, const LineId& line) const
{
    const std::string begin = makings_[making].key + "/";
    const std::string end = "/" + line.text();
    return std::ranges::any_of(layout_.options, [&](const auto& option) {
        return option.second == "own" && option.first.starts_with(begin) &&
               option.first.ends_with(end);
    });
}

void ByProducts::offer(std::size_t making, const IngredientLine& line, ShoppingNeed& need)
{
    const auto from = std::ranges::find_if(left_, [&](const Left& left) {
        return left.making != making && left.name == *line.byProduct &&
               left.amount.unit == need.amount.unit && left.amount.value >= need.amount.most();
    });
    if (from == left_.end()) {
        return;
    }
    if (isDeclined(making, line.id)) {
        need.isBoughtApart = !from->ingredient.empty();
        return;
    }
    from->amount.value = from->amount.value - need.amount.most();
    if (from->ingredient.empty()) {
        need.takenFrom = makings_[from->making].name;
    } else {
        need.ingredient = from->ingredient;
        need.part = from->part;
    }
}

std::vector<SpareByProduct> ByProducts::spare() const
{
    std::vector<SpareByProduct> spare;
    for (const Left& left : left_) {
        if (!left.ingredient.empty() || left.amount.value <= Rational{0}) {
            continue;
        }
        const Recipe& recipe = *makings_[left.making].recipe;
        const auto known = std::ranges::find_if(spare, [&](const SpareByProduct& other) {
            return other.name == left.name && other.recipe == recipe.id &&
                   other.amount.unit == left.amount.unit;
        });
        if (known == spare.end()) {
            spare.push_back({left.name, left.amount, recipe.name, recipe.id});
        } else {
            known->amount.value = known->amount.value + left.amount.value;
        }
    }
    return spare;
}

} // namespace suppertide::shopping
