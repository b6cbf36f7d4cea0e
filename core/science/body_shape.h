// BodyShape: blocks, rolls and joints as bodies in which heat flows along one coordinate, by a
// shape factor, so that one solver serves roasts, fish, loaves and dishes of gratin.
#pragma once

#include <variant>
#include <vector>

#include "core/base/result.h"
#include "core/science/transient_series.h"

namespace suppertide::science {

/// A loaf, a side of fish, a gratin: heated from all six sides. Metres.
struct Block
{
    double thickness = 0.0;
    double width = 0.0;
    double length = 0.0;
};

/// A rolled roast, a cake, a pot of stew: a cylinder of any length, its ends included. Metres.
struct Roll
{
    double diameter = 0.0;
    double length = 0.0;
};

/// A joint: rounded, with three axes of their full lengths. Metres.
struct Joint
{
    double thickness = 0.0;
    double width = 0.0;
    double length = 0.0;
};

using BodyShape = std::variant<Block, Roll, Joint>;

/// m, from the middle to the nearest surface. A failure if a length is not within 1 mm…2 m.
[[nodiscard]] Result<double> halfThickness(const BodyShape& shape);

/// m³, with the same failures.
[[nodiscard]] Result<double> volume(const BodyShape& shape);

/// The slabs and the cylinder whose intersection a block or roll is, of a food and surface as given
/// (W/(m·K), m²/s, W/(m²·K)); none for a joint. A failure as of halfThickness.
[[nodiscard]] Result<std::vector<Conduction>> partsOf(const BodyShape& shape, double conductivity,
                                                      double diffusivity, double coefficient);

/// β of the body between slab (0) and sphere (2) of the same half thickness that stands for the
/// shape, so that the solver can follow it through several places. Biot with the half thickness,
/// 1e-5…infinity.
///
/// Block and roll: the β whose middle is halfway (θ = ½) when that of the true body is, which is
/// the product of its parts. A quarter and three quarters of the way it is off by up to an
/// eighth in time (held against the product in the tests): the courses of a body with edges and of
/// a rounded one differ, and no β has both right. Joint: (a/b)² + (a/c)² with a the shortest axis;
/// exact for slab, cylinder and sphere. Source: products: Carslaw and Jaeger, Conduction of Heat in
/// Solids, 2nd ed., § 1.15. Joint: R. E. Smith, G. L. Nelson, R. L. Henrickson, Analyses on
/// transient heat transfer from anomalous shapes, Trans. ASAE 10 (1967), 236–245 (geometry index,
/// from memory).
[[nodiscard]] Result<double> shapeFactor(const BodyShape& shape, double biot);

/// Shapes of a mass (kg, 0.01…50) and density (kg/m³, 200…2000), in proportions of common practice:
/// a roast 1 : 1.1 : 1.7, rounded; a side of fish 1 : 4 : 12; a loaf 1 : 1.1 : 2.2. A failure
/// outside.
[[nodiscard]] Result<BodyShape> roastOf(double mass, double density);
[[nodiscard]] Result<BodyShape> fishSideOf(double mass, double density);
[[nodiscard]] Result<BodyShape> loafOf(double mass, double density);

/// A gratin, custard or lasagne of `litres` (0.05…20) in a dish of `area` m² (0.002…0.5): as deep
/// as that makes it. A failure outside, or if it gets deeper than the dish is wide.
[[nodiscard]] Result<BodyShape> gratinOf(double litres, double area);

} // namespace suppertide::science
