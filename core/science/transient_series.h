// TransientSeries: the temperature in a slab, long cylinder or sphere that is put into surroundings
// of another, constant temperature: the exact series. For surroundings that change, see
// finite_volume.h.
#pragma once

#include <cstddef>
#include <vector>

#include "core/base/result.h"
#include "core/science/shape.h"

namespace suppertide::science {

/// Everything here is without unit. θ = (T − T∞)/(T₀ − T∞) falls from 1 to 0 with the Fourier
/// number Fo = α·t/L², L being half the thickness or the radius.
/// Range: Fo = 0, or Fo ≥ 4/terms² (0.001 for all 64); a failure between (the series then needs
/// more terms than are kept) and below zero.
/// Source: F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, "Exact solution" of the
/// plane wall and of radial systems with convection.
class TransientSeries
{
public:
    /// Biot from 1e-5, infinity included; a failure below. Requires 8 to 64 terms.
    static Result<TransientSeries> make(Shape shape, double biot, std::size_t terms = 64);

    [[nodiscard]] Result<double> centre(double fourier) const;
    [[nodiscard]] Result<double> surface(double fourier) const;
    /// Over the volume: what is left of the heat to be exchanged.
    [[nodiscard]] Result<double> mean(double fourier) const;
    /// At `r` from the middle (0) to the surface (1).
    [[nodiscard]] Result<double> at(double r, double fourier) const;
    /// When the middle has fallen to `theta`, 0 < theta ≤ 1; a failure outside. 1 gives 0.
    [[nodiscard]] Result<double> fourierAtCentre(double theta) const;

    /// As `centre`, for any Fo from 0: the middle has not noticed anything before Fo = 0.01.
    [[nodiscard]] double centreFromStart(double fourier) const;

private:
    struct Term
    {
        double zeta;
        double coefficient;
        double atSurface;
        double mean;
    };
    TransientSeries(Shape shape, std::vector<Term> terms) : shape_(shape), terms_(std::move(terms))
    {}
    template <typename Weight>
    [[nodiscard]] Result<double> sum(double fourier, const Weight& weight) const;
    [[nodiscard]] double centreUnchecked(double fourier) const;
    [[nodiscard]] double leastFourier() const;

    Shape shape_;
    std::vector<Term> terms_;
};

/// A body of one of the three shapes and what it lies in.
struct Conduction
{
    Shape shape = Shape::Slab;
    double halfThickness = 0.0; // m; the radius of a cylinder or sphere
    double conductivity = 0.0;  // W/(m·K)
    double diffusivity = 0.0;   // m²/s
    double coefficient = 0.0;   // h at the surface, W/(m²·K)

    [[nodiscard]] double biot() const { return coefficient * halfThickness / conductivity; }
};

/// Seconds until the middle has gone from `start` to `target` in `surroundings` (°C). 0 if it
/// starts there. Fails if a measure is not positive, or if the target does not lie between start
/// and surroundings: it would never be reached.
[[nodiscard]] Result<double> secondsToCentre(const Conduction& body, double start,
                                             double surroundings, double target);

/// Bodies whose heat flows along more than one coordinate: the intersection of slabs and a
/// cylinder, whose θ in the middle is the product of theirs. A short cylinder is cylinder × slab, a
/// brick slab × slab × slab. Exact. Source: Carslaw and Jaeger, Conduction of Heat in Solids, 2nd
/// ed., § 1.15 (products of solutions).
class ProductOfBodies
{
public:
    /// One body or more; the failures of a `Conduction` whose measures are not positive.
    static Result<ProductOfBodies> make(const std::vector<Conduction>& bodies);

    /// θ after `seconds` (0…1e9); a failure outside. To 1e-10.
    [[nodiscard]] Result<double> centre(double seconds) const;
    /// Seconds until θ is `theta`, 0 < theta ≤ 1; a failure outside.
    [[nodiscard]] Result<double> secondsToTheta(double theta) const;

private:
    struct Part
    {
        TransientSeries series;
        double fourierPerSecond;
    };
    explicit ProductOfBodies(std::vector<Part> parts) : parts_(std::move(parts)) {}
    [[nodiscard]] double centreUnchecked(double seconds) const;

    std::vector<Part> parts_;
};

} // namespace suppertide::science
