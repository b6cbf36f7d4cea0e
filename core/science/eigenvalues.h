// Eigenvalues: the roots ζ of the boundary condition of convection at a slab, long cylinder or
// sphere, and the coefficients of the series that is built on them. Used by the series and by the
// shape factor.
#pragma once

#include <cstddef>
#include <vector>

#include "core/base/result.h"
#include "core/science/shape.h"

namespace suppertide::science {

/// The Biot number h·L/k for which roots are computed; L is half the thickness or the radius, never
/// volume over area. Above mostBiot the surface is taken to have the surroundings'
/// temperature at once.
inline constexpr double leastBiot = 1e-5;
inline constexpr double mostBiot = 1e6;

/// The first `count` (1…200) positive roots in rising order, without unit, of
///   slab ζ tan ζ = Bi,   cylinder ζ J₁(ζ)/J₀(ζ) = Bi,   sphere 1 − ζ cot ζ = Bi.
/// Biot from 1e-5, infinity included; a failure below it. To about 1e-12.
/// Source: F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, "The plane wall with
/// convection" and "Radial systems with convection"; H. S. Carslaw, J. C. Jaeger, Conduction of
/// Heat in Solids, 2nd ed. (1959), §§ 3.11, 7.7, 9.4.
[[nodiscard]] Result<std::vector<double>> eigenvalues(Shape shape, double biot, std::size_t count);

/// C of the term C·exp(−ζ²Fo) of the temperature in the middle, for a root ζ of that shape:
///   slab 4 sin ζ/(2ζ + sin 2ζ),   cylinder (2/ζ)·J₁/(J₀² + J₁²),
///   sphere 4 (sin ζ − ζ cos ζ)/(2ζ − sin 2ζ).
[[nodiscard]] double seriesCoefficient(Shape shape, double zeta);

/// How a term falls off from the middle (1) to the surface, at `zeta`·r/L: cos, J₀, or sin x/x.
[[nodiscard]] double profile(Shape shape, double zetaR);

/// The mean of the profile over the body's volume.
[[nodiscard]] double meanOfProfile(Shape shape, double zeta);

/// The first term alone. It holds for Fo > 0.2 with an error below 2 %.
struct OneTerm
{
    double zeta = 0.0;
    double coefficient = 0.0;
};
[[nodiscard]] Result<OneTerm> oneTerm(Shape shape, double biot);

/// One term of the bodies between: the first root ζ of ζ J_{ν+1}(ζ)/J_ν(ζ) = Bi with ν = (β − 1)/2
/// (the equations above for β = 0, 1, 2), and its C = 2 Bi/[(ζ² + Bi² − 2ν Bi)·Γ(ν+1)(2/ζ)^ν
/// J_ν(ζ)]. β from 0 to 2, Biot as above. Source: separation of ∂T/∂t = α (T″ + β/r T′), whose
/// bounded solutions are r^(−ν) J_ν(ζr).
[[nodiscard]] Result<OneTerm> oneTermBetween(double beta, double biot);

} // namespace suppertide::science
