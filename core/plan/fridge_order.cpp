#include "core/plan/fridge_order.h"

#include <algorithm>

#include "core/plan/food_passages.h"
#include "core/safety/kitchen_hygiene.h"

namespace suppertide {

namespace {

bool isHot(safety::Place place)
{
    return place == safety::Place::Oven || place == safety::Place::Hob;
}

/// What a food has become by the end of a stay: as its recipe says, else cooked by heat.
FoodClass after(const FoodPassage& passage, FoodClass food)
{
    if (passage.stage == nullptr) {
        return food;
    }
    return passage.stage->does.becomes.value_or(isHot(passage.place) ? cooked(food) : food);
}

} // namespace

std::vector<RawBesideReady> rawBesideReady(const Formulation& formulation, const Schedule& schedule)
{
    std::vector<safety::FridgeStay> stays;
    std::vector<FoodIndex> foods; // of the stays
    const FoodRoutes routes(formulation, schedule, KitchenClimate{});
    for (const FoodIndex index : formulation.foods.indices()) {
        FoodClass food = formulation.foods[index].kind.food;
        for (const FoodPassage& passage : routes.passagesOf(formulation.foods[index])) {
            if (passage.place == safety::Place::Fridge) {
                stays.push_back(
                    {"fridge", passage.when, std::nullopt, food, !isRawAnimal(food), false});
                foods.push_back(index);
            }
            food = after(passage, food);
        }
    }
    std::vector<RawBesideReady> result;
    for (const safety::HygieneFinding& finding : safety::judgeFridgeOrder(stays)) {
        const bool isEarlierRaw = isRawAnimal(stays[finding.earlier].food);
        const FoodIndex raw = foods[isEarlierRaw ? finding.earlier : finding.later];
        const FoodIndex ready = foods[isEarlierRaw ? finding.later : finding.earlier];
        const bool isKnown = std::ranges::any_of(result, [&](const RawBesideReady& known) {
            return known.raw == raw && known.ready == ready;
        });
        if (!isKnown) {
            result.push_back(
                {raw, ready, stays[finding.earlier].when.common(stays[finding.later].when)});
        }
    }
    std::ranges::stable_sort(result, {},
                             [](const RawBesideReady& pair) { return pair.when.start; });
    return result;
}

} // namespace suppertide
