#include "core/plan/wait_estimate.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/plan/followed_foods.h"
#include "core/plan/food_piece.h"
#include "core/plan/step_estimate.h"
#include "core/science/chilling.h"
#include "core/science/surroundings.h"
#include "core/science/valid_range.h"

namespace suppertide {

namespace {

using science::Estimate;

double degrees(Celsius temperature)
{
    return temperature.tenths() / 10.0;
}

science::Place placeOf(KeepPlace place)
{
    switch (place) {
    case KeepPlace::Fridge:
        return science::Place::Fridge;
    case KeepPlace::Freezer:
        return science::Place::Freezer;
    case KeepPlace::Nowhere:
    case KeepPlace::Counter:
    case KeepPlace::Warm:
        break;
    }
    return science::Place::Counter;
}

const FollowedFood* foodOf(const Wait& wait, const ResolvedRecipe& recipe)
{
    std::vector<const RecipePart*> parts{&recipe.part};
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            parts.push_back(&method.part);
        }
    }
    for (const RecipePart* part : parts) {
        for (const FollowedFood& food : part->foods) {
            if (isFoodsWait(food, wait.from, wait.to)) {
                return &food;
            }
        }
    }
    return nullptr;
}

/// How many of the food's treatments are over as the wait begins.
std::size_t before(const FollowedFood& food, const Wait& wait)
{
    for (std::size_t i = 0; i < food.steps.size(); ++i) {
        if (food.steps[i].step == wait.from.step) {
            return wait.from.edge == StepEdge::End ? i + 1 : i;
        }
    }
    const auto ends = std::ranges::find_if(food.steps, [&wait](const FoodTreatment& treatment) {
        return treatment.step == wait.to.step;
    });
    return static_cast<std::size_t>(ends - food.steps.begin());
}

Result<Estimate> chillStirred(const FoodPiece& piece, double to, KeepPlace place,
                              const Kitchen& kitchen)
{
    const auto question = piece.toCore(to);
    if (!question) {
        return question.error();
    }
    const auto properties = science::foodProperties(question->food, 20.0);
    if (!properties) {
        return properties.error();
    }
    const double volume = piece.kilograms() / properties->density;
    science::ChillQuestion chill;
    chill.food = question->food;
    chill.litres = volume * 1000.0;
    chill.diameter = std::sqrt(4.0 * volume / (std::numbers::pi * piece.thickness()));
    chill.isStirred = true;
    chill.from = question->start;
    chill.to = to;
    chill.place = placeOf(place);
    chill.placeTemperature = temperatureAt(place, kitchen);
    return science::timeToChill(chill);
}

Result<Estimate> chill(const Wait& wait, const FollowedFood& food, const Rational& share,
                       const Kitchen& kitchen)
{
    FoodPiece piece(food, before(food, wait), std::nullopt, share, kitchen);
    if (auto known = piece.check(); !known) {
        return known.error();
    }
    const KeepPlace place = wait.keep.empty() ? KeepPlace::Nowhere : wait.keep.front().place;
    const double to = degrees(*wait.chillsTo);
    if (piece.isStirred()) {
        return chillStirred(piece, to, place, kitchen);
    }
    auto question = piece.toCore(to);
    if (!question) {
        return question.error();
    }
    question->surroundings = temperatureAt(place, kitchen);
    question->coefficient = science::surroundingsOf(placeOf(place)).coefficient;
    return science::timeToCore(*question);
}

Minutes whole(double minutes)
{
    return Minutes{static_cast<Minutes::rep>(std::ceil(minutes))};
}

} // namespace

std::optional<ComputedDuration> computedWait(const Wait& wait, const ResolvedRecipe& recipe,
                                             const Rational& share, const Kitchen& kitchen)
{
    if (!wait.chillsTo) {
        return std::nullopt;
    }
    ComputedDuration result;
    result.written = {wait.least, wait.least, wait.least};
    result.range = result.written;
    const FollowedFood* food = foodOf(wait, recipe);
    if (food == nullptr) {
        result.food = wait.text;
        result.failure = "No food of this recipe is followed into this wait. Name one at the step "
                         "before it.";
        return result;
    }
    result.food = food->name;
    const auto estimate = chill(wait, *food, share, kitchen);
    if (!estimate) {
        result.failure = estimate.error().forCook;
        return result;
    }
    result.because = estimate->because;
    if (wait.setsFor > Minutes{0}) {
        result.because.push_back(
            {"then it sets for", static_cast<double>(wait.setsFor.count()), "min"});
    }
    result.range = {whole(estimate->least) + wait.setsFor, whole(estimate->likely) + wait.setsFor,
                    whole(estimate->most) + wait.setsFor};
    result.differsMuch = differMuch(result.range.likely, wait.least);
    return result;
}

} // namespace suppertide
