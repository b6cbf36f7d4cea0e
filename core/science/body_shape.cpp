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

/// ζ² of one coordinate in units of the shortest, whose Biot number is given.
Result<double> modeOf(Shape part, double lengthOfShortest, double biot)
{
    auto mode = oneTerm(part, biot * lengthOfShortest);
    if (!mode) {
        return mode.error();
    }
    const double zeta = mode->zeta / lengthOfShortest;
    return zeta * zeta;
}

/// β of 0…2 whose first ζ² at this Biot number is `wanted`, or the nearest end.
Result<double> factorOfMode(double wanted, double biot)
{
    const auto excess = [wanted, biot](double beta) {
        const double zeta = firstEigenvalue(beta, biot).value();
        return zeta * zeta - wanted;
    };
    if (auto valid = firstEigenvalue(0.0, biot); !valid) {
        return valid.error();
    }
    if (excess(0.0) >= 0.0) {
        return 0.0;
    }
    if (excess(2.0) <= 0.0) {
        return 2.0;
    }
    constexpr double precise = 1e-6;
    return bracketedRoot(excess, 0.0, 2.0, precise);
}

Result<double> factorOfProduct(const BodyShape& shape, double biot)
{
    auto lengths = lengthsOf(shape);
    const double shortest = *std::min_element(lengths.begin(), lengths.end());
    const bool isRoll = std::holds_alternative<Roll>(shape);
    double total = 0.0;
    for (std::size_t i = isRoll ? 1 : 0; i < lengths.size(); ++i) {
        const Shape part = isRoll && i == 1 ? Shape::Cylinder : Shape::Slab;
        auto mode = modeOf(part, lengths[i] / shortest, biot);
        if (!mode) {
            return mode.error();
        }
        total += *mode;
    }
    return factorOfMode(total, biot);
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

Result<double> shapeFactor(const BodyShape& shape, double biot)
{
    if (auto fault = faultOf(shape)) {
        return *fault;
    }
    if (const auto* joint = std::get_if<Joint>(&shape)) {
        return factorOfJoint(*joint);
    }
    return factorOfProduct(shape, biot);
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
