// Energy: what ovens and burners of a plan would draw, as power × time. An estimate by which menus
// can be told apart, no meter reading: kitchens do not say what their ovens draw, and fridge,
// appliances and hot water are left out.
#pragma once

#include <compare>
#include <cstdint>

#include "core/plan/plan.h"

namespace suppertide::menus {

/// In watt hours.
struct Energy
{
    std::int64_t wattHours = 0;

    friend auto operator<=>(const Energy&, const Energy&) = default;
};

/// An oven draws 2.4 kW while it heats (common practice for a household oven), and while it holds a
/// temperature the share of that by which it would cool: with rates h of heating and c of
/// cooling, c / (h + c), since heating works against the same loss. A burner is at its full power
/// for the first ten minutes that it is held, and at a quarter of it after (our own choice);
/// where it does not matter which burner, at the mean power of the kitchen's.
[[nodiscard]] Energy energyOf(const Plan& plan, const Kitchen& kitchen);

} // namespace suppertide::menus
