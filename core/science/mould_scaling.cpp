#include "core/science/mould_scaling.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

Estimate scaled(double minutes, double ratio, const Spread& exponent)
{
    const double a = minutes * std::pow(ratio, exponent.least);
    const double b = minutes * std::pow(ratio, exponent.most);
    return {std::min(a, b), minutes * std::pow(ratio, exponent.likely), std::max(a, b), {}};
}

double slowestMode(const Mould& mould)
{
    constexpr double firstZero = 2.404825557695773; // of J₀
    const double across = 2.0 * firstZero / mould.diameter;
    const double through = std::numbers::pi / mould.depth;
    return across * across + through * through;
}

std::optional<Failure> mouldFault(const Mould& mould)
{
    return outsideRange({{"The diameter of the mould", mould.diameter, 0.01, 0.60, "m"},
                         {"The depth of the mould", mould.depth, 0.01, 0.60, "m"}});
}

} // namespace

Result<double> areaOf(const Tin& tin)
{
    constexpr double least = 1.0;
    constexpr double most = 150.0;
    if (const auto* round = std::get_if<RoundTin>(&tin)) {
        if (auto fault =
                outsideRange({{"The diameter of the tin", round->diameter, least, most, ""}})) {
            return *fault;
        }
        return std::numbers::pi / 4.0 * round->diameter * round->diameter;
    }
    const auto& sides = std::get<RectangularTin>(tin);
    if (auto fault = outsideRange({{"The width of the tin", sides.width, least, most, ""},
                                   {"The length of the tin", sides.length, least, most, ""}})) {
        return *fault;
    }
    return sides.width * sides.length;
}

Result<double> amountFactor(const Tin& from, const Tin& to)
{
    auto before = areaOf(from);
    if (!before) {
        return before;
    }
    auto after = areaOf(to);
    return after ? Result<double>{*after / *before} : after;
}

Result<Estimate> bakingTimeAtDepth(double knownMinutes, double knownDepth, double depth)
{
    if (auto fault =
            outsideRange({{"The time known", knownMinutes, 1.0, 600.0, "minutes"},
                          {"The depth known", knownDepth, 1e-3, 1e3, ""},
                          {"The depth", depth, 0.25 * knownDepth, 4.0 * knownDepth, ""}})) {
        return *fault;
    }
    Estimate estimate = scaled(knownMinutes, depth / knownDepth, {1.5, 1.75, 2.0});
    estimate.because = {{"known to take", knownMinutes, "minutes"},
                        {"depth against the one known", depth / knownDepth, ""},
                        {"grows with the depth to the power of", 1.75, ""}};
    return estimate;
}

Result<Estimate> mouldTime(double knownMinutes, const Mould& known, const Mould& mould)
{
    if (auto fault = outsideRange({{"The time known", knownMinutes, 1.0, 600.0, "minutes"}})) {
        return *fault;
    }
    if (auto fault = mouldFault(known)) {
        return *fault;
    }
    if (auto fault = mouldFault(mould)) {
        return *fault;
    }
    const double ratio = slowestMode(known) / slowestMode(mould);
    Estimate estimate = scaled(knownMinutes, ratio, {0.75, 1.0, 1.0});
    if (estimate.most > mostMinutes) {
        return cannotCompute("This mould is so much larger that the time cannot be told from the "
                             "one known. Enter it yourself.");
    }
    estimate.because = {{"known to take", knownMinutes, "minutes"},
                        {"diameter", 1000.0 * mould.diameter, "mm"},
                        {"depth", 1000.0 * mould.depth, "mm"},
                        {"slower by", ratio, "times"}};
    return estimate;
}

} // namespace suppertide::science
