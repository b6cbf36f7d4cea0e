// HeatedBody: the temperatures inside a food while it goes from one place to the next (oven,
// counter, fridge): conduction along one coordinate by finite volumes, step by step, so that a
// history costs what is added to it. For one constant place the exact series is in
// transient_series.h.
#pragma once

#include <array>
#include <memory>
#include <optional>

#include "core/base/result.h"
#include "core/science/heat_material.h"

namespace suppertide::science {

/// What a food lies in: temperature in °C and heat transfer coefficient at its surface in W/(m²·K).
struct Exchange
{
    double temperature = 20.0;
    double coefficient = 0.0; // 0: nothing is exchanged

    friend bool operator==(const Exchange&, const Exchange&) = default;
};

/// A body of thickness or radius `halfThickness` whose cross-section grows as r^β from the middle
/// out: a slab (0), long cylinder (1), sphere (2) or something between (body_shape.h).
///
/// Method: 40 shells, finer towards the surface; backward Euler with step doubling, extrapolated to
/// second order (L-stable: no ringing at a sudden change), whose difference also sets the step.
/// Heat is moved between shells as one number that leaves the one and enters the other, so that
/// energy is conserved to the last digits whatever the step. Within 0.1 °C of the exact series for
/// a step of 100 °C (Biot 0.01…100, Fourier 0.01…2). Source: S. V. Patankar, Numerical Heat
/// Transfer and Fluid Flow (1980), chapter 4; extrapolation: E. Hairer, G. Wanner, Solving Ordinary
/// Differential Equations II (1996), § IV.9.
class HeatedBody
{
public:
    /// β 0…2; half thickness 0.1 mm…1 m; start −60…200 °C; a failure outside.
    static Result<HeatedBody> make(double beta, double halfThickness, HeatMaterial material,
                                   double start);

    /// Lets `seconds` (0…1e7) pass in `place`, −60…600 °C and 0…1e5 W/(m²·K); a failure outside,
    /// and then nothing has changed.
    Result<void> advance(const Exchange& place, double seconds);

    /// Lets time pass in `place` until the middle is at `target` °C, at most `mostSeconds`. The
    /// seconds that passed; nothing if it was not reached by then. Ranges as of `advance`.
    Result<std::optional<double>> advanceToCentre(const Exchange& place, double target,
                                                  double mostSeconds);

    [[nodiscard]] double centre() const;
    /// In the place where it was last; the start if it has not been anywhere.
    [[nodiscard]] double surface() const;
    /// Over the volume, of temperature.
    [[nodiscard]] double mean() const;
    /// J per m³ of the body, above the material's zero.
    [[nodiscard]] double heatContent() const;
    /// J per m³ of the body that came through the surface since it was made.
    [[nodiscard]] double heatReceived() const { return state_.received * (beta_ + 1.0); }

private:
    static constexpr std::size_t cells = 40;
    using Field = std::array<double, cells>;
    struct State
    {
        Field enthalpy{};
        Field temperature{};
        double received = 0.0; // by a body of volume 1/(β + 1)
    };

    HeatedBody(double beta, double halfThickness, HeatMaterial material, double start);
    void conductances(const Field& temperature, Field& outward) const;
    [[nodiscard]] std::optional<State> implicitStep(const State& from, double seconds) const;
    void solveForChange(const Field& outward, const Field& temperature, const Field& residual,
                        double seconds, Field& change) const;
    double stepWithin(double mostSeconds);
    void enter(const Exchange& place);
    [[nodiscard]] double span() const;

    double beta_;
    double halfThickness_;
    std::shared_ptr<const HeatMaterial> material_; // shared by copies
    std::array<double, cells + 1> faceArea_{};
    std::array<double, cells + 1> face_{};
    Field volume_{};
    Field middle_{};
    Exchange place_;
    Field outward_{}; // conductances, if they do not depend on temperature
    bool wasSomewhere_ = false;
    double nextStep_ = 0.0;
    State state_;
};

} // namespace suppertide::science
