// The limits of a rule book that concern a food, as lines and bands of its chart: what it is kept
// hot and cold at, what its middle must reach, and the zone between in which minutes count.
#pragma once

#include "core/safety/food_history.h"
#include "core/safety/rules.h"
#include "core/wording/wording.h"
#include "ui/models/temperature_view.h"

namespace suppertide::ui {

struct FoodLimits
{
    std::vector<LimitLine> lines; // rising, one a temperature
    std::vector<LimitBand> zones;
};

/// Empty for a food whose time and temperature the book does not want watched.
[[nodiscard]] FoodLimits limitsFor(const safety::FoodHistory& history, safety::RuleBook book,
                                   const ReadingStyle& style = {});

/// "63 °C", "4.5 °C" where it is no whole degree; °F likewise.
[[nodiscard]] QString degreesText(double celsius, const ReadingStyle& style, int decimals = 0);

} // namespace suppertide::ui
