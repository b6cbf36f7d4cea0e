#include "core/science/transient_series.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/contracts.h"
#include "core/science/bracketed_root.h"
#include "core/science/eigenvalues.h"
#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

constexpr double mostFourier = 1e9;

std::optional<Failure> faultOf(const Conduction& body)
{
    return outsideRange(
        {{"The thickness from the middle to the surface", body.halfThickness, 1e-5, 10.0, "m"},
         {"The thermal conductivity", body.conductivity, 1e-3, 1e3, "W/(m·K)"},
         {"The thermal diffusivity", body.diffusivity, 1e-9, 1e-3, "m²/s"},
         {"The heat transfer coefficient", body.coefficient, 1e-2, 1e6, "W/(m²·K)"}});
}

} // namespace

Result<TransientSeries> TransientSeries::make(Shape shape, double biot, std::size_t terms)
{
    expects(terms >= 8 && terms <= 64, "8 to 64 terms");
    auto roots = eigenvalues(shape, biot, terms);
    if (!roots) {
        return roots.error();
    }
    std::vector<Term> kept;
    kept.reserve(roots->size());
    for (const double zeta : *roots) {
        kept.push_back({zeta, seriesCoefficient(shape, zeta), profile(shape, zeta),
                        meanOfProfile(shape, zeta)});
    }
    return TransientSeries{shape, std::move(kept)};
}

/// Where exp(−ζ²Fo) of the last term falls below 1e-17.
double TransientSeries::leastFourier() const
{
    const auto terms = static_cast<double>(terms_.size());
    return 4.0 / (terms * terms);
}

template <typename Weight>
Result<double> TransientSeries::sum(double fourier, const Weight& weight) const
{
    if (fourier == 0.0) {
        return 1.0;
    }
    if (auto fault = outsideRange({{"The time against the thickness (Fourier number)", fourier,
                                    leastFourier(), mostFourier, ""}})) {
        return *fault;
    }
    double total = 0.0;
    for (const Term& term : terms_) {
        const double decay = std::exp(-term.zeta * term.zeta * fourier);
        total += term.coefficient * decay * weight(term);
    }
    return std::clamp(total, 0.0, 1.0);
}

Result<double> TransientSeries::centre(double fourier) const
{
    return sum(fourier, [](const Term&) { return 1.0; });
}

Result<double> TransientSeries::surface(double fourier) const
{
    return sum(fourier, [](const Term& term) { return term.atSurface; });
}

Result<double> TransientSeries::mean(double fourier) const
{
    return sum(fourier, [](const Term& term) { return term.mean; });
}

Result<double> TransientSeries::at(double r, double fourier) const
{
    if (auto fault = outsideRange({{"The place between middle and surface", r, 0.0, 1.0, ""}})) {
        return *fault;
    }
    return sum(fourier, [this, r](const Term& term) { return profile(shape_, term.zeta * r); });
}

double TransientSeries::centreFromStart(double fourier) const
{
    constexpr double unnoticed = 0.01; // θ differs from 1 by 2 erfc(5), 3e-12
    return fourier < std::max(unnoticed, leastFourier()) ? 1.0 : centreUnchecked(fourier);
}

double TransientSeries::centreUnchecked(double fourier) const
{
    double total = 0.0;
    for (const Term& term : terms_) {
        total += term.coefficient * std::exp(-term.zeta * term.zeta * fourier);
    }
    return total;
}

Result<double> TransientSeries::fourierAtCentre(double theta) const
{
    if (!(theta > 0.0 && theta <= 1.0)) {
        return cannotCompute(
            "The middle never gets there: the temperature that is wanted does not lie "
            "between that of the food and that of its surroundings.");
    }
    // The middle keeps its temperature to the last digit until about here.
    if (theta >= centreUnchecked(leastFourier())) {
        return 0.0;
    }
    // One term alone lies above the series in the middle, so it gives a time that is late enough.
    const Term& first = terms_.front();
    const double late = leastFourier() + std::log(std::max(first.coefficient / theta, 1.0)) /
                                             (first.zeta * first.zeta);
    const auto f = [this, theta](double fourier) { return centreUnchecked(fourier) - theta; };
    double high = late;
    while (f(high) > 0.0) {
        high *= 2.0;
    }
    return bracketedRoot(f, leastFourier(), high);
}

Result<double> secondsToCentre(const Conduction& body, double start, double surroundings,
                               double target)
{
    if (auto fault = faultOf(body)) {
        return *fault;
    }
    if (target == start) {
        return 0.0;
    }
    const double theta = (target - surroundings) / (start - surroundings);
    if (!(theta > 0.0 && theta < 1.0)) {
        return cannotCompute(fmt::format("Food of {} °C in surroundings of {} °C never reaches {} "
                                         "°C in its middle. Choose a temperature "
                                         "between the two, or other surroundings.",
                                         plainNumber(start), plainNumber(surroundings),
                                         plainNumber(target)));
    }
    auto series = TransientSeries::make(body.shape, body.biot());
    if (!series) {
        return series.error();
    }
    auto fourier = series->fourierAtCentre(theta);
    if (!fourier) {
        return fourier.error();
    }
    return *fourier * body.halfThickness * body.halfThickness / body.diffusivity;
}

Result<ProductOfBodies> ProductOfBodies::make(const std::vector<Conduction>& bodies)
{
    expects(!bodies.empty(), "one body or more");
    constexpr std::size_t enough = 20; // for Fo ≥ 0.01
    std::vector<Part> parts;
    for (const Conduction& body : bodies) {
        if (auto fault = faultOf(body)) {
            return *fault;
        }
        auto series = TransientSeries::make(body.shape, body.biot(), enough);
        if (!series) {
            return series.error();
        }
        parts.push_back(
            {std::move(*series), body.diffusivity / (body.halfThickness * body.halfThickness)});
    }
    return ProductOfBodies{std::move(parts)};
}

double ProductOfBodies::centreUnchecked(double seconds) const
{
    double product = 1.0;
    for (const Part& part : parts_) {
        product *= part.series.centreFromStart(seconds * part.fourierPerSecond);
    }
    return product;
}

Result<double> ProductOfBodies::centre(double seconds) const
{
    if (auto fault = outsideRange({{"The time", seconds, 0.0, 1e9, "s"}})) {
        return *fault;
    }
    return centreUnchecked(seconds);
}

Result<double> ProductOfBodies::secondsToTheta(double theta) const
{
    if (!(theta > 0.0 && theta <= 1.0)) {
        return cannotCompute(
            "The middle never gets there: the temperature that is wanted does not lie "
            "between that of the food and that of its surroundings.");
    }
    // No slower than its quickest part alone.
    double high = 1e300;
    for (const Part& part : parts_) {
        auto fourier = part.series.fourierAtCentre(theta);
        if (!fourier) {
            return fourier.error();
        }
        high = std::min(high, *fourier / part.fourierPerSecond);
    }
    const auto excess = [this, theta](double seconds) { return centreUnchecked(seconds) - theta; };
    return excess(high) >= 0.0 ? high : bracketedRoot(excess, 0.0, high, 1e-6);
}

} // namespace suppertide::science
