#include "core/plan/food_body.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/science/dinner_foods.h"

namespace suppertide {

namespace {

using science::HeatedBody;
using science::HeatMaterial;

/// Stirred food has one temperature: heat goes through it this well, W/(m·K).
constexpr double stirredConductivity = 1000;
/// Of a food that does not freeze the properties at this temperature stand for all, °C.
constexpr double middleOfAll = 45;
constexpr int coldestTabulated = -40;
constexpr int hottestTabulated = 150;
constexpr double roomTemperature = 20;
constexpr double secondsPerMinute = 60;
constexpr double gramsPerKilogram = 1000;
/// Where a cook measures, what is computed to take up to so many times as long as the step, or as
/// little, takes as long as the step.
constexpr double mostLater = 1.5;
constexpr double reachedWithin = 1e-6;

double metres(Length length)
{
    return static_cast<double>(length.smallest()) /
           static_cast<double>(centimetres(100).smallest());
}

double kilograms(Grams mass)
{
    return static_cast<double>(mass.smallest()) / static_cast<double>(grams(1).smallest()) /
           gramsPerKilogram;
}

bool mayFreeze(const TrackedFood& food)
{
    return food.from == KeepPlace::Freezer ||
           std::ranges::find(food.keeps, KeepPlace::Freezer, &FoodKeep::place) != food.keeps.end();
}

/// The heat content of the food, with one temperature all through.
Result<HeatMaterial> stirred(const HeatMaterial& still)
{
    std::vector<double> enthalpy;
    for (int at = coldestTabulated; at <= hottestTabulated; ++at) {
        enthalpy.push_back(still.enthalpy(at));
    }
    std::vector<double> conductivity(enthalpy.size(), stirredConductivity);
    return HeatMaterial::tabulated(coldestTabulated, 1, std::move(enthalpy),
                                   std::move(conductivity));
}

Result<HeatMaterial> materialOf(const TrackedFood& food, const science::DinnerFood& of)
{
    const bool isStirred = food.shape == FoodShape::Stirred;
    if (mayFreeze(food)) {
        auto material = science::heatMaterial(of.composition, of.freezesAt);
        return material && isStirred ? stirred(*material) : material;
    }
    const auto properties = science::foodProperties(of.composition, middleOfAll, of.freezesAt);
    if (!properties) {
        return properties.error();
    }
    return HeatMaterial::constant(isStirred ? stirredConductivity : properties->conductivity,
                                  properties->density * properties->heatCapacity);
}

/// What stands in a round pot exchanges heat at its top, its bottom and its side: 2/depth +
/// 4/diameter for each m³. Of a body of half thickness L and shape β it is (β + 1)/L.
double potShape(const TrackedFood& food, const science::DinnerFood& of, double depth)
{
    const auto properties = science::foodProperties(of.composition, roomTemperature, of.freezesAt);
    if (!properties || food.mass.isZero()) {
        return 0;
    }
    const double volume = kilograms(food.mass) / properties->density;
    const double diameter = std::sqrt(4 * volume / (std::numbers::pi * depth));
    return std::clamp(2 * depth / diameter, 0.0, 2.0);
}

double shapeOf(const TrackedFood& food, const science::DinnerFood& of)
{
    switch (food.shape) {
    case FoodShape::Stirred:
        return food.isOnePiece ? potShape(food, of, metres(food.thickness)) : 0;
    case FoodShape::Flat:
        return 0;
    case FoodShape::Long:
        return 1;
    case FoodShape::Round:
        return 2;
    }
    return 0;
}

/// Takes samples closer where the temperatures bend.
class Sampler
{
public:
    explicit Sampler(double minutes)
        : step_(std::clamp(minutes / 500, 1.0 / 3, longestAtFirst)), minutes_(minutes)
    {}

    /// Minutes to the next sample. Only the last ones are spread over whatever is left: a stay of
    /// days begins as closely as one of an hour.
    [[nodiscard]] double step() const
    {
        const std::size_t left = most - std::min(samples_.size(), most - 1);
        const double even = (minutes_ - at()) / static_cast<double>(left);
        return left > spread ? step_ : std::max(step_, even);
    }
    [[nodiscard]] double at() const { return samples_.empty() ? 0 : samples_.back().minute; }

    void add(double minute, const HeatedBody& body)
    {
        const safety::TemperatureSample sample{minute, body.centre(), body.surface()};
        if (samples_.size() >= 2 && minute > at()) {
            const double bend = std::max(bent(sample, &safety::TemperatureSample::core),
                                         bent(sample, &safety::TemperatureSample::surface));
            step_ = bend < 0.5 * fine ? step_ * 2 : bend > 2 * fine ? step_ / 2 : step_;
        }
        samples_.push_back(sample);
    }

