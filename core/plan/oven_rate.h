// OvenRate: how fast an oven of the kitchen heats up, for a problem, in which a rate is one number:
// measured by the cook, or what the kitchen says.
#pragma once

#include "core/kitchen/kitchen.h"

namespace suppertide {

/// Thousandths of a °C a minute, all the way from the room to `hottest`, by what a thermometer
/// showed: real ovens slow down as they get hotter, so cooler settings are promised a little late,
/// and only a rise from one hot setting to another may take longer. The oven's own rate where
/// nothing was measured, where the measurements make no sense, or where by them it does not get
/// there. At least 1.
[[nodiscard]] std::int64_t heatingRate(const KitchenOven& oven, Celsius room, Celsius hottest);

/// Minutes from the room to `hottest` by these measurements; a failure, with a sentence for the
/// cook, as science::OvenHeating.
[[nodiscard]] Result<double> measuredPreheat(const std::vector<OvenWarming>& warming, Celsius room,
                                             Celsius hottest);

} // namespace suppertide
