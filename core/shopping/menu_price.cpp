#include "core/shopping/menu_price.h"

#include <memory>
#include <utility>

namespace suppertide::shopping {

std::function<std::optional<std::int64_t>(const Occasion&)> priceOfMenus(ShoppingInput input)
{
    input.plan = nullptr;
    input.bought = {};
    input.repertoire.clear();
    const auto shared = std::make_shared<const ShoppingInput>(std::move(input));
    return [shared](const Occasion& occasion) -> std::optional<std::int64_t> {
        ShoppingInput asked = *shared;
        asked.evening.occasion = std::make_shared<const Occasion>(occasion);
        const ShoppingList list = shoppingListOf(asked);
        return list.cost > 0 ? std::optional{list.cost} : std::nullopt;
    };
}

} // namespace suppertide::shopping
