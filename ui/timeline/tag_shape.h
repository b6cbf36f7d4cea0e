// TagShape: how wide the tag of a clash is for the number in it. Pure; shared by all that paint
// one.
#pragma once

#include <algorithm>

namespace suppertide::ui {

/// Half of the foot of a triangle `height` high in which a figure of `width`, whose top is `top`
/// over the foot, stands with a pixel to spare at both sides; not below `least`. Requires top <
/// height.
[[nodiscard]] constexpr double halfFoot(double width, double top, double height, double least)
{
    constexpr double spare = 1;
    return std::max(least, (width / 2 + spare) / (1 - top / height));
}

/// Half of a square or circle around it; not below `least`.
[[nodiscard]] constexpr double halfWidth(double width, double least)
{
    constexpr double spare = 2;
    return std::max(least, width / 2 + spare);
}

} // namespace suppertide::ui
