// StepEstimate: how long a step takes, computed from the food that it is done to, how much of it
// there is, and what this kitchen can do; learned from the times that this kitchen has taken. The
// recipe's own figure stands where nothing can be computed.
#pragma once

#include "core/kitchen/kitchen.h"
#include "core/plan/formulation.h"
#include "core/science/calibration.h"
#include "core/science/estimate.h"

namespace suppertide {

/// A food with what one step does to it.
struct FoodAtStep
{
    const FollowedFood* food = nullptr;
    std::size_t treatment = 0;         // of food->steps
    std::optional<KeepPlace> keptIn{}; // fridge or freezer, if it comes from there

    [[nodiscard]] const FoodTreatment& does() const { return food->steps[treatment]; }
};

/// The food by which the length of `step` is computed, if there is one.
[[nodiscard]] std::optional<FoodAtStep> timedBy(const ResolvedRecipe& recipe, const StepId& step);

/// Minutes for `share` of the recipe's portions. Heat: until the middle is at `to`, in the first
/// oven that reaches what the step asks for (with a lid: in its own steam; or in a water bath), or
/// in boiling water on a burner. Simmer: likewise in a pot at the boil, if the middle is to be at
/// `to`. Boil, Reduce: on the
/// smallest burner that takes the step's pan. IceBath: until the middle is at `to`. Thaw: in cold
/// water. A failure, with a sentence for the cook, where it cannot be computed: an unknown
/// material, no mass, a target above the place's temperature.
[[nodiscard]] Result<science::Estimate> estimateStep(const Step& step, const FoodAtStep& food,
                                                     const Rational& share, const Kitchen& kitchen);

/// What the times taken on an oven or burner have taught: nothing if there are none, or if they
/// make no sense together (a fifth or five times of what was computed).
[[nodiscard]] std::optional<science::Calibration> learnedOn(const Kitchen& kitchen,
                                                            const KitchenItemId& item);

/// Whether a computed length is so much longer or shorter than the written one that it is worth a
/// word: by a quarter.
[[nodiscard]] bool differMuch(Minutes computed, Minutes written);

/// What the plan takes: the computed range if there is one, else the recipe's own for these
/// portions; and what is to be said of it. Absent if the step's length is not computed.
[[nodiscard]] std::optional<ComputedDuration>
computedDuration(const Step& step, const ResolvedRecipe& recipe, const DurationRange& written,
                 const Rational& share, const Kitchen& kitchen);

} // namespace suppertide
