// What a menu's plan would do to the evening. For core/menus alone.
#pragma once

#include "core/menus/compared_menu.h"

namespace suppertide::menus {

/// By-products that the plan takes; each once.
[[nodiscard]] std::vector<LeftUsed> leftUsedBy(const Plan& plan);

[[nodiscard]] EveningFigures eveningOf(const Plan& plan, const Kitchen& kitchen);

} // namespace suppertide::menus
