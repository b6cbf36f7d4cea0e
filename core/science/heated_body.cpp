#include "core/science/heated_body.h"

#include <algorithm>
#include <cmath>

#include "core/base/contracts.h"
#include "core/science/bracketed_root.h"
#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

/// Difference between one step and two halves that is accepted, as a share of the span of
/// temperatures.
constexpr double stepTolerance = 0.001;
/// The same while properties change with temperature, whose own error is larger by far.
constexpr double variableTolerance = 0.004;
/// °C below which differences of temperature no longer shorten a step.
constexpr double leastSpan = 1.0;
constexpr double longest = 1e7; // s

std::optional<Failure> faultOf(const Exchange& place, double seconds)
{
    return outsideRange(
        {{"The temperature of the surroundings", place.temperature, -60.0, 600.0, "°C"},
         {"The heat transfer coefficient", place.coefficient, 0.0, 1e5, "W/(m²·K)"},
         {"The time", seconds, 0.0, longest, "s"}});
}

} // namespace

HeatedBody::HeatedBody(double beta, double halfThickness, HeatMaterial material, double start)
    : beta_(beta), halfThickness_(halfThickness),
      material_(std::make_shared<const HeatMaterial>(std::move(material)))
{
    // Quadratically finer towards the surface, where a sudden change begins.
    for (std::size_t i = 0; i <= cells; ++i) {
        const double s = 1.0 - static_cast<double>(i) / static_cast<double>(cells);
        face_[i] = 1.0 - std::pow(s, 1.6);
        faceArea_[i] = beta == 0.0 ? 1.0 : std::pow(face_[i], beta);
    }
    for (std::size_t i = 0; i < cells; ++i) {
        middle_[i] = 0.5 * (face_[i] + face_[i + 1]);
        volume_[i] = (faceArea_[i + 1] * face_[i + 1] - faceArea_[i] * face_[i]) / (beta + 1.0);
    }
    state_.enthalpy.fill(material_->enthalpy(start));
    state_.temperature.fill(start);
    place_ = {start, 0.0};
}

Result<HeatedBody> HeatedBody::make(double beta, double halfThickness, HeatMaterial material,
                                    double start)
{
    if (auto fault = outsideRange(
            {{"The shape factor", beta, 0.0, 2.0, ""},
             {"The thickness from the middle to the surface", halfThickness, 1e-4, 1.0, "m"},
             {"The temperature of the food", start, -60.0, 200.0, "°C"}})) {
        return *fault;
    }
    return HeatedBody{beta, halfThickness, std::move(material), start};
}

/// W/(m³·K) from each shell outwards, of a body of volume 1/(β + 1): two halves of shells in a row,
/// or half a shell and the surface.
void HeatedBody::conductances(const Field& temperature, Field& outward) const
{
    const double area = halfThickness_ * halfThickness_;
    Field k{};
    if (material_->isConstant()) {
        k.fill(material_->conductivity(0.0));
    } else {
        std::transform(temperature.begin(), temperature.end(), k.begin(),
                       [this](double t) { return material_->conductivity(t); });
    }
    for (std::size_t i = 0; i + 1 < cells; ++i) {
        const double resistance =
            (face_[i + 1] - middle_[i]) / k[i] + (middle_[i + 1] - face_[i + 1]) / k[i + 1];
        outward[i] = faceArea_[i + 1] / (resistance * area);
    }
    const double inner = (1.0 - middle_.back()) * area / k.back();
    outward.back() =
        place_.coefficient > 0.0 ? 1.0 / (halfThickness_ / place_.coefficient + inner) : 0.0;
}

