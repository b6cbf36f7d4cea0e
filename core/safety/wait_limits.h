// Wait limits: how long a food may stay at a place by a rule book, before anything is planned: what
// core/plan tightens waits by. The history that comes of it is judged by judge_history all the
// same, for minutes add up.
#pragma once

#include <optional>
#include <string>

#include "core/base/plan_time.h"
#include "core/safety/food_history.h"
#include "core/safety/rules.h"

namespace suppertide::safety {

struct WaitLimit
{
    Minutes most{0};
    std::string rule; // as Finding::rule

    friend bool operator==(const WaitLimit&, const WaitLimit&) = default;
};

/// How a food comes to its place, and what it finds there.
struct Stay
{
    FoodClass food = FoodClass::CookedDish;
    Place place = Place::Counter;
    bool isHot = false;                 // comes from the heat, not from the cold
    std::optional<double> surroundings; // °C; unknown: 20 on a counter, hot enough where kept warm
    Minutes standingBefore{0};          // already spent in the danger zone

    friend bool operator==(const Stay&, const Stay&) = default;
};

/// The date mark of trade counts days: a stay of its whole days less one never is too long, at
/// whatever hour it begins. The longest stay that breaks none of the book's rules of time; nothing
/// if it has none for it (dry goods; a freezer; what is kept at the book's holding temperature or
/// above; heat). Never below 0.
[[nodiscard]] std::optional<WaitLimit> longestStay(RuleBook book, const Stay& stay);

/// The least temperature at which the book lets a food be kept warm.
[[nodiscard]] PublishedTemperature keepWarmAt(RuleBook book, FoodClass food);

} // namespace suppertide::safety
