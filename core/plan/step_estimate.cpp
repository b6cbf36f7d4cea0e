#include "core/plan/step_estimate.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/science/boiling.h"
#include "core/science/chilling.h"
#include "core/science/core_temperature.h"
#include "core/science/freezing.h"
#include "core/science/reduction.h"
#include "core/science/roast_scaling.h"
#include "core/science/surroundings.h"
#include "core/science/valid_range.h"
#include "core/science/water.h"

namespace suppertide {

namespace {

using science::cannotCompute;
using science::Estimate;

constexpr double fridge = 4.0; // °C, where nobody has measured it
constexpr double freezer = -18.0;
constexpr double warm = 65.0; // kept warm by the rules, which want 60 or 63
/// A computed length that is so much longer or shorter than the written one is worth a word.
constexpr double muchLonger = 1.25;

double degrees(Celsius temperature)
{
    return temperature.tenths() / 10.0;
}

double metres(Length length)
{
    return static_cast<double>(length.smallest()) / 1000.0;
}

template <typename T>
const T* useOf(const Step& step)
{
    for (const Use& use : step.uses) {
        if (const T* found = std::get_if<T>(&use)) {
            return found;
        }
    }
    return nullptr;
}

double temperatureAt(KeepPlace place, const Kitchen& kitchen)
{
    const auto cold = [&](ColdKind kind, double usual) {
        const auto found = std::ranges::find(kitchen.coldPlaces, kind, &ColdPlace::kind);
        return found != kitchen.coldPlaces.end() && found->temperature
                   ? degrees(*found->temperature)
                   : usual;
    };
    switch (place) {
    case KeepPlace::Fridge:
        return cold(ColdKind::Fridge, fridge);
    case KeepPlace::Freezer:
        return cold(ColdKind::Freezer, freezer);
    case KeepPlace::Warm:
        return warm;
    case KeepPlace::Nowhere:
    case KeepPlace::Counter:
        return degrees(kitchen.roomTemperature);
    }
    return degrees(kitchen.roomTemperature);
}

class Estimator
{
public:
    Estimator(const Step& step, const FoodAtStep& food, const Rational& share,
              const Kitchen& kitchen)
        : step_(step), food_(*food.food), does_(food.does()), before_(food.treatment),
          keptIn_(food.keptIn), share_(share.toDouble()), kitchen_(kitchen)
    {}

    Result<Estimate> estimate()
    {
        if (food_.mass.isZero()) {
            return cannotCompute(fmt::format(
                "It is not known how much “{}” weighs. Give its mass in grams.", food_.name));
        }
        const auto boils = science::boilingPointAtAltitude(kitchen_.altitudeMetres);
        if (!boils) {
            return boils.error();
        }
        boils_ = *boils;
        Result<Estimate> result = compute();
        return result ? learned(std::move(*result)) : std::move(result);
    }

private:
    Result<Estimate> compute()
    {
        switch (does_.treatment) {
        case Treatment::Heat:
            return heat();
        case Treatment::Boil:
            return boil();
        case Treatment::Reduce:
            return reduce();
        case Treatment::IceBath:
            return chill();
        case Treatment::Thaw:
            return thaw();
        case Treatment::Stand:
        case Treatment::Simmer:
            break;
        }
        return cannotCompute("Standing and simmering take as long as the recipe says.");
    }

    [[nodiscard]] double kilograms() const
    {
        const double mass = static_cast<double>(food_.mass.smallest()) / 1e6;
        return food_.scaling == Scaling::PerPortion ? mass * share_ : mass;
    }

    /// A larger piece grows in all directions alike.
    [[nodiscard]] double thickness() const
    {
        const double one = metres(food_.thickness);
        const bool grows = food_.isOnePiece && food_.scaling == Scaling::PerPortion;
        return grows && food_.shape != FoodShape::Stirred ? one * std::cbrt(share_) : one;
    }