/// One Newton step of the tridiagonal system (Thomas's algorithm; diagonally dominant, so it
/// needs no pivots).
void HeatedBody::solveForChange(const Field& outward, const Field& temperature,
                                const Field& residual, double seconds, Field& change) const
{
    Field upper{};
    const bool isConstant = material_->isConstant();
    const double perSecond = 1.0 / seconds;
    double capacity = material_->heatCapacity(temperature[0]);
    double before = 0.0; // conductance inwards
    for (std::size_t i = 0; i < cells; ++i) {
        if (!isConstant) {
            capacity = material_->heatCapacity(temperature[i]);
        }
        double diagonal = volume_[i] * capacity * perSecond + before + outward[i];
        double right = -residual[i] * perSecond;
        if (i > 0) {
            diagonal -= before * upper[i - 1];
            right += before * change[i - 1];
        }
        const double pivot = 1.0 / diagonal;
        upper[i] = outward[i] * pivot;
        change[i] = right * pivot;
        before = outward[i];
    }
    for (std::size_t i = cells - 1; i-- > 0;) {
        change[i] += upper[i] * change[i + 1];
    }
}

/// Backward Euler; nothing if the heat of melting keeps Newton's method from settling.
std::optional<HeatedBody::State> HeatedBody::implicitStep(const State& from, double seconds) const
{
    Field outward = outward_;
    if (!material_->isConstant()) {
        conductances(from.temperature, outward);
    }
    Field t = from.temperature;
    Field net{};
    double inflow = 0.0;
    const auto flows = [&] {
        double entering = 0.0; // from the shell inside
        for (std::size_t i = 0; i < cells; ++i) {
            const double outside = i + 1 < cells ? t[i + 1] : place_.temperature;
            const double leaving = outward[i] * (t[i] - outside);
            net[i] = entering - leaving;
            entering = leaving;
        }
        inflow = -entering;
    };
    constexpr double settled = 1e-3; // °C; energy is kept by the flows whatever it is
    constexpr int mostTries = 12;
    for (int attempt = 0; attempt < mostTries; ++attempt) {
        flows();
        Field residual{};
        for (std::size_t i = 0; i < cells; ++i) {
            // At first the temperatures are those of the enthalpies.
            const double gained = attempt == 0 ? 0.0 : material_->enthalpy(t[i]) - from.enthalpy[i];
            residual[i] = volume_[i] * gained - seconds * net[i];
        }
        Field change{};
        solveForChange(outward, t, residual, seconds, change);
        double largest = 0.0;
        for (std::size_t i = 0; i < cells; ++i) {
            t[i] += change[i];
            largest = std::max(largest, std::abs(change[i]));
        }
        if (material_->isConstant() || largest < settled) {
            flows();
            State to;
            for (std::size_t i = 0; i < cells; ++i) {
                to.enthalpy[i] = from.enthalpy[i] + seconds * net[i] / volume_[i];
            }
            to.temperature = t;
            to.received = from.received + seconds * inflow;
            return to;
        }
    }
    return std::nullopt;
}

double HeatedBody::span() const
{
    double most = leastSpan;
    for (const double t : state_.temperature) {
        most = std::max(most, std::abs(place_.temperature - t));
    }
    return most;
}

/// Goes forward by the step that accuracy allows, at most `mostSeconds`, and returns it.
double HeatedBody::stepWithin(double mostSeconds)
{
    const double tolerance = (material_->isConstant() ? stepTolerance : variableTolerance) * span();
    double seconds = std::min(nextStep_, mostSeconds);
    constexpr double shortest = 1e-9; // s; far below any step that accuracy asks for
    while (true) {
        const auto whole = implicitStep(state_, seconds);
        const auto half = whole ? implicitStep(state_, 0.5 * seconds) : std::nullopt;
        const auto halves = half ? implicitStep(*half, 0.5 * seconds) : std::nullopt;
        double difference = 0.0;
        if (halves) {
            for (std::size_t i = 0; i < cells; ++i) {
                difference =
                    std::max(difference, std::abs(halves->temperature[i] - whole->temperature[i]));
            }
        }
        if (!halves || difference > tolerance) {
            const double shrink = halves ? 0.9 * std::sqrt(tolerance / difference) : 0.25;
            seconds *= std::clamp(shrink, 0.1, 0.9);
            ensures(seconds > shortest, "the conduction step settles");
            continue;
        }
        for (std::size_t i = 0; i < cells; ++i) {
            state_.enthalpy[i] = 2.0 * halves->enthalpy[i] - whole->enthalpy[i];
            state_.temperature[i] = material_->temperature(state_.enthalpy[i]);
        }
        state_.received = 2.0 * halves->received - whole->received;
        const double grow =
            difference > 0.0 ? std::clamp(0.9 * std::sqrt(tolerance / difference), 0.5, 3.0) : 3.0;
        // A step cut short by the end of the time says nothing about the next.
        nextStep_ = std::max(seconds < mostSeconds ? 0.0 : nextStep_, seconds * grow);
        return seconds;
    }
}

