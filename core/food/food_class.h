// FoodClass: what a food is to the rules of safe time and temperature; and who at table is at
// higher risk. Coarser than an ingredient: a rule speaks of raw poultry, not of one bird.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace suppertide {

enum class FoodClass
{
    RawPoultry,
    RawMince, // and what is injected, tenderised, or a raw sausage
    RawMeat,  // whole muscle: steaks, chops, roasts
    RawOffal,
    StuffedMeat, // stuffing with or in meat, poultry, fish or pasta
    FattyFish,
    LeanFish,
    ColdSmokedFish,
    Shellfish,
    CrabOrLobster,
    Bacon,
    DryCuredHam,
    CookedHam, // precooked, to be heated again
    CookedMeat,
    CookedDish, // casserole, gratin, filled or sauced dish
    SoupOrStew,
    GravyOrBroth,
    MixedSalad, // of egg, chicken, tuna or pasta
    ShellEgg,
    RawEggParts, // whites, yolks, beaten egg
    PasteurisedEgg,
    HardCookedEgg,
    EggDish, // omelette, egg casserole, quiche
    Custard, // set custards, custard and chiffon pies, ice-cream base
    RawEggDessert,
    CookedRice,
    CookedVegetable,
    CutProduce, // cut melon, leafy greens, tomatoes
    Dairy,
    GelatineCream, // a set cream
    GarlicInOil,   // garlic or herbs under oil
    Confit,        // food under fat
    LowAcidPreserve,
    ReadyMeal, // factory-packed, ready to eat
    DryGoods,  // bread, dry goods and all else that keeps at room temperature
};

inline constexpr std::array allFoodClasses{
    FoodClass::RawPoultry,    FoodClass::RawMince,       FoodClass::RawMeat,
    FoodClass::RawOffal,      FoodClass::StuffedMeat,    FoodClass::FattyFish,
    FoodClass::LeanFish,      FoodClass::ColdSmokedFish, FoodClass::Shellfish,
    FoodClass::CrabOrLobster, FoodClass::Bacon,          FoodClass::DryCuredHam,
    FoodClass::CookedHam,     FoodClass::CookedMeat,     FoodClass::CookedDish,
    FoodClass::SoupOrStew,    FoodClass::GravyOrBroth,   FoodClass::MixedSalad,
    FoodClass::ShellEgg,      FoodClass::RawEggParts,    FoodClass::PasteurisedEgg,
    FoodClass::HardCookedEgg, FoodClass::EggDish,        FoodClass::Custard,
    FoodClass::RawEggDessert, FoodClass::CookedRice,     FoodClass::CookedVegetable,
    FoodClass::CutProduce,    FoodClass::Dairy,          FoodClass::GelatineCream,
    FoodClass::GarlicInOil,   FoodClass::Confit,         FoodClass::LowAcidPreserve,
    FoodClass::ReadyMeal,     FoodClass::DryGoods};

/// "raw poultry", as in the tables, on screen and in files; and back.
[[nodiscard]] std::string_view nameOf(FoodClass food);
[[nodiscard]] std::optional<FoodClass> findFoodClass(std::string_view name);

/// Whether time and temperature must be controlled to limit growth. All but dry goods and dry-cured
/// ham. Cut melon, leafy greens and tomatoes are: FDA, Food Code 2022, 1-201.10.
[[nodiscard]] bool isTimeTemperatureControlled(FoodClass food);

/// Raw meat, poultry, fish, shellfish and egg: what must be cooked, and must not drip on or share a
/// board with what is eaten as it is.
[[nodiscard]] bool isRawAnimal(FoodClass food);

/// What a raw food is called once it has been cooked; other foods stay what they are.
[[nodiscard]] FoodClass cooked(FoodClass raw);

/// What makes a dish one that somebody should not eat, whatever its temperatures.
enum class RiskFact
{
    RawEgg,            // egg that is not heated through
    PasteurisedEgg,    // …but pasteurised
    LionEgg,           // …but from code-marked eggs of a British vaccination scheme
    RareMeat,          // meant to be eaten below the usual core temperature
    RawFish,           // meant to be eaten raw or lightly cured
    SoldForEatingRaw,  // the seller has frozen it against parasites
    RawShellfish,      // meant to be eaten raw
    ColdSmokedFish,    // eaten without heating
    UnpasteurisedMilk, // a cheese of raw milk, or a soft one ripened with mould
};

inline constexpr std::array allRiskFacts{
    RiskFact::RawEgg,       RiskFact::PasteurisedEgg, RiskFact::LionEgg,
    RiskFact::RareMeat,     RiskFact::RawFish,        RiskFact::SoldForEatingRaw,
    RiskFact::RawShellfish, RiskFact::ColdSmokedFish, RiskFact::UnpasteurisedMilk};

[[nodiscard]] std::string_view nameOf(RiskFact fact);
[[nodiscard]] std::optional<RiskFact> findRiskFact(std::string_view name);

/// Guests for whom an infection is worse.
/// Source: foodsafety.gov, People at risk of food poisoning.
enum class RiskGroup
{
    Pregnant,
    UnderFive,
    Over65,
    ImmuneSuppressed
};

inline constexpr std::array allRiskGroups{RiskGroup::Pregnant, RiskGroup::UnderFive,
                                          RiskGroup::Over65, RiskGroup::ImmuneSuppressed};

/// "pregnant", "under five", "over 65", "weakened immune system".
[[nodiscard]] std::string_view nameOf(RiskGroup group);
[[nodiscard]] std::optional<RiskGroup> findRiskGroup(std::string_view name);

/// What a food is, as the rules see it.
struct FoodKind
{
    FoodClass food = FoodClass::DryGoods;
    std::vector<RiskFact> facts;

    [[nodiscard]] bool has(RiskFact fact) const;
    friend bool operator==(const FoodKind&, const FoodKind&) = default;
};

} // namespace suppertide
