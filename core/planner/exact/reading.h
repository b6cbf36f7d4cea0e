// Reading: from a solution of the model to a schedule: units dealt out within their classes, and a
// program for each oven.
#pragma once

#include <optional>
#include <vector>

#include "core/planner/exact/model.h"
#include "core/planner/exact/oven_programs.h"
#include "core/problem/schedule.h"

namespace suppertide::exact {

/// Whether a literal holds in a solution.
[[nodiscard]] bool holds(const std::vector<Bound>& values, Literal literal);

/// What an oven's program may cost so that the whole costs less than `below`.
[[nodiscard]] IndexedVector<OvenIndex, std::int64_t>
ovenLimits(const Model& model, const std::vector<Bound>& values, std::int64_t below);

/// A schedule with its cost, that keeps the problem; absent if an oven has no program after all.
[[nodiscard]] std::optional<Schedule> scheduleOf(const Model& model,
                                                 const std::vector<Bound>& values,
                                                 OvenPrograms& programs, std::int64_t below);

/// The value of each variable in a schedule that keeps the problem, as far as it says one;
/// booleans of which it says nothing are 0.
[[nodiscard]] std::vector<Bound> aimsOf(const Model& model, const Schedule& schedule);

} // namespace suppertide::exact
