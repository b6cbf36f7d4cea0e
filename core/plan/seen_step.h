// SeenStep: which tasks are one step to the user: what goes in and out of the oven, is turned, or
// may change hands in between, moves as one. Used to count what moves.
#pragma once

#include <compare>
#include <optional>
#include <vector>

#include "core/plan/formulation.h"

namespace suppertide {

struct SeenStep
{
    std::optional<DishId> dish;
    std::optional<RecipeId> recipe;
    std::optional<StepId> step;
    std::optional<HouseJobId> job; // or trip
    std::vector<VariantId> variants;
    int batch = 0;

    friend auto operator<=>(const SeenStep&, const SeenStep&) = default;
};

/// Whether a task of this role is something that somebody or something does at its time, which can
/// be put somewhere and reported; what only follows from others, or marks a moment, is not.
[[nodiscard]] bool isDeed(TaskRole role);
/// A deed that takes somebody's or something's time: all but serving.
[[nodiscard]] bool isWork(TaskRole role);

/// The step to which the task stands for all its parts; absent for events, washing (which is done
/// when it fits) and the parts that go along.
[[nodiscard]] std::optional<SeenStep> seenStepOf(const TaskSource& source);

} // namespace suppertide
