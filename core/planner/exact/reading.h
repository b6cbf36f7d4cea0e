// Reading: from a solution of the model to a schedule: units dealt out within their classes, and a
// program for each oven.
#pragma once

#include <optional>
#include <vector>

#include "core/planner/exact/model.h"
#include "core/planner/exact/oven_programs.h"
#include "core/problem/schedule.h"

namespace suppertide::exact {

/// A schedule with its cost, that keeps the problem; absent if an oven has no program after all.
[[nodiscard]] std::optional<Schedule>
scheduleOf(const Model& model, const std::vector<Bound>& values, OvenPrograms& programs);

/// The value of each variable in a schedule that keeps the problem, as far as it says one;
/// booleans of which it says nothing are 0.
[[nodiscard]] std::vector<Bound> aimsOf(const Model& model, const Schedule& schedule);

/// What each oven's program costs in a solution, and why: the literals that say what is in it and
/// when. Absent costs: no program is known that keeps what is in.
struct OvenUse
{
    OvenIndex oven;
    std::optional<std::int64_t> cost;
    std::int64_t bound = 0;
    Literals because;
};
[[nodiscard]] std::vector<OvenUse> ovenUses(const Model& model, const std::vector<Bound>& values,
                                            OvenPrograms& programs);

} // namespace suppertide::exact
