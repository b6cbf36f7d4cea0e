#include "ui/models/figure_scale.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/contracts.h"

namespace suppertide::ui {

namespace {

using menus::Figure;

constexpr std::array minuteSteps{1.0,  2.0,   5.0,   10.0,  15.0,  30.0,
                                 60.0, 120.0, 240.0, 480.0, 1440.0};

bool isTime(Figure figure)
{
    switch (figure) {
    case Figure::HandsOn:
    case Figure::LastHour:
    case Figure::Ahead:
    case Figure::OvenOn:
        return true;
    case Figure::Steps:
    case Figure::ExtraSteps:
    case Figure::OvenChanges:
    case Figure::Energy:
    case Figure::Price:
    case Figure::Repeated:
        break;
    }
    return false;
}

FigureScale scaleBy(double step, double least, double greatest)
{
    constexpr double room = 0.25; // of a step, free at either side
    const double low = std::floor(least / step - room) * step;
    return {least >= 0 ? std::max(0.0, low) : low, std::ceil(greatest / step + room) * step, step};
}

} // namespace

FigureScale figureScale(Figure figure, double least, double greatest, int most)
{
    expects(least <= greatest && most >= 2, "from the least to the greatest");
    const auto fits = [most](const FigureScale& scale) {
        return scale.high - scale.low <= most * scale.step;
    };
    if (isTime(figure)) {
        for (const double step : minuteSteps) {
            if (const FigureScale scale = scaleBy(step, least, greatest); fits(scale)) {
                return scale;
            }
        }
    }
    for (double ten = 1;; ten *= 10) {
        for (const double times : {1.0, 2.0, 5.0}) {
            if (const FigureScale scale = scaleBy(times * ten, least, greatest); fits(scale)) {
                return scale;
            }
        }
    }
}

} // namespace suppertide::ui
