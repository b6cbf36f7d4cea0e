// ShownDegrees: a temperature as a whole number of what the user reads, °C or °F. Pure.
#pragma once

#include "core/quantity/quantity.h"

namespace suppertide::ui {

/// °F as oven knobs are marked: in fives above boiling.
[[nodiscard]] constexpr int shownDegrees(Celsius temperature, bool isFahrenheit)
{
    if (!isFahrenheit) {
        return temperature.wholeDegrees();
    }
    const int hundredths = temperature.tenths() * 18 + 3200; // of a °F
    const int step = temperature > Celsius::degrees(100) ? 500 : 100;
    const int up = hundredths >= 0 ? step / 2 : -step / 2;
    return (hundredths + up) / step * (step / 100);
}

} // namespace suppertide::ui
