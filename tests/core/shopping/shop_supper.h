// ShopSupper: a small evening with what is at home and in the shop, for tests of shopping lists.
#pragma once

#include <algorithm>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "core/shopping/ingredient_facts.h"
#include "core/shopping/shopping_list.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

[[nodiscard]] inline Amount amount(std::int64_t value, Unit unit)
{
    return {Rational{value}, unit};
}

[[nodiscard]] inline IngredientLine asks(const std::string& name, Amount amount,
                                         IngredientPart part = IngredientPart::Whole)
{
    IngredientLine line;
    line.id = LineId{slug(name) + "-" + std::to_string(static_cast<int>(part))};
    line.ingredient = name;
    line.amount = std::move(amount);
    line.part = part;
    return line;
}

/// A recipe for 8 whose one step takes all lines.
[[nodiscard]] inline Recipe asking(const std::string& name, std::vector<IngredientLine> lines)
{
    Step mix = step("Mix " + name, Minutes{10});
    for (const IngredientLine& line : lines) {
        mix.lines.push_back(line.id);
    }
    Recipe made = recipe(name, {std::move(mix)});
    made.common.lines = std::move(lines);
    return made;
}

struct ShopSupper : Supper
{
    Larder larder;
    Bought bought;
    PlanPtr plan;
    std::map<RecipeId, std::shared_ptr<const Recipe>> repertoire;

    OwnIngredient& know(const std::string& name)
    {
        larder.ingredients.emplace_back();
        larder.ingredients.back().name = name;
        return larder.ingredients.back();
    }
    /// A fruit with zest of 6 g and juice of 45 ml, and an egg with a yolk of 17 g and a white of
    /// 33 g, invented, so that they are in no table.
    void knowFruitAndEggs()
    {
        OwnIngredient& fruit = know("yuzel");
        fruit.parts = {{IngredientPart::Zest, amount(6, Unit::Gram)},
                       {IngredientPart::Juice, amount(45, Unit::Millilitre)}};
        fruit.keepsDays = 14;
        OwnIngredient& egg = know("gull egg");
        egg.pieceWeighs = 58_g;
        egg.parts = {{IngredientPart::Yolk, amount(17, Unit::Gram)},
                     {IngredientPart::White, amount(33, Unit::Gram)}};
        egg.keepsDays = 21;
    }
    void sell(const std::string& name, Amount amount, std::optional<std::int64_t> price = {})
    {
        larder.packs.push_back({name, std::move(amount), price, "", false});
    }
    void have(const std::string& name, Amount amount)
    {
        larder.stock.push_back({name, std::move(amount), std::nullopt, false, ""});
    }

    [[nodiscard]] shopping::ShoppingList list() const
    {
        return shopping::shoppingListOf({input(), larder, bought, plan, repertoire});
    }
    /// Of that ingredient, or of that key. Throws if there is none.
    [[nodiscard]] shopping::ShoppingLine line(const std::string& key) const
    {
        const shopping::ShoppingList all = list();
        const std::string known = shopping::factsOf(key, larder).key;
        const auto found = std::ranges::find_if(all.lines, [&](const shopping::ShoppingLine& each) {
            return each.key == key || each.key == known;
        });
        if (found == all.lines.end()) {
            throw std::out_of_range("no line " + key);
        }
        return *found;
    }
};

} // namespace suppertide::test
