// Mould scaling: tins and moulds of another size: how much goes in and how long it bakes.
#pragma once

#include <variant>

#include "core/base/result.h"
#include "core/science/estimate.h"

namespace suppertide::science {

/// Centimetres or inches, whichever the recipe uses, as long as both tins use the same.
struct RoundTin
{
    double diameter = 0.0;
};
struct RectangularTin
{
    double width = 0.0;
    double length = 0.0;
};
using Tin = std::variant<RoundTin, RectangularTin>;

/// Of the bottom, in the square of the tin's unit. A failure if a side is not within 1…150.
[[nodiscard]] Result<double> areaOf(const Tin& tin);

/// Amounts for `to` against those for `from` at the same depth: the ratio of areas.
[[nodiscard]] Result<double> amountFactor(const Tin& from, const Tin& to);

/// Minutes for another depth of a cake (any unit, both the same, at most four times one another): t
/// ∝ depth^1.75, range 1.5…2. Common practice. Known minutes 1…600; a failure outside.
[[nodiscard]] Result<Estimate> bakingTimeAtDepth(double knownMinutes, double knownDepth,
                                                 double depth);

/// A round mould: metres, 1…60 cm wide and deep.
struct Mould
{
    double diameter = 0.0;
    double depth = 0.0;
};

/// Minutes for a custard or pudding in another mould, heated from all sides: times go as
/// 1/[(2.4048/radius)² + (π/depth)²], the slowest mode of a cylinder whose surface is held. Range:
/// that with exponents 0.75 and 1. Source: Carslaw and Jaeger, Conduction of Heat in Solids, 2nd
/// ed., § 8.4.
[[nodiscard]] Result<Estimate> mouldTime(double knownMinutes, const Mould& known,
                                         const Mould& mould);

} // namespace suppertide::science
