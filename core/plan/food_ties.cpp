#include "core/plan/food_ties.h"

#include <algorithm>
#include <map>
#include <set>

namespace suppertide {

namespace {

/// Where a batch of a making uses something bought: the tasks that come after a trip.
std::map<TaskIndex, std::set<TaskIndex>> tripsBefore(const Evening& evening)
{
    std::map<TaskIndex, std::set<TaskIndex>> trips; // by the task that uses what they bring
    for (const Lag& lag : evening.draft.problem().lags) {
        if (evening.draft.sources()[lag.from.task].role == TaskRole::Trip &&
            lag.from.edge == Edge::End) {
            trips[lag.to.task].insert(lag.from.task);
        }
    }
    return trips;
}

} // namespace

bool isBoughtAs(FoodClass food)
{
    switch (food) {
    case FoodClass::ColdSmokedFish:
    case FoodClass::CookedHam:
    case FoodClass::PasteurisedEgg:
    case FoodClass::CutProduce:
    case FoodClass::Dairy:
        return true;
    case FoodClass::RawPoultry:
    case FoodClass::RawMince:
    case FoodClass::RawMeat:
    case FoodClass::RawOffal:
    case FoodClass::FattyFish:
    case FoodClass::LeanFish:
    case FoodClass::Shellfish:
    case FoodClass::Bacon:
    case FoodClass::ShellEgg:
    case FoodClass::StuffedMeat:
    case FoodClass::RawEggParts:
    case FoodClass::CrabOrLobster:
    case FoodClass::DryCuredHam:
    case FoodClass::CookedMeat:
    case FoodClass::CookedDish:
    case FoodClass::SoupOrStew:
    case FoodClass::GravyOrBroth:
    case FoodClass::MixedSalad:
    case FoodClass::HardCookedEgg:
    case FoodClass::EggDish:
    case FoodClass::Custard:
    case FoodClass::RawEggDessert:
    case FoodClass::CookedRice:
    case FoodClass::CookedVegetable:
    case FoodClass::GelatineCream:
    case FoodClass::GarlicInOil:
    case FoodClass::Confit:
    case FoodClass::LowAcidPreserve:
    case FoodClass::ReadyMeal:
    case FoodClass::DryGoods:
        return isRawAnimal(food) && food != FoodClass::StuffedMeat &&
               food != FoodClass::RawEggParts;
    }
    return false;
}

void tieParts(Evening& evening)
{
    IndexedVector<FoodIndex, TrackedFood>& foods = evening.draft.foods();
    for (const FoodIndex part : foods.indices()) {
        for (const TaskPoint& point : foods[part].until) {
            for (const FoodIndex whole : foods.indices()) {
                const bool isUsed =
                    !foods[part].isEaten && whole != part &&
                    std::ranges::find(foods[whole].stages, point.task, &FoodStage::first) !=
                        foods[whole].stages.end();
                if (isUsed) {
                    foods[whole].parts.push_back({part, point.task});
                }
            }
        }
    }
}

void tieTrips(Evening& evening)
{
    const auto trips = tripsBefore(evening);
    IndexedVector<FoodIndex, TrackedFood>& foods = evening.draft.foods();
    std::map<std::string, std::set<TaskIndex>> ofMaking; // by the first part of a task's id
    for (const auto& [task, before] : trips) {
        const std::string& id = evening.draft.problem().tasks[task].id;
        ofMaking[id.substr(0, id.find('/'))].insert(before.begin(), before.end());
    }
    for (const FoodIndex index : foods.indices()) {
        TrackedFood& food = foods[index];
        const auto found = ofMaking.find(food.key.substr(0, food.key.find('/')));
        if (found != ofMaking.end() && isBoughtAs(food.kind.food)) {
            food.bought.assign(found->second.begin(), found->second.end());
        }
    }
}

} // namespace suppertide
