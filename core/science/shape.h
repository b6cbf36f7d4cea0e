// Shape: the three bodies for which conduction of heat is known exactly, and the exponent that puts
// other bodies between them.
#pragma once

namespace suppertide::science {

/// Heat flows along one coordinate only: through the thickness of a wide slab, or along the radius.
enum class Shape
{
    Slab,
    Cylinder, // long: its ends do not count
    Sphere,
};

/// β of ∂T/∂t = α (∂²T/∂r² + β/r · ∂T/∂r): 0, 1 or 2; the area through which heat flows grows as
/// r^β.
[[nodiscard]] constexpr double areaExponent(Shape shape)
{
    switch (shape) {
    case Shape::Slab:
        return 0.0;
    case Shape::Cylinder:
        return 1.0;
    case Shape::Sphere:
        break;
    }
    return 2.0;
}

} // namespace suppertide::science
