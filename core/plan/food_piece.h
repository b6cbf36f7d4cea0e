// FoodPiece: how heavy, thick and warm a followed food is before one step or wait, for the
// functions of core/science. Used by step_estimate and wait_estimate alone.
#pragma once

#include <optional>

#include "core/kitchen/kitchen.h"
#include "core/recipe/followed_food.h"
#include "core/science/core_temperature.h"

namespace suppertide {

/// °C, as somebody has measured it in this kitchen, else as usual.
[[nodiscard]] double temperatureAt(KeepPlace place, const Kitchen& kitchen);

class FoodPiece
{
public:
    /// `before`: how many of its treatments are over. `keptIn`: the cold place that it comes from.
    FoodPiece(const FollowedFood& food, std::size_t before, std::optional<KeepPlace> keptIn,
              const Rational& share, const Kitchen& kitchen)
        : food_(food), before_(before), keptIn_(keptIn), share_(share.toDouble()), kitchen_(kitchen)
    {}

    /// Without a mass, or at a height for which nothing can be computed, a sentence.
    [[nodiscard]] Result<void> check();

    [[nodiscard]] const FollowedFood& food() const { return food_; }
    [[nodiscard]] bool isStirred() const { return food_.shape == FoodShape::Stirred; }
    /// °C, of water here; after check().
    [[nodiscard]] double boils() const { return boils_; }
    [[nodiscard]] double kilograms() const;
    /// m. A larger piece grows in all directions alike.
    [[nodiscard]] double thickness() const;
    /// °C: what was done to it last, else where it is kept.
    [[nodiscard]] double start() const;
    [[nodiscard]] science::BodyShape shapeFor(double density) const;
    /// A failure for an unknown material.
    [[nodiscard]] Result<science::DinnerFood> material() const;
    /// Without the surroundings; a failure for an unknown material.
    [[nodiscard]] Result<science::CoreQuestion> toCore(double target) const;

private:
    const FollowedFood& food_;
    std::size_t before_;
    std::optional<KeepPlace> keptIn_;
    double share_;
    const Kitchen& kitchen_;
    double boils_ = 100.0;
};

} // namespace suppertide
