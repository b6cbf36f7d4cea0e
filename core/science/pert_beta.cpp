#include "core/science/pert_beta.h"

#include <array>
#include <cmath>

#include "core/base/contracts.h"

namespace suppertide {

namespace {

/// Panels of the integration over 0…1. The density is a smooth polynomial-like bump (both shapes
/// lie within 1…5), so Simpson's rule on this many is exact to far below a second of a day.
constexpr int panels = 1024;

struct Shape
{
    double alpha = 1.0;
    double beta = 1.0;

    [[nodiscard]] double density(double x) const
    {
        return std::pow(x, alpha - 1.0) * std::pow(1.0 - x, beta - 1.0);
    }
};

/// The point of 0…1 below which `share` of the mass lies.
double quantile(const Shape& shape, double share)
{
    std::array<double, panels + 1> below{};
    constexpr double width = 1.0 / panels;
    for (int i = 0; i < panels; ++i) {
        const double from = i * width;
        const double panel = width / 6.0 *
                             (shape.density(from) + 4.0 * shape.density(from + width / 2.0) +
                              shape.density(from + width));
        const auto at = static_cast<std::size_t>(i);
        below[at + 1] = below[at] + panel;
    }
    const double wanted = share * below[panels];
    std::size_t at = 0;
    while (at + 1 < panels && below[at + 1] < wanted) {
        ++at;
    }
    const double within = (wanted - below[at]) / (below[at + 1] - below[at]);
    return (static_cast<double>(at) + within) * width;
}

} // namespace

Minutes pertQuantile(Minutes least, Minutes likely, Minutes most, int percent)
{
    expects(least <= likely && likely <= most, "least, likely and most in order");
    expects(percent > 0 && percent < 100, "a percentage between 0 and 100");
    if (least == most) {
        return likely;
    }
    const auto range = static_cast<double>((most - least).count());
    const double mode = static_cast<double>((likely - least).count()) / range;
    const Shape shape{1.0 + 4.0 * mode, 5.0 - 4.0 * mode};
    const double length = quantile(shape, percent / 100.0) * range;
    constexpr double slack = 1e-6; // of a minute: an exact whole number does not round up
    return least + Minutes{static_cast<Minutes::rep>(std::ceil(length - slack))};
}

} // namespace suppertide
