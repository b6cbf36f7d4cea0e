// StepCautions: which cautions a step calls for by what is done in it, beside those that its recipe
// names: tools, hot fat, alcohol near heat, raw animal food, something heavy in an oven. Common
// practice; who cooks knows better, local codes prevail.
#pragma once

#include <vector>

#include "core/plan/formulation.h"

namespace suppertide {

/// The same danger in the words of core/safety.
[[nodiscard]] safety::CautionKind kindOf(Caution caution);

/// A food that a step does something to.
struct FoodInStep
{
    const FollowedFood* food = nullptr;
    std::size_t treatment = 0; // of food->steps

    [[nodiscard]] const FoodTreatment& does() const { return food->steps[treatment]; }
};
/// The foods of `foods` that `step` is named in.
[[nodiscard]] std::vector<FoodInStep> foodsIn(const std::vector<const FollowedFood*>& foods,
                                              const StepId& step);

/// What a step's part of that role calls for; `lines` are what the step takes, tools and
/// ingredients go by their usual names ("blender", "olive oil"). What goes into an oven or comes
/// out of it is heavy from 1.5 kg of food on, or in a vessel of 4 litres or more.
[[nodiscard]] std::vector<safety::CautionKind> calledFor(const Step& step,
                                                         const std::vector<IngredientLine>& lines,
                                                         const std::vector<FoodInStep>& foods,
                                                         TaskRole role);

/// The recipe's own cautions first, then what is called for besides; each once.
[[nodiscard]] std::vector<safety::CautionKind> cautionsOf(const TaskSource& source);

} // namespace suppertide
