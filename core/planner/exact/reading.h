// Reading: from a solution of the model to a schedule: units dealt out within their classes, and a
// program for each oven.
#pragma once

#include <optional>
#include <vector>

#include "core/planner/exact/model.h"
#include "core/planner/exact/oven_programs.h"
#include "core/problem/schedule.h"

namespace suppertide::exact {

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

/// What each oven's program costs in a solution, and why: the literals that say what is in it and
/// when. Absent costs: no program is known that keeps what is in.
struct OvenUse
{
    OvenIndex oven;
    std::optional<std::int64_t> cost;
    std::int64_t bound = 0;
    std::int64_t limit = 0; // with a bound from here on the whole is no cheaper than it was to be
    bool isImpossible = false; // proven: no program keeps what is in
    Literals because;
};
[[nodiscard]] std::vector<OvenUse> ovenUses(const Model& model, const std::vector<Bound>& values,
                                            OvenPrograms& programs, std::int64_t below);

/// For each oven that no program brings through a solution: a clause that rules out what is in it
/// at these times, true in every schedule.
[[nodiscard]] std::vector<Literals>
withoutProgram(const Model& model, const std::vector<Bound>& values, OvenPrograms& programs);

} // namespace suppertide::exact
