#include "core/plan/followed_foods.h"

#include <algorithm>

namespace suppertide {

namespace {

bool isNamed(const FollowedFood& food, const StepPoint& point)
{
    return point.step &&
           std::ranges::find(food.steps, *point.step, &FoodTreatment::step) != food.steps.end();
}

safety::Place placeOf(KeepPlace place)
{
    switch (place) {
    case KeepPlace::Nowhere:
    case KeepPlace::Counter:
        return safety::Place::Counter;
    case KeepPlace::Fridge:
        return safety::Place::Fridge;
    case KeepPlace::Freezer:
        return safety::Place::Freezer;
    case KeepPlace::Warm:
        return safety::Place::WarmHold;
    }
    return safety::Place::Counter;
}

/// What the food is when the wait begins, and whether it comes from the heat: by the last step
/// before it that does something to it.
safety::Stay stayOf(const FollowedFood& food, const Wait& wait)
{
    safety::Stay stay;
    stay.food = food.kind.food;
    const bool beginsAtStep = isNamed(food, wait.from);
    for (const FoodTreatment& treatment : food.steps) {
        if (!beginsAtStep && treatment.step == wait.to.step) {
            break;
        }
        const bool isBefore = !(beginsAtStep && treatment.step == wait.from.step &&
                                wait.from.edge == StepEdge::Start);
        if (isBefore) {
            stay.isHot = makesHot(treatment.treatment) ||
                         (stay.isHot && treatment.treatment == Treatment::Stand);
            stay.food = treatment.becomes.value_or(makesHot(treatment.treatment) ? cooked(stay.food)
                                                                                 : stay.food);
        }
        if (beginsAtStep && treatment.step == wait.from.step) {
            break;
        }
    }
    return stay;
}

} // namespace

std::vector<OpenFood> foodsOf(const Making& making, const MakingVariant& variant)
{
    std::vector<OpenFood> foods;
    for (const FollowedFood& food : variant.recipe.part.foods) {
        foods.push_back({&food, std::nullopt});
    }
    for (const MethodChoice& choice : variant.recipe.methods) {
        const bool isOpen =
            std::ranges::find(making.choices, choice.id, &MethodChoice::id) != making.choices.end();
        for (const Method& method : choice.methods) {
            for (const FollowedFood& food : method.part.foods) {
                foods.push_back({&food, isOpen ? std::optional(MethodKey{choice.id, method.id})
                                               : std::nullopt});
            }
        }
    }
    return foods;
}

bool isFoodsWait(const FollowedFood& food, const StepPoint& from, const StepPoint& to)
{
    return isNamed(food, from) || isNamed(food, to);
}

std::optional<safety::WaitLimit> safetyLimit(const Evening& evening, const Making& making,
                                             const std::vector<std::size_t>& variants,
                                             const Wait& wait, KeepPlace place)
{
    std::optional<safety::WaitLimit> tightest;
    for (const std::size_t variant : variants) {
        for (const OpenFood& open : foodsOf(making, making.variants[variant])) {
            if (!isFoodsWait(*open.food, wait.from, wait.to)) {
                continue;
            }
            safety::Stay stay = stayOf(*open.food, wait);
            stay.place = placeOf(place);
            if (stay.place == safety::Place::Counter) {
                stay.surroundings = evening.kitchen().roomTemperature.tenths() / 10.0;
            }
            if (!wait.to.step && !making.isPreparation) {
                stay.standingBefore = making.course->atTable;
            }
            const auto limit = safety::longestStay(evening.occasion().preferences.rules, stay);
            if (limit && (!tightest || limit->most < tightest->most)) {
                tightest = limit;
            }
        }
    }
    return tightest;
}

} // namespace suppertide
