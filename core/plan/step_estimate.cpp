#include "core/plan/step_estimate.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/plan/food_piece.h"
#include "core/science/boiling.h"
#include "core/science/chilling.h"
#include "core/science/freezing.h"
#include "core/science/moist_heat.h"
#include "core/science/reduction.h"
#include "core/science/roast_scaling.h"
#include "core/science/surroundings.h"
#include "core/science/valid_range.h"
#include "core/science/water.h"

namespace suppertide {

namespace {

using science::cannotCompute;
using science::Estimate;

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

class Estimator
{
public:
    Estimator(const Step& step, const FoodAtStep& food, const Rational& share,
              const Kitchen& kitchen)
        : step_(step), does_(food.does()), kitchen_(kitchen),
          piece_(*food.food, food.treatment, food.keptIn, share, kitchen)
    {}

    Result<Estimate> estimate()
    {
        if (auto known = piece_.check(); !known) {
            return known.error();
        }
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
        case Treatment::Simmer:
            return simmer();
        case Treatment::Stand:
            break;
        }
        return cannotCompute("Standing takes as long as the recipe says.");
    }

    Result<Estimate> heat()
    {
        if (!does_.to) {
            return cannotCompute("Say how warm its middle is to be: else no time can be computed.");
        }
        if (piece_.isStirred() && useOf<BurnerUse>(step_) != nullptr) {
            return warmOnBurner(degrees(*does_.to));
        }
        auto question = piece_.toCore(degrees(*does_.to));
        if (!question) {
            return question.error();
        }
        if (Result<void> placed = placeIn(*question); !placed) {
            return placed.error();
        }
        if (does_.isInBath) {
            const auto bath = science::waterBathInOven(question->surroundings, piece_.boils());
            return bath ? science::timeToCoreInBath(*question, *bath) : bath.error();
        }
        Result<Estimate> result = science::timeToCore(*question);
        const FollowedFood& food = piece_.food();
        const bool isStuffedBird = food.kind.food == FoodClass::StuffedMeat &&
                                   food.shape == FoodShape::Round &&
                                   useOf<OvenUse>(step_) != nullptr;
        return result && isStuffedBird ? science::stuffed(*std::move(result)) : std::move(result);
    }

    /// In a pot kept at the boil, or just below: a braise.
    Result<Estimate> simmer()
    {
        if (!does_.to || piece_.isStirred()) {
            return cannotCompute("Standing and simmering take as long as the recipe says. For a "
                                 "piece of meat, say how warm its middle is to be.");
        }
        auto question = piece_.toCore(degrees(*does_.to));
        if (!question) {
            return question.error();
        }
        atTheBoil(*question);
        return science::timeToCore(*question);
    }

    void atTheBoil(science::CoreQuestion& question)
    {
        question.surroundings = piece_.boils();
        question.coefficient = science::surroundingsOf(science::Place::BoilingWater).coefficient;
        on_ = burner() == nullptr ? KitchenItemId{} : burner()->id;
    }

    Result<void> placeIn(science::CoreQuestion& question)
    {
        const OvenUse* use = useOf<OvenUse>(step_);
        if (use == nullptr) {
            atTheBoil(question);
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
        return does_.isLid && !does_.isInBath && !piece_.isStirred() ? closePot(question)
                                                                     : Result<void>{};
    }

    /// Braised: no hotter than its juice boils.
    Result<void> closePot(science::CoreQuestion& question) const
    {
        const auto place = science::inClosedPot(
            {question.surroundings, question.coefficient, question.start, piece_.boils()});
        if (!place) {
            return place.error();
        }
        question.surroundings = place->temperature;
        question.coefficient = place->coefficient;
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
        question.litres = piece_.kilograms();
        question.start = piece_.start();
        question.burner = static_cast<double>(on->power.smallest());
        question.efficiency = science::efficiencyOf(hobOf(on->kind));
        question.hasLid = does_.isLid;
        question.altitude = kitchen_.altitudeMetres;
        return science::timeToBoil(question);
    }

    /// The part of the way to the boil.
    Result<Estimate> warmOnBurner(double target)
    {
        const double from = piece_.start();
        if (target > piece_.boils() || target <= from) {
            return cannotCompute(fmt::format("On the burner “{}” gets no warmer than {:.0f} °C, "
                                             "and begins at {:.0f} °C. Change what it is to "
                                             "reach.",
                                             piece_.food().name, piece_.boils(), from));
        }
        Result<Estimate> whole = boil();
        if (whole) {
            const double part = (target - from) / (piece_.boils() - from);
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
        question.litres = piece_.kilograms();
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
        const auto material = piece_.material();
        if (!material) {
            return material.error();
        }
        const auto properties = science::foodProperties(material->composition, 20.0);
        if (!properties) {
            return properties.error();
        }
        const double volume = piece_.kilograms() / properties->density;
        science::ChillQuestion question;
        question.food = material->composition;
        question.litres = volume * 1000.0;
        question.diameter = std::sqrt(4.0 * volume / (std::numbers::pi * piece_.thickness()));
        question.isStirred = piece_.isStirred();
        question.from = piece_.start();
        question.to = degrees(*does_.to);
        question.place = science::Place::IceBath;
        question.placeTemperature =
            science::surroundingsOf(science::Place::IceBath).temperature.value_or(0.5);
        return science::timeToChill(question);
    }

    Result<Estimate> thaw()
    {
        const auto material = piece_.material();
        if (!material) {
            return material.error();
        }
        const auto properties = science::foodProperties(material->composition, 20.0);
        if (!properties) {
            return properties.error();
        }
        return science::thawingTime(
            material->composition, material->freezesAt, piece_.shapeFor(properties->density),
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
    const FoodTreatment& does_;
    const Kitchen& kitchen_;
    FoodPiece piece_;
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

bool differMuch(Minutes computed, Minutes written)
{
    const double ratio =
        static_cast<double>(computed.count()) / std::max(1.0, static_cast<double>(written.count()));
    return ratio > muchLonger || ratio < 1.0 / muchLonger;
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
    result.differsMuch = differMuch(minutesOf(std::round(estimate->likely)), written.likely);
    return result;
}

} // namespace suppertide
