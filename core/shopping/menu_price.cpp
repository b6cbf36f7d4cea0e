#include "core/shopping/menu_price.h"

#include <memory>
#include <utility>

namespace suppertide::shopping {

std::function<std::optional<std::int64_t>(const PlanInput&)> priceOfMenus(const Larder& larder)
{
    const auto shared = std::make_shared<const Larder>(larder);
    return [shared](const PlanInput& evening) -> std::optional<std::int64_t> {
        const ShoppingList list = shoppingListOf({evening, *shared, {}, nullptr, {}});
        return list.cost > 0 ? std::optional{list.cost} : std::nullopt;
    };
}

} // namespace suppertide::shopping