void HeatedBody::enter(const Exchange& place)
{
    if (wasSomewhere_ && place == place_) {
        return;
    }
    place_ = place;
    wasSomewhere_ = true;
    conductances(state_.temperature, outward_);
    // The time that the outermost shells take to notice.
    const double depth = 8.0 * (1.0 - face_[cells - 1]) * halfThickness_;
    const double t = state_.temperature.back();
    nextStep_ = depth * depth * material_->heatCapacity(t) / material_->conductivity(t);
}

Result<void> HeatedBody::advance(const Exchange& place, double seconds)
{
    if (auto fault = faultOf(place, seconds)) {
        return *fault;
    }
    enter(place);
    constexpr double nothing = 1e-9; // s
    while (seconds > nothing) {
        seconds -= stepWithin(seconds);
    }
    return {};
}

Result<std::optional<double>> HeatedBody::advanceToCentre(const Exchange& place, double target,
                                                          double mostSeconds)
{
    if (auto fault = faultOf(place, mostSeconds)) {
        return *fault;
    }
    enter(place);
    const bool rising = target > centre();
    const auto missing = [&] { return rising ? target - centre() : centre() - target; };
    double passed = 0.0;
    constexpr double nothing = 1e-9; // s
    while (missing() > 0.0) {
        if (mostSeconds - passed <= nothing) {
            return std::optional<double>{};
        }
        const State before = state_;
        const double stepBefore = nextStep_;
        const double step = stepWithin(mostSeconds - passed);
        if (missing() > 0.0) {
            passed += step;
            continue;
        }
        const auto missingAfter = [&](double part) {
            state_ = before;
            nextStep_ = stepBefore;
            for (double left = part; left > nothing;) {
                left -= stepWithin(left);
            }
            return missing();
        };
        const double within = bracketedRoot(missingAfter, 0.0, step, 1e-3);
        missingAfter(within);
        return std::optional<double>{passed + within};
    }
    return std::optional<double>{passed};
}

double HeatedBody::centre() const
{
    // T = a + b r² through the two innermost shells: even about the middle.
    const double r0 = middle_[0] * middle_[0];
    const double r1 = middle_[1] * middle_[1];
    const auto& t = state_.temperature;
    return t[0] - (t[1] - t[0]) * r0 / (r1 - r0);
}

double HeatedBody::surface() const
{
    const double outermost = state_.temperature.back();
    const double k = material_->conductivity(outermost);
    const double inner = (1.0 - middle_.back()) * halfThickness_ * place_.coefficient;
    return (k * outermost + inner * place_.temperature) / (k + inner);
}

double HeatedBody::mean() const
{
    double total = 0.0;
    for (std::size_t i = 0; i < cells; ++i) {
        total += volume_[i] * state_.temperature[i];
    }
    return total * (beta_ + 1.0);
}

double HeatedBody::heatContent() const
{
    double total = 0.0;
    for (std::size_t i = 0; i < cells; ++i) {
        total += volume_[i] * state_.enthalpy[i];
    }
    return total * (beta_ + 1.0);
}

} // namespace suppertide::science