    /// Of the food when the step begins: what was done to it last, else where it is kept.
    [[nodiscard]] double start() const
    {
        if (keptIn_) {
            return temperatureAt(*keptIn_, kitchen_);
        }
        double temperature = temperatureAt(food_.from, kitchen_);
        for (std::size_t i = 0; i < before_; ++i) {
            const FoodTreatment& earlier = food_.steps[i];
            if (earlier.to) {
                temperature = degrees(*earlier.to);
            } else if (earlier.treatment == Treatment::Boil ||
                       earlier.treatment == Treatment::Simmer ||
                       earlier.treatment == Treatment::Reduce) {
                temperature = boils_;
            }
        }
        return temperature;
    }

    [[nodiscard]] science::BodyShape shapeFor(double density) const
    {
        const double volume = kilograms() / density;
        const double size = thickness();
        switch (food_.shape) {
        case FoodShape::Stirred:
        case FoodShape::Flat: {
            const double side = std::max(size, std::sqrt(volume / size));
            return science::Block{size, side, side};
        }
        case FoodShape::Long: {
            const double section = std::numbers::pi * size * size / 4.0;
            return science::Roll{size, std::max(size, volume / section)};
        }
        case FoodShape::Round: {
            const double rest = 6.0 * volume / (std::numbers::pi * size * size);
            return science::Joint{size, size, food_.isOnePiece ? std::max(size, rest) : size};
        }
        }
        return science::Block{size, size, size};
    }

    Result<Estimate> heat()
    {
        if (!does_.to) {
            return cannotCompute("Say how warm its middle is to be: else no time can be computed.");
        }
        if (food_.shape == FoodShape::Stirred && useOf<BurnerUse>(step_) != nullptr) {
            return warmOnBurner(degrees(*does_.to));
        }
        const auto material = science::findDinnerFood(food_.material);
        if (!material) {
            return material.error();
        }
        const auto properties = science::foodProperties(material->composition, 20.0);
        if (!properties) {
            return properties.error();
        }
        science::CoreQuestion question;
        question.food = material->composition;
        question.freezesAt = material->freezesAt;
        question.shape = shapeFor(properties->density);
        question.start = start();
        question.target = degrees(*does_.to);
        if (Result<void> placed = placeIn(question); !placed) {
            return placed.error();
        }
        Result<Estimate> result = science::timeToCore(question);
        const bool isStuffedBird = food_.kind.food == FoodClass::StuffedMeat &&
                                   food_.shape == FoodShape::Round &&
                                   useOf<OvenUse>(step_) != nullptr;
        return result && isStuffedBird ? science::stuffed(*std::move(result)) : std::move(result);
    }

    Result<void> placeIn(science::CoreQuestion& question)
    {
        const OvenUse* use = useOf<OvenUse>(step_);
        if (use == nullptr) {
            question.surroundings = boils_;
            question.coefficient =
                science::surroundingsOf(science::Place::BoilingWater).coefficient;
            on_ = burner() == nullptr ? KitchenItemId{} : burner()->id;
            return {};
        }
        const auto oven = std::ranges::find_if(kitchen_.ovens, [&](const KitchenOven& each) {
            return each.low <= use->high && each.high >= use->low &&
                   (use->mode != OvenMode::Fan || each.hasFan);
        });
        if (oven == kitchen_.ovens.end()) {
            return cannotCompute("No oven of this kitchen reaches what the step asks for.");
        }
        on_ = oven->id;
        const bool hasFan = oven->hasFan && use->mode != OvenMode::Conventional;
        const Celsius middle = Celsius::tenths((use->low.tenths() + use->high.tenths()) / 2);
        question.surroundings = degrees(use->prefer.value_or(middle));
        question.coefficient =
            science::surroundingsOf(hasFan ? science::Place::FanOven : science::Place::StillOven)
                .coefficient;
        question.wetness = does_.isLid ? science::coveredSurface : science::bareSurface;
        return {};
    }

    /// The smallest that takes the step's pan, as a cook would choose.
    [[nodiscard]] const Burner* burner() const
    {
        const BurnerUse* use = useOf<BurnerUse>(step_);
        const Burner* best = nullptr;
        for (const Burner& each : kitchen_.burners) {
            const bool fits = use == nullptr || each.size >= use->pan;
            if (fits && !each.power.isZero() && (best == nullptr || each.size < best->size)) {
                best = &each;
            }
        }
        return best;
    }

