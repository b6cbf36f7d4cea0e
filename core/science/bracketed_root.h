// bracketedRoot: where a continuous function crosses zero between two points at which its signs
// differ. Used for eigenvalues, times to a temperature and fitted curves.
#pragma once

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/contracts.h"

namespace suppertide::science {

namespace detail {

struct RootPoint
{
    double x;
    double f;
};

/// Step from the best point `b` by the secant, or by inverse quadratic interpolation if `a` and `c`
/// differ.
[[nodiscard]] inline double interpolated(const RootPoint& a, const RootPoint& b, const RootPoint& c,
                                         double half)
{
    const double s = b.f / a.f;
    if (a.x == c.x) {
        return 2.0 * half * s / (s - 1.0);
    }
    const double u = a.f / c.f;
    const double r = b.f / c.f;
    const double p = s * (2.0 * half * u * (u - r) - (b.x - a.x) * (r - 1.0));
    return -p / ((u - 1.0) * (r - 1.0) * (s - 1.0));
}

} // namespace detail

/// The point of [low, high] where `f` is zero, to `precision` or the last digits of a double.
/// Requires f(low) and f(high) to differ in sign (or one to be zero). Never leaves the bracket.
/// Source: T. J. Dekker's and R. P. Brent's combination of inverse quadratic interpolation, secant
/// and bisection: R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4.
template <typename Function>
[[nodiscard]] double bracketedRoot(const Function& f, double low, double high,
                                   double precision = 1e-13)
{
    double a = low;
    double b = high;
    double fa = f(a);
    double fb = f(b);
    expects(fa == 0.0 || fb == 0.0 || (fa < 0.0) != (fb < 0.0), "a bracket of a root");
    if (fa == 0.0) {
        return a;
    }
    double c = a; // b is the best point, c the end of the bracket on the other side
    double fc = fa;
    double step = b - a;
    double before = step;
    constexpr int most = 200;
    for (int i = 0; i < most && fb != 0.0; ++i) {
        if ((fb > 0.0) == (fc > 0.0)) {
            c = a;
            fc = fa;
            step = before = b - a;
        }
        if (std::abs(fc) < std::abs(fb)) {
            a = std::exchange(b, c);
            c = a;
            fa = std::exchange(fb, fc);
            fc = fa;
        }
        const double tolerance = 2e-16 * std::abs(b) + 0.5 * precision;
        const double half = 0.5 * (c - b);
        if (std::abs(half) <= tolerance) {
            break;
        }
        const double tried = std::abs(before) < tolerance || std::abs(fa) <= std::abs(fb)
                                 ? half
                                 : detail::interpolated({a, fa}, {b, fb}, {c, fc}, half);
        const double allowed =
            std::min(1.5 * std::abs(half) - 0.5 * tolerance, 0.5 * std::abs(before));
        const bool isGood = tried != half && tried * half > 0.0 && std::abs(tried) < allowed;
        before = isGood ? step : half;
        step = isGood ? tried : half;
        a = b;
        fa = fb;
        b += std::abs(step) > tolerance ? step : std::copysign(tolerance, half);
        fb = f(b);
    }
    return b;
}

} // namespace suppertide::science
