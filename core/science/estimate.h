// Estimate: how long something takes, how sure that is, and the numbers that it comes from, so that
// a cook who asks “why this long?” can be shown them.
#pragma once

#include <string>
#include <vector>

namespace suppertide::science {

/// One number behind an estimate: "half of the thickness", 45, "mm".
struct Figure
{
    std::string name;
    double value = 0.0;
    std::string unit;

    friend bool operator==(const Figure&, const Figure&) = default;
};

/// Least, likely and most of one quantity: a coefficient, an efficiency, a factor.
struct Spread
{
    double least = 0.0;
    double likely = 0.0;
    double most = 0.0;

    friend bool operator==(const Spread&, const Spread&) = default;
};

/// Minutes, 0 ≤ least ≤ likely ≤ most, all finite.
struct Estimate
{
    double least = 0.0;
    double likely = 0.0;
    double most = 0.0;
    std::vector<Figure> because;
};

/// An estimate longer than this (two weeks) is given as a failure: no dinner waits for it, and the
/// formulas do not hold for it.
inline constexpr double mostMinutes = 14.0 * 24.0 * 60.0;

} // namespace suppertide::science