    static science::Hob hobOf(BurnerKind kind)
    {
        switch (kind) {
        case BurnerKind::Gas:
            return science::Hob::Gas;
        case BurnerKind::Electric:
            return science::Hob::Electric;
        case BurnerKind::Induction:
            return science::Hob::Induction;
        }
        return science::Hob::Electric;
    }

    Result<Estimate> boil()
    {
        const Burner* on = burner();
        if (on == nullptr) {
            return cannotCompute("No burner takes the pan, or its power is not known.");
        }
        on_ = on->id;
        science::BoilQuestion question;
        question.litres = kilograms();
        question.start = start();
        question.burner = static_cast<double>(on->power.smallest());
        question.efficiency = science::efficiencyOf(hobOf(on->kind));
        question.hasLid = does_.isLid;
        question.altitude = kitchen_.altitudeMetres;
        return science::timeToBoil(question);
    }

    /// The part of the way to the boil.
    Result<Estimate> warmOnBurner(double target)
    {
        const double from = start();
        if (target > boils_ || target <= from) {
            return cannotCompute(fmt::format("On the burner “{}” gets no warmer than {:.0f} °C, "
                                             "and begins at {:.0f} °C. Change what it is to "
                                             "reach.",
                                             food_.name, boils_, from));
        }
        Result<Estimate> whole = boil();
        if (whole) {
            const double part = (target - from) / (boils_ - from);
            whole->least *= part;
            whole->likely *= part;
            whole->most *= part;
            whole->because.push_back({"it is to be at", target, "°C"});
        }
        return whole;
    }

    Result<Estimate> reduce()
    {
        const Burner* on = burner();
        const BurnerUse* use = useOf<BurnerUse>(step_);
        if (on == nullptr || use == nullptr) {
            return cannotCompute("No burner takes the pan, or its power is not known.");
        }
        on_ = on->id;
        science::ReductionQuestion question;
        question.litres = kilograms();
        question.litresLeft = question.litres * does_.leaves / 100.0;
        question.burner = static_cast<double>(on->power.smallest());
        question.efficiency = science::efficiencyOf(hobOf(on->kind));
        question.panDiameter = metres(use->pan);
        question.altitude = kitchen_.altitudeMetres;
        return science::timeToReduce(question);
    }

    Result<Estimate> chill()
    {
        if (!does_.to) {
            return cannotCompute("Say how cold its middle is to be: else no time can be computed.");
        }
        const auto material = science::findDinnerFood(food_.material);
        if (!material) {
            return material.error();
        }
        const auto properties = science::foodProperties(material->composition, 20.0);
        if (!properties) {
            return properties.error();
        }
        const double volume = kilograms() / properties->density;
        science::ChillQuestion question;
        question.food = material->composition;
        question.litres = volume * 1000.0;
        question.diameter = std::sqrt(4.0 * volume / (std::numbers::pi * thickness()));
        question.isStirred = food_.shape == FoodShape::Stirred;
        question.from = start();
        question.to = degrees(*does_.to);
        question.place = science::Place::IceBath;
        question.placeTemperature =
            science::surroundingsOf(science::Place::IceBath).temperature.value_or(0.5);
        return science::timeToChill(question);
    }

    Result<Estimate> thaw()
    {
        const auto material = science::findDinnerFood(food_.material);
        if (!material) {
            return material.error();
        }
        const auto properties = science::foodProperties(material->composition, 20.0);
        if (!properties) {
            return properties.error();
        }
        return science::thawingTime(
            material->composition, material->freezesAt, shapeFor(properties->density),
            temperatureAt(KeepPlace::Freezer, kitchen_), science::Place::ColdWater);
    }

    /// Moved by the times that this oven or burner has taken.
    [[nodiscard]] Estimate learned(Estimate estimate) const
    {
        const auto calibration = learnedOn(kitchen_, on_);
        if (!calibration) {
            return estimate;
        }
        const double unmoved = estimate.likely;
        estimate = science::calibrated(estimate, *calibration);
        estimate.because.push_back({"computed before learning", unmoved, "min"});
        estimate.because.push_back(
            {"evenings learned from", static_cast<double>(calibration->pairs), ""});
        estimate.because.push_back(
            {"learned: so many times as long", calibration->factor.likely, ""});
        return estimate;
    }

