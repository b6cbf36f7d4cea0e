// OvenUses: what each oven's program costs in a solution of the model, and why: what is in it, and
// when, by the clock or to each other.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/planner/exact/model.h"
#include "core/planner/exact/oven_programs.h"
#include "core/planner/exact/widened_claim.h"

namespace suppertide::exact {

/// Absent costs: no program is known that keeps what is in.
struct OvenUse
{
    OvenIndex oven;
    std::optional<std::int64_t> cost;
    std::int64_t bound = 0;
    std::int64_t limit = 0; // with a bound from here on the whole is no cheaper than it was to be
    bool isImpossible = false; // proven: no program keeps what is in
    Literals because;
    /// Why a cost below the limit is out of question, if it is, for as wide times as can be shown.
    WidenedClaim tooDear;
};
/// Of each oven, if the whole is to cost less than `below`; looks for programs that would. With
/// `widens` also says why those that are too dear are so, which takes longer.
[[nodiscard]] std::vector<OvenUse> ovenUses(const Model& model, const std::vector<Bound>& values,
                                            OvenPrograms& programs, std::int64_t below,
                                            bool widens);

/// For each oven that no program brings through a solution: a clause that rules out what is in it
/// at these times, true in every schedule.
[[nodiscard]] std::vector<Literals>
withoutProgram(const Model& model, const std::vector<Bound>& values, OvenPrograms& programs);

} // namespace suppertide::exact
