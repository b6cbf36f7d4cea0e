#include "core/science/body_shape.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/science/bracketed_root.h"
#include "core/science/eigenvalues.h"
#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

std::optional<Failure> lengthFault(double a, double b, double c)
{
    constexpr double shortest = 0.001;
    constexpr double longest = 2.0;
    return outsideRange({{"The thickness", a, shortest, longest, "m"},
                         {"The width", b, shortest, longest, "m"},
                         {"The length", c, shortest, longest, "m"}});
}

std::array<double, 3> lengthsOf(const BodyShape& shape)
{
    struct
    {
        std::array<double, 3> operator()(const Block& b) const
        {
            return {b.thickness, b.width, b.length};
        }
        std::array<double, 3> operator()(const Roll& r) const
        {
            return {r.diameter, r.diameter, r.length};
        }
        std::array<double, 3> operator()(const Joint& j) const
        {
            return {j.thickness, j.width, j.length};
        }
    } const lengths;
    return std::visit(lengths, shape);
}

std::optional<Failure> faultOf(const BodyShape& shape)
{
    const auto lengths = lengthsOf(shape);
    return lengthFault(lengths[0], lengths[1], lengths[2]);
}

/// β of 0…2 whose middle is halfway at this Fourier number by one term, which is exact enough
/// there.
Result<double> factorOfHalfTime(double fourier, double biot)
{
    const auto excess = [fourier, biot](double beta) {
        const OneTerm one = oneTermBetween(beta, biot).value();
        return std::log(2.0 * one.coefficient) / (one.zeta * one.zeta) - fourier;
    };
    if (auto valid = oneTermBetween(0.0, biot); !valid) {
        return valid.error();
    }
    if (excess(0.0) <= 0.0) {
        return 0.0;
    }
    if (excess(2.0) >= 0.0) {
        return 2.0;
    }
    constexpr double precise = 1e-4;
    return bracketedRoot(excess, 0.0, 2.0, precise);
}

double factorOfJoint(const Joint& joint)
{
    std::array<double, 3> axes{joint.thickness, joint.width, joint.length};
    std::sort(axes.begin(), axes.end());
    const double b = axes[0] / axes[1];
    const double c = axes[0] / axes[2];
    return b * b + c * c;
}

std::optional<Failure> massFault(double mass, double density)
{
    return outsideRange(
        {{"The mass", mass, 0.01, 50.0, "kg"}, {"The density", density, 200.0, 2000.0, "kg/m³"}});
}

} // namespace

Result<double> halfThickness(const BodyShape& shape)
{
    if (auto fault = faultOf(shape)) {
        return *fault;
    }
    const auto lengths = lengthsOf(shape);
    return 0.5 * *std::min_element(lengths.begin(), lengths.end());
}

Result<double> volume(const BodyShape& shape)
{
    if (auto fault = faultOf(shape)) {
        return *fault;
    }
    const auto lengths = lengthsOf(shape);
    const double box = lengths[0] * lengths[1] * lengths[2];
    if (std::holds_alternative<Block>(shape)) {
        return box;
    }
    return box * std::numbers::pi / (std::holds_alternative<Roll>(shape) ? 4.0 : 6.0);
}

Result<std::vector<Conduction>> partsOf(const BodyShape& shape, double conductivity,
                                        double diffusivity, double coefficient)
{
    if (auto fault = faultOf(shape)) {
        return *fault;
    }
    const auto part = [&](Shape form, double length) {
        return Conduction{form, 0.5 * length, conductivity, diffusivity, coefficient};
    };
    if (const auto* block = std::get_if<Block>(&shape)) {
        return std::vector<Conduction>{part(Shape::Slab, block->thickness),
                                       part(Shape::Slab, block->width),
                                       part(Shape::Slab, block->length)};
    }
    if (const auto* roll = std::get_if<Roll>(&shape)) {
        return std::vector<Conduction>{part(Shape::Cylinder, roll->diameter),
                                       part(Shape::Slab, roll->length)};
    }
    return std::vector<Conduction>{};
}

Result<double> shapeFactor(const BodyShape& shape, double biot)
{
    if (const auto* joint = std::get_if<Joint>(&shape)) {
        const auto fault = faultOf(shape);
        return fault ? Result<double>{*fault} : factorOfJoint(*joint);
    }
    const auto half = halfThickness(shape);
    if (!half) {
        return half.error();
    }
    // Any conductivity and diffusivity will do: only lengths and Biot numbers count.
    constexpr double mostCoefficient = 1e6;
    const auto parts = partsOf(shape, 1.0, 1e-7, std::min(biot / *half, mostCoefficient));
    const auto product = ProductOfBodies::make(*parts);
    if (!product) {
        return product.error();
    }
    const double seconds = product->secondsToTheta(0.5).value();
    return factorOfHalfTime(seconds * 1e-7 / (*half * *half), biot);
}

Result<BodyShape> roastOf(double mass, double density)
{
    if (auto fault = massFault(mass, density)) {
        return *fault;
    }
    const double a = std::cbrt(6.0 / std::numbers::pi * mass / density / (1.1 * 1.7));
    return BodyShape{Joint{a, 1.1 * a, 1.7 * a}};
}

Result<BodyShape> fishSideOf(double mass, double density)
{
    if (auto fault = massFault(mass, density)) {
        return *fault;
    }
    const double a = std::cbrt(mass / density / (4.0 * 12.0));
    return BodyShape{Block{a, 4.0 * a, 12.0 * a}};
}

Result<BodyShape> loafOf(double mass, double density)
{
    if (auto fault = massFault(mass, density)) {
        return *fault;
    }
    const double a = std::cbrt(mass / density / (1.1 * 2.2));
    return BodyShape{Block{a, 1.1 * a, 2.2 * a}};
}

Result<BodyShape> gratinOf(double litres, double area)
{
    if (auto fault = outsideRange({{"What goes into the dish", litres, 0.05, 20.0, "litres"},
                                   {"The area of the dish", area, 0.002, 0.5, "m²"}})) {
        return *fault;
    }
    const double depth = litres / 1000.0 / area;
    const double width = std::sqrt(area);
    if (depth > width) {
        return cannotCompute(
            "So much does not fit into this dish: it would stand higher than the dish is wide. "
            "Take a wider dish or less in it.");
    }
    return BodyShape{Block{depth, width, width}};
}

} // namespace suppertide::science