    const Step& step_;
    const FollowedFood& food_;
    const FoodTreatment& does_;
    std::size_t before_;
    std::optional<KeepPlace> keptIn_;
    double share_;
    const Kitchen& kitchen_;
    double boils_ = 100.0;
    KitchenItemId on_; // oven or burner
};

Minutes minutesOf(double value)
{
    return Minutes{static_cast<Minutes::rep>(value)};
}

std::optional<FoodAtStep> timedIn(const RecipePart& part, const StepId& step)
{
    for (const FollowedFood& food : part.foods) {
        for (std::size_t i = 0; i < food.steps.size(); ++i) {
            if (food.steps[i].step == step && food.steps[i].setsDuration) {
                return FoodAtStep{&food, i};
            }
        }
    }
    return std::nullopt;
}

/// The cold place in which the food waits for the step, if it does in one.
std::optional<KeepPlace> coldBefore(const RecipePart& part, const StepId& step)
{
    for (const Wait& wait : part.waits) {
        const bool endsHere = wait.to.step == step && wait.to.edge == StepEdge::Start;
        const KeepPlace place = wait.keep.empty() ? KeepPlace::Nowhere : wait.keep.front().place;
        if (endsHere && (place == KeepPlace::Fridge || place == KeepPlace::Freezer)) {
            return place;
        }
    }
    return std::nullopt;
}

} // namespace

std::optional<FoodAtStep> timedBy(const ResolvedRecipe& recipe, const StepId& step)
{
    std::vector<const RecipePart*> parts{&recipe.part};
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            parts.push_back(&method.part);
        }
    }
    std::optional<FoodAtStep> found;
    std::optional<KeepPlace> cold;
    for (const RecipePart* part : parts) {
        found = found ? found : timedIn(*part, step);
        cold = cold ? cold : coldBefore(*part, step);
    }
    if (found) {
        found->keptIn = cold;
    }
    return found;
}

Result<science::Estimate> estimateStep(const Step& step, const FoodAtStep& food,
                                       const Rational& share, const Kitchen& kitchen)
{
    return Estimator(step, food, share, kitchen).estimate();
}

std::optional<science::Calibration> learnedOn(const Kitchen& kitchen, const KitchenItemId& item)
{
    std::vector<science::MeasuredTime> pairs;
    for (const TimeTaken& time : kitchen.timesTaken) {
        if (!item.empty() && time.on == item) {
            pairs.push_back({static_cast<double>(time.computed.count()),
                             static_cast<double>(time.taken.count())});
        }
    }
    if (pairs.empty()) {
        return std::nullopt;
    }
    const auto calibration = science::calibrate(pairs);
    return calibration ? std::optional(*calibration) : std::nullopt;
}

std::optional<ComputedDuration> computedDuration(const Step& step, const ResolvedRecipe& recipe,
                                                 const DurationRange& written,
                                                 const Rational& share, const Kitchen& kitchen)
{
    const auto food = timedBy(recipe, step.id);
    if (!food) {
        return std::nullopt;
    }
    ComputedDuration result;
    result.food = food->food->name;
    result.written = written;
    result.range = written;
    const auto estimate = estimateStep(step, *food, share, kitchen);
    if (!estimate) {
        result.failure = estimate.error().forCook;
        return result;
    }
    result.because = estimate->because;
    result.range.likely = std::max(Minutes{1}, minutesOf(std::round(estimate->likely)));
    result.range.least =
        std::clamp(minutesOf(std::floor(estimate->least)), Minutes{1}, result.range.likely);
    result.range.most = std::max(result.range.likely, minutesOf(std::ceil(estimate->most)));
    const double ratio =
        estimate->likely / std::max(1.0, static_cast<double>(written.likely.count()));
    result.differsMuch = ratio > muchLonger || ratio < 1.0 / muchLonger;
    return result;
}

} // namespace suppertide
