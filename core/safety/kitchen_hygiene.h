// What touches what: raw food above ready-to-eat food in one fridge, one board or tool for raw and
// then ready food, and portions that must be free of something made after those that contain it.
// Judges plain lists of uses; it knows no plan.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/interval.h"
#include "core/food/substance.h"
#include "core/safety/finding.h"

namespace suppertide::safety {

/// A board, knife, bowl or pan touches a food.
struct ToolUse
{
    std::string tool;
    PlanTime at;
    FoodClass food = FoodClass::DryGoods;
    bool isReadyToEat = false;         // not cooked after this
    std::vector<Substance> contains;   // of what guests avoid
    std::vector<Substance> mustBeFree; // of this
    bool isWashedBefore = false;
};

/// Two uses that do not follow each other like this, as indices into what was given.
struct HygieneFinding
{
    std::string rule; // of safety_rules.tsv
    Weight weight = Weight::Unsafe;
    std::size_t earlier = 0; // the upper one, for a fridge
    std::size_t later = 0;   // the lower one
    std::vector<Substance> substances;
    std::vector<Remedy> remedies;

    friend bool operator==(const HygieneFinding&, const HygieneFinding&) = default;
};

/// Raw then ready without washing; a substance, then a portion that must be free of it. At the same
/// minute the order given is the order of use. In the order of the later use; n log n.
[[nodiscard]] std::vector<HygieneFinding> judgeToolUses(std::span<const ToolUse> uses);

/// A food stands in a fridge. `shelf` counts from the bottom; unknown: nobody has said.
struct FridgeStay
{
    std::string fridge;
    Interval when;
    std::optional<int> shelf;
    FoodClass food = FoodClass::DryGoods;
    bool isReadyToEat = false;
    bool isSealed = false; // in a closed box or wrapping
};

/// Raw animal food, not sealed, above ready-to-eat food that is not sealed, or on one shelf with
/// it, while both are there: unsafe; where a shelf is not known, a caution to put the raw food
/// below.
[[nodiscard]] std::vector<HygieneFinding> judgeFridgeOrder(std::span<const FridgeStay> stays);

/// A portion to be made with one tool.
struct PortionMade
{
    std::vector<Substance> contains;
    std::vector<Substance> mustBeFree;
};

/// An order in which portions free of something come before those that contain it, otherwise as
/// given. What contains each other's avoided substances has no such order and stays as given:
/// judgeToolUses then asks for washing.
[[nodiscard]] std::vector<std::size_t> freeFirst(std::span<const PortionMade> portions);

} // namespace suppertide::safety
