// FollowedFood: a food of a recipe that is followed from where it is kept to the table: what it is
// to the rules of food safety, how heat goes into it, and what the steps do to it. Values only;
// core/plan computes durations and temperatures from them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/food/food_class.h"
#include "core/recipe/step.h"

namespace suppertide {

using FollowedFoodId = Id<struct FollowedFoodTag>;

/// How heat goes into a food.
enum class FoodShape
{
    Stirred, // has one temperature: a stock, a sauce, a custard being stirred
    Flat,    // through both faces: a gratin, a side of fish, a tray
    Long,    // a rolled joint, a loaf
    Round    // a whole bird, a beetroot, an egg
};

/// What a step does to a food.
enum class Treatment
{
    Stand,   // it is worked on, or stands, in the kitchen
    Heat,    // in the step's oven, pan or pot
    Boil,    // brought to the boil on the step's burner
    Simmer,  // kept at the boil
    Reduce,  // boiled down
    IceBath, // cooled in iced water
    Thaw     // in cold water
};

/// Whether the food is hot afterwards.
[[nodiscard]] constexpr bool makesHot(Treatment treatment)
{
    switch (treatment) {
    case Treatment::Heat:
    case Treatment::Boil:
    case Treatment::Simmer:
    case Treatment::Reduce:
        return true;
    case Treatment::Stand:
    case Treatment::IceBath:
    case Treatment::Thaw:
        return false;
    }
    return false;
}

struct FoodTreatment
{
    StepId step;
    Treatment treatment = Treatment::Stand;
    std::optional<Celsius> to; // of its middle, at the end
    int leaves = 100;          // percent of it, when it is reduced
    bool isLid = false;        // on
    bool isInBath = false;     // moulds in a water bath, in the oven
    bool setsDuration = false; // the step lasts as long as this is computed to take
    bool isReheating = false;
    std::optional<FoodClass> becomes; // at the end of the step

    friend bool operator==(const FoodTreatment&, const FoodTreatment&) = default;
};

struct FollowedFood
{
    FollowedFoodId id;
    std::string name; // "shoulder"
    FoodKind kind;
    /// A food of the table of compositions ("lamb, shoulder"); empty: its temperature is not
    /// computed, only its minutes are counted.
    std::string material;
    FoodShape shape = FoodShape::Flat;
    /// Flat: from face to face; long, round: across; stirred: as deep as it stands when it cools.
    Length thickness;
    Grams mass;                            // of all of it, at the recipe's portions
    Scaling scaling = Scaling::PerPortion; // of the mass
    bool isOnePiece = false;               // more of it is a larger piece, not more pieces
    KeepPlace from = KeepPlace::Fridge;    // where it is before its first step
    std::vector<FoodTreatment> steps;      // in order; what it is not named in does nothing to it

    friend bool operator==(const FollowedFood&, const FollowedFood&) = default;
};

} // namespace suppertide