    [[nodiscard]] std::vector<safety::TemperatureSample> take() { return std::move(samples_); }

private:
    /// Beside a straight line through the last two, °C; between samples the true curve is off it by
    /// about an eighth of that.
    [[nodiscard]] double bent(const safety::TemperatureSample& next,
                              double safety::TemperatureSample::*value) const
    {
        const auto& a = samples_[samples_.size() - 2];
        const auto& b = samples_.back();
        if (b.minute <= a.minute) {
            return 0;
        }
        const double slope = (b.*value - a.*value) / (b.minute - a.minute);
        return std::abs(next.*value - (b.*value + slope * (next.minute - b.minute)));
    }

    static constexpr std::size_t most = 38;
    static constexpr std::size_t spread = 12;
    static constexpr double longestAtFirst = 2; // min
    static constexpr double fine = 0.8;

    std::vector<safety::TemperatureSample> samples_;
    double step_;
    double minutes_;
};

/// One body through the parts of a stay.
class Run
{
public:
    Run(const PassageHeat& heat, HeatedBody body)
        : heat_(heat), body_(std::move(body)), sampler_(heat.minutes)
    {}

    /// False if the solver refuses. `to`: it ends when the middle is there.
    bool go(std::optional<double> to)
    {
        sampler_.add(0, body_);
        double begun = 0; // of the part
        for (std::size_t i = 0; i < heat_.parts.size() && !reached_; ++i) {
            const HeatPart& part = heat_.parts[i];
            const bool isLast = i + 1 == heat_.parts.size();
            double end = isLast ? heat_.minutes : begun + part.minutes;
            if (isLast && to) {
                end = heat_.minutes * mostLater;
            }
            if (!through(part.place, end, to)) {
                return false;
            }
            begun = end;
        }
        return true;
    }

    [[nodiscard]] std::optional<double> reached() const { return reached_; }

    PassageCurve take()
    {
        std::vector<safety::TemperatureSample> samples = sampler_.take();
        if (reached_ && *reached_ > heat_.minutes / mostLater) {
            for (safety::TemperatureSample& sample : samples) {
                sample.minute *= heat_.minutes / *reached_;
            }
        }
        for (safety::TemperatureSample& sample : samples) {
            sample.minute = std::min(sample.minute, heat_.minutes);
        }
        return {std::move(samples), std::move(body_)};
    }

private:
    bool through(const science::Exchange& place, double end, std::optional<double> to)
    {
        double at = sampler_.at();
        while (at < end && !reached_) {
            const double step = std::min(sampler_.step(), end - at);
            if (to) {
                const auto took = body_.advanceToCentre(place, *to, step * secondsPerMinute);
                if (!took) {
                    return false;
                }
                if (*took) {
                    reached_ = at + **took / secondsPerMinute;
                    sampler_.add(*reached_, body_);
                    return true;
                }
            } else if (!body_.advance(place, step * secondsPerMinute)) {
                return false;
            }
            // The end as it is, not a hair beside it.
            at = at + step >= end - reachedWithin ? end : at + step;
            sampler_.add(at, body_);
        }
        return true;
    }

    const PassageHeat& heat_;
    HeatedBody body_;
    Sampler sampler_;
    std::optional<double> reached_;
};

bool isThereAlready(const PassageHeat& heat, const HeatedBody& body)
{
    const double wanted = *heat.to;
    const bool isHeated = heat.parts.back().place.temperature > wanted;
    return isHeated ? body.centre() >= wanted : body.centre() <= wanted;
}

PassageCurve straightTo(double to, double minutes, const BodyOf& body,
                        const std::optional<HeatedBody>& before)
{
    auto after = HeatedBody::make(body.beta, body.halfThickness, body.material, to);
    if (!after) {
        return {};
    }
    const double core = before ? before->centre() : to;
    const double surface = before ? before->surface() : to;
    PassageCurve curve{{}, std::move(*after)};
    if (before) {
        curve.samples = {{0, core, surface}, {minutes, to, to}};
    }
    return curve;
}

} // namespace

Result<BodyOf> bodyOf(const TrackedFood& food)
{
    const auto of = science::findDinnerFood(food.material);
    if (!of) {
        return of.error();
    }
    if (food.thickness.isZero()) {
        return Failure{FailureKind::BadInput,
                       "Say how thick “" + food.name +
                           "” is, so that its temperature can be computed.",
                       {}};
    }
    auto material = materialOf(food, *of);
    if (!material) {
        return material.error();
    }
    return BodyOf{shapeOf(food, *of), metres(food.thickness) / 2, std::move(*material)};
}

PassageCurve curveOf(const PassageHeat& heat, const BodyOf& body,
                     const std::optional<HeatedBody>& before)
{
    if (heat.parts.empty()) {
        return heat.to ? straightTo(*heat.to, heat.minutes, body, before) : PassageCurve{};
    }
    if (!before) {
        return {};
    }
    if (heat.to && !isThereAlready(heat, *before)) {
        Run measured(heat, *before);
        if (measured.go(heat.to) && measured.reached()) {
            return measured.take();
        }
    }
    Run computed(heat, *before);
    return computed.go(std::nullopt) ? computed.take() : PassageCurve{};
}

} // namespace suppertide
