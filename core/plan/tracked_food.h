// TrackedFood: a food of the evening that is followed from where it is kept to the table: what it
// is, who eats of it, and which tasks and waits of the problem it goes through. Part of a
// formulation; food_temperatures.h makes its history from it and a schedule.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/occasion/occasion.h"
#include "core/problem/problem.h"

namespace suppertide {

using FoodIndex = StrongIndex<struct FoodIndexTag>;
using LagIndex = StrongIndex<struct LagIndexTag>;

/// What a step does to it. It counts if its tasks are present: those of another method are not.
struct FoodStage
{
    TaskIndex first;
    TaskIndex last;
    FoodTreatment does;
    std::optional<OvenDemandIndex> oven;
    bool isOnBurner = false;

    friend bool operator==(const FoodStage&, const FoodStage&) = default;
};

/// Where it is kept between two stages, or after the last, while that wait lasts. Of several places
/// the one whose ends are present counts.
struct FoodKeep
{
    LagIndex lag;
    KeepPlace place = KeepPlace::Nowhere;
    std::optional<OvenDemandIndex> oven; // that keeps it warm

    friend bool operator==(const FoodKeep&, const FoodKeep&) = default;
};

/// Another followed food, a preparation, goes into it when that task begins.
struct FoodPart
{
    FoodIndex food;
    TaskIndex at;

    friend bool operator==(const FoodPart&, const FoodPart&) = default;
};

/// A wait is a food's if it begins or ends at a step that the food is named in; in all other time
/// between its steps the food stands in the kitchen.
struct TrackedFood
{
    std::string key;  // "stock/*/pot#1": the same at each formulation
    std::string name; // "shoulder"
    std::string dishName;
    std::optional<DishId> dish; // of a shared preparation: the first that uses it
    std::optional<CourseId> course;
    RecipeId recipe;
    std::vector<VariantId> variants;
    std::string variantName; // empty if it is in all of them alike
    FoodKind kind;
    std::string material; // of the table of dinner foods; empty: no temperature is computed
    FoodShape shape = FoodShape::Flat;
    Length thickness;
    Grams mass; // of these portions
    bool isOnePiece = false;
    KeepPlace from = KeepPlace::Fridge; // before its first stage
    std::vector<GuestId> eaters;        // as far as it is said who eats what
    std::vector<RiskGroup> risks;       // of them; of all guests where it is not said; each once
    std::vector<FoodStage> stages;      // in order
    std::vector<FoodKeep> keeps;
    std::vector<FoodPart> parts; // preparations that go into it
    /// Shopping trips that may bring it, where it is bought as what it is at first: the last one
    /// before its first stage counts, and from then on it stands where it is kept.
    std::vector<TaskIndex> bought;
    /// Where it is served, or goes into what it is a preparation for; the latest counts.
    std::vector<TaskPoint> until;
    bool isEaten = true;                                     // false: it goes into another dish
    Minutes atTable{0};                                      // after serving
    std::optional<std::pair<ChoiceIndex, OptionIndex>> with; // it is only there with this option

    friend bool operator==(const TrackedFood&, const TrackedFood&) = default;
};

} // namespace suppertide
