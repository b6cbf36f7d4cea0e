// What menus of an evening cost, for comparing them.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>

#include "core/shopping/shopping_list.h"

namespace suppertide::shopping {

/// For an evening: what there is to pay for all that has a price, in hundredths of the larder's
/// currency; absent if nothing has one. What is ticked counts as still to buy. Each evening's
/// list is made anew: that takes a few hundredths of what planning it does. May be called from
/// several threads at once.
[[nodiscard]] std::function<std::optional<std::int64_t>(const PlanInput&)>
priceOfMenus(const Larder& larder);

} // namespace suppertide::shopping
