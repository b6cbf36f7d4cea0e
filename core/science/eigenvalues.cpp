#include "core/science/eigenvalues.h"

#include <cmath>
#include <limits>
#include <numbers>

#include "core/base/contracts.h"
#include "core/science/bracketed_root.h"
#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

using std::numbers::pi;

constexpr std::size_t mostRoots = 200;

// Of POSIX: several times as fast as the library's function of any order.
double j0(double x)
{
    return ::j0(x);
}

double j1(double x)
{
    return ::j1(x);
}

/// J_ν for ν from −1/2 on; the library's begins at 0.
double besselJ(double order, double x)
{
    if (order == 0.0) {
        return j0(x);
    }
    if (order == 1.0) {
        return j1(x);
    }
    if (order > 0.0) {
        return std::cyl_bessel_j(order, x);
    }
    return 2.0 * (order + 1.0) / x * std::cyl_bessel_j(order + 1.0, x) -
           std::cyl_bessel_j(order + 2.0, x);
}

/// The n-th positive zero of J_ν, −1/2 ≤ ν ≤ 1: J_ν changes sign once within a quarter of π of
/// McMahon's first term.
double besselZero(double order, std::size_t n)
{
    const double near = (static_cast<double>(n) + 0.5 * order - 0.25) * pi;
    return bracketedRoot([order](double x) { return besselJ(order, x); }, near - 0.25 * pi,
                         near + 0.25 * pi);
}

double slabRoot(double biot, std::size_t n)
{
    const double low = static_cast<double>(n - 1) * pi;
    if (biot > mostBiot) {
        return low + 0.5 * pi;
    }
    return bracketedRoot([biot](double z) { return z * std::sin(z) - biot * std::cos(z); }, low,
                         low + 0.5 * pi);
}

double cylinderRoot(double biot, std::size_t n)
{
    const double high = besselZero(0.0, n);
    if (biot > mostBiot) {
        return high;
    }
    const double low = n == 1 ? 0.0 : besselZero(1.0, n - 1);
    return bracketedRoot([biot](double z) { return z * j1(z) - biot * j0(z); }, low, high);
}

double sphereRoot(double biot, std::size_t n)
{
    const double high = static_cast<double>(n) * pi;
    if (biot > mostBiot) {
        return high;
    }
    // ζ₁² tends to 3 Bi from below as Bi goes to 0; zero itself is no eigenvalue.
    const double low = n == 1 ? 0.5 * std::sqrt(std::min(3.0 * biot, 1.0)) : high - pi;
    return bracketedRoot([biot](double z) { return (1.0 - biot) * std::sin(z) - z * std::cos(z); },
                         low, high);
}

std::optional<Failure> invalidBiot(double biot)
{
    return outsideRange({{"The exchange of heat with the surroundings (Biot number)", biot,
                          leastBiot, std::numeric_limits<double>::infinity(), ""}});
}

} // namespace

Result<std::vector<double>> eigenvalues(Shape shape, double biot, std::size_t count)
{
    expects(count >= 1 && count <= mostRoots, "from one to 200 roots");
    if (auto fault = invalidBiot(biot)) {
        return *fault;
    }
    std::vector<double> roots;
    roots.reserve(count);
    for (std::size_t n = 1; n <= count; ++n) {
        switch (shape) {
        case Shape::Slab:
            roots.push_back(slabRoot(biot, n));
            break;
        case Shape::Cylinder:
            roots.push_back(cylinderRoot(biot, n));
            break;
        case Shape::Sphere:
            roots.push_back(sphereRoot(biot, n));
            break;
        }
    }
    return roots;
}

double seriesCoefficient(Shape shape, double zeta)
{
    switch (shape) {
    case Shape::Slab:
        return 4.0 * std::sin(zeta) / (2.0 * zeta + std::sin(2.0 * zeta));
    case Shape::Cylinder: {
        const double a = j0(zeta);
        const double b = j1(zeta);
        return 2.0 / zeta * b / (a * a + b * b);
    }
    case Shape::Sphere:
        break;
    }
    return 4.0 * (std::sin(zeta) - zeta * std::cos(zeta)) / (2.0 * zeta - std::sin(2.0 * zeta));
}

double profile(Shape shape, double zetaR)
{
    switch (shape) {
    case Shape::Slab:
        return std::cos(zetaR);
    case Shape::Cylinder:
        return j0(zetaR);
    case Shape::Sphere:
        break;
    }
    return zetaR < 1e-4 ? 1.0 - zetaR * zetaR / 6.0 : std::sin(zetaR) / zetaR;
}

double meanOfProfile(Shape shape, double zeta)
{
    switch (shape) {
    case Shape::Slab:
        return std::sin(zeta) / zeta;
    case Shape::Cylinder:
        return 2.0 * j1(zeta) / zeta;
    case Shape::Sphere:
        break;
    }
    return 3.0 * (std::sin(zeta) - zeta * std::cos(zeta)) / (zeta * zeta * zeta);
}

Result<OneTerm> oneTerm(Shape shape, double biot)
{
    auto roots = eigenvalues(shape, biot, 1);
    if (!roots) {
        return roots.error();
    }
    const double zeta = roots->front();
    return OneTerm{zeta, seriesCoefficient(shape, zeta)};
}

Result<OneTerm> oneTermBetween(double beta, double biot)
{
    if (auto fault = outsideRange({{"The shape factor", beta, 0.0, 2.0, ""}})) {
        return *fault;
    }
    if (auto fault = invalidBiot(biot)) {
        return *fault;
    }
    const double order = 0.5 * (beta - 1.0);
    const double bounded = std::min(biot, mostBiot);
    const double high = besselZero(order, 1);
    // ζ² tends to (β + 1) Bi from below as Bi goes to 0.
    const double low = 0.5 * std::sqrt(std::min((beta + 1.0) * bounded, 1.0));
    const double zeta = bracketedRoot(
        [order, bounded](double z) {
            return z * besselJ(order + 1.0, z) - bounded * besselJ(order, z);
        },
        low, high);
    // J_ν by the boundary condition, for it all but vanishes at the root when Bi is large.
    const double atSurface = zeta * besselJ(order + 1.0, zeta) / bounded;
    const double shapeOfTerm = std::tgamma(order + 1.0) * std::pow(2.0 / zeta, order) * atSurface;
    return OneTerm{zeta,
                   2.0 * bounded /
                       ((zeta * zeta + bounded * bounded - 2.0 * order * bounded) * shapeOfTerm)};
}

} // namespace suppertide::science
