// The computed temperature of an oven under a plan, with what the dishes in it accept. A real oven
// swings about its setting; the plan's rates are those that the kitchen says of it.
#pragma once

#include "core/wording/wording.h"
#include "ui/models/temperature_view.h"

namespace suppertide::ui {

/// Whether anything is in it in this plan.
[[nodiscard]] bool isOvenUsed(const Plan& plan, OvenIndex oven);
[[nodiscard]] TemperatureView ovenView(const Plan& plan, const Occasion& occasion, OvenIndex oven,
                                       const ReadingStyle& style = {});

} // namespace suppertide::ui
