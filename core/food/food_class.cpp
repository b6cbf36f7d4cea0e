#include "core/food/food_class.h"

#include <algorithm>
#include <utility>

namespace suppertide {

namespace {

template <typename T>
using Name = std::pair<T, std::string_view>;

constexpr std::array classNames{
    Name<FoodClass>{FoodClass::RawPoultry, "raw poultry"},
    Name<FoodClass>{FoodClass::RawMince, "raw mince"},
    Name<FoodClass>{FoodClass::RawMeat, "raw meat"},
    Name<FoodClass>{FoodClass::RawOffal, "raw offal"},
    Name<FoodClass>{FoodClass::StuffedMeat, "stuffed meat"},
    Name<FoodClass>{FoodClass::FattyFish, "fatty fish"},
    Name<FoodClass>{FoodClass::LeanFish, "lean fish"},
    Name<FoodClass>{FoodClass::ColdSmokedFish, "cold-smoked fish"},
    Name<FoodClass>{FoodClass::Shellfish, "shellfish"},
    Name<FoodClass>{FoodClass::CrabOrLobster, "crab or lobster"},
    Name<FoodClass>{FoodClass::Bacon, "bacon"},
    Name<FoodClass>{FoodClass::DryCuredHam, "dry-cured ham"},
    Name<FoodClass>{FoodClass::CookedHam, "cooked ham"},
    Name<FoodClass>{FoodClass::CookedMeat, "cooked meat"},
    Name<FoodClass>{FoodClass::CookedDish, "cooked dish"},
    Name<FoodClass>{FoodClass::SoupOrStew, "soup or stew"},
    Name<FoodClass>{FoodClass::GravyOrBroth, "gravy or broth"},
    Name<FoodClass>{FoodClass::MixedSalad, "mixed salad"},
    Name<FoodClass>{FoodClass::ShellEgg, "egg in shell"},
    Name<FoodClass>{FoodClass::RawEggParts, "raw white or yolk"},
    Name<FoodClass>{FoodClass::PasteurisedEgg, "pasteurised egg"},
    Name<FoodClass>{FoodClass::HardCookedEgg, "hard-cooked egg"},
    Name<FoodClass>{FoodClass::EggDish, "egg dish"},
    Name<FoodClass>{FoodClass::Custard, "custard"},
    Name<FoodClass>{FoodClass::RawEggDessert, "dessert with uncooked egg"},
    Name<FoodClass>{FoodClass::CookedRice, "cooked rice"},
    Name<FoodClass>{FoodClass::CookedVegetable, "cooked vegetable"},
    Name<FoodClass>{FoodClass::CutProduce, "cut melon or greens"},
    Name<FoodClass>{FoodClass::Dairy, "dairy"},
    Name<FoodClass>{FoodClass::GelatineCream, "set cream"},
    Name<FoodClass>{FoodClass::GarlicInOil, "garlic or herbs in oil"},
    Name<FoodClass>{FoodClass::Confit, "confit"},
    Name<FoodClass>{FoodClass::LowAcidPreserve, "low-acid preserve"},
    Name<FoodClass>{FoodClass::ReadyMeal, "ready meal"},
    Name<FoodClass>{FoodClass::DryGoods, "dry goods"},
};
static_assert(classNames.size() == allFoodClasses.size());

constexpr std::array factNames{
    Name<RiskFact>{RiskFact::RawEgg, "raw egg"},
    Name<RiskFact>{RiskFact::PasteurisedEgg, "pasteurised egg"},
    Name<RiskFact>{RiskFact::LionEgg, "code-marked lion egg"},
    Name<RiskFact>{RiskFact::RareMeat, "rare meat"},
    Name<RiskFact>{RiskFact::RawFish, "raw fish"},
    Name<RiskFact>{RiskFact::SoldForEatingRaw, "sold for eating raw"},
    Name<RiskFact>{RiskFact::RawShellfish, "raw shellfish"},
    Name<RiskFact>{RiskFact::ColdSmokedFish, "cold-smoked fish"},
    Name<RiskFact>{RiskFact::UnpasteurisedMilk, "unpasteurised milk"},
};
static_assert(factNames.size() == allRiskFacts.size());

constexpr std::array groupNames{
    Name<RiskGroup>{RiskGroup::Pregnant, "pregnant"},
    Name<RiskGroup>{RiskGroup::UnderFive, "under five"},
    Name<RiskGroup>{RiskGroup::Over65, "over 65"},
    Name<RiskGroup>{RiskGroup::ImmuneSuppressed, "weakened immune system"},
};
static_assert(groupNames.size() == allRiskGroups.size());

template <typename T, std::size_t n>
std::string_view nameIn(const std::array<Name<T>, n>& names, T value)
{
    const auto found = std::ranges::find(names, value, &Name<T>::first);
    return found == names.end() ? std::string_view{} : found->second;
}

template <typename T, std::size_t n>
std::optional<T> findIn(const std::array<Name<T>, n>& names, std::string_view name)
{
    const auto found = std::ranges::find(names, name, &Name<T>::second);
    return found == names.end() ? std::nullopt : std::optional{found->first};
}

} // namespace

std::string_view nameOf(FoodClass food)
{
    return nameIn(classNames, food);
}

std::optional<FoodClass> findFoodClass(std::string_view name)
{
    return findIn(classNames, name);
}

bool isTimeTemperatureControlled(FoodClass food)
{
    return food != FoodClass::DryGoods && food != FoodClass::DryCuredHam;
}

bool isRawAnimal(FoodClass food)
{
    return cooked(food) != food;
}

FoodClass cooked(FoodClass raw)
{
    using enum FoodClass;
    switch (raw) {
    case RawPoultry:
    case RawMince:
    case RawMeat:
    case RawOffal:
    case Bacon:
    case FattyFish:
    case LeanFish:
    case Shellfish:
    case CrabOrLobster:
        return CookedMeat;
    case StuffedMeat:
        return CookedDish;
    case ShellEgg:
    case RawEggParts:
        return EggDish;
    case ColdSmokedFish:
    case DryCuredHam:
    case CookedHam:
    case CookedMeat:
    case CookedDish:
    case SoupOrStew:
    case GravyOrBroth:
    case MixedSalad:
    case PasteurisedEgg:
    case HardCookedEgg:
    case EggDish:
    case Custard:
    case RawEggDessert:
    case CookedRice:
    case CookedVegetable:
    case CutProduce:
    case Dairy:
    case GelatineCream:
    case GarlicInOil:
    case Confit:
    case LowAcidPreserve:
    case ReadyMeal:
    case DryGoods:
        return raw;
    }
    return raw;
}

std::string_view nameOf(RiskFact fact)
{
    return nameIn(factNames, fact);
}

std::optional<RiskFact> findRiskFact(std::string_view name)
{
    return findIn(factNames, name);
}

std::string_view nameOf(RiskGroup group)
{
    return nameIn(groupNames, group);
}

std::optional<RiskGroup> findRiskGroup(std::string_view name)
{
    return findIn(groupNames, name);
}

bool FoodKind::has(RiskFact fact) const
{
    return std::ranges::find(facts, fact) != facts.end();
}

} // namespace suppertide
