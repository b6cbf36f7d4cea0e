// FigureScale: a round axis for a figure of menus: minutes by the clock's steps, numbers by ones,
// twos and fives. Pure.
#pragma once

#include "core/menus/figure.h"

namespace suppertide::ui {

struct FigureScale
{
    double low = 0;
    double high = 1;
    double step = 1;

    friend bool operator==(const FigureScale&, const FigureScale&) = default;
};

/// Holds both with room to either side, at most `most` steps, and does not begin below 0 unless a
/// value does. Requires least <= greatest, most >= 2.
[[nodiscard]] FigureScale figureScale(menus::Figure figure, double least, double greatest,
                                      int most);

} // namespace suppertide::ui
